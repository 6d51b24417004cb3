import { type LinearValue, maximinStep } from './maximin'
import { limitName, type LimitRoom, openLimits } from './rooms'
import {
  type Candidate,
  candidateAt,
  compareCounts,
  coordinatesOf,
  isOfBroken,
  type Placed,
  placedAt,
  roomsWithin,
  type Scored,
  scoredIfBetter,
} from './score'
import type { Asked, Ground } from './ground'
import { lookStep } from './track'

/** What refining may try, and where it says how far it has got. */
export interface Refining {
  readonly ground: Ground
  /** Whether a place may be taken at all, for example because it is far enough from other proposals. */
  readonly isAllowed: (candidate: Candidate) => boolean
  /** Told of every place that is looked at. */
  readonly onLook: () => void
  /** Told of every place that turned out better than the one before it. */
  readonly onScored: (scored: Scored) => void
  /** Told of every other place that breaks no more rules. */
  readonly onPassedBy: (candidate: Candidate) => void
}

/** For slopes: small against every bend of a limit, large against the rounding of a room. Our judgement. */
const SLOPE_STEP = 0.02

/** Refining ends when steps are smaller than this, in mm or degrees: a fifth of what positions are rounded to. Our judgement. */
const LAST_STEP = 0.02

/** Steps shrink to this share when one did not help. Our judgement. */
const SHRINK = 0.4

/** Tries of the search along slopes; each costs one measurement for each coordinate and one more. Our judgement. */
const MOST_ROUNDS = 40

/** The place measured, or null where it cannot be, may not be taken or is no better than one near by. */
const better = (
  { ground, isAllowed, onLook, onScored, onPassedBy }: Refining,
  placed: readonly Placed[],
  near: Scored,
): Scored | null => {
  const candidate = candidateAt(ground, placed)
  if (candidate === null || !isAllowed(candidate)) return null
  onLook()
  const scored = scoredIfBetter(ground, candidate, near)
  if (scored !== null) onScored(scored)
  else if (compareCounts(candidate.screen.counts, near.screen.counts) <= 0) onPassedBy(candidate)
  return scored
}

/** Limits further away than this many times the reach play no part in a step: a move changes a room by about its own length. Our judgement. */
const IN_REACH = 2

/** The limits that may stop a step of `reachMm`: those of broken rules, or the nearest of those that are kept. */
const limitsInReach = (
  ground: Ground,
  here: Scored,
  about: 'broken' | 'kept',
  reachMm: number,
): readonly LimitRoom[] => {
  const wanted = roomsWithin(ground, here, IN_REACH * reachMm).filter(
    (room) => isOfBroken(here, room) === (about === 'broken'),
  )
  const leastMm = Math.min(...wanted.map(({ roomMm }) => roomMm))
  return wanted.filter(({ roomMm }) => roomMm <= leastMm + IN_REACH * reachMm)
}

/** A distance found by following slopes is the room itself when it is the same to this, mm. */
const SAME_MM = 0.01

/** The names of limits of which the room at a place is the distance to the limit itself, with that distance. */
const followable = (
  { ground }: Refining,
  here: Scored,
  rooms: ReadonlyMap<string, number>,
): ReadonlyMap<string, number> =>
  new Map(
    openLimits(ground, here.trial, ({ isOwn }) => isOwn).flatMap((limit) => {
      const roomMm = rooms.get(limitName(limit))
      const mm = roomMm === undefined ? null : limit.followedMm()
      return mm === null || roomMm === undefined || Math.abs(mm - roomMm) > SAME_MM
        ? []
        : [[limitName(limit), mm] as const]
    }),
  )

/** A place a little along one coordinate, or a little back; null where there is neither. */
const besideAt = ({ ground }: Refining, here: Scored, index: number) => {
  const coordinates = coordinatesOf(here.placed)
  for (const step of [SLOPE_STEP, -SLOPE_STEP]) {
    const moved = coordinates.map((value, other) => (other === index ? value + step : value))
    const placed = placedAt(here.placed, moved)
    // At the end of a track there is nothing further along.
    if (Math.abs((coordinatesOf(placed)[index] ?? 0) - (coordinates[index] ?? 0)) < SLOPE_STEP / 2) continue
    const candidate = candidateAt(ground, placed)
    if (candidate !== null) return { step, candidate }
  }
  return null
}

/** How some rooms at a place change with each coordinate: differences to a place a little further along, or a little back. */
const slopesAt = (refining: Refining, here: Scored, limits: readonly LimitRoom[]): readonly LinearValue[] => {
  const rooms = new Map(limits.map((limit) => [limitName(limit), limit.roomMm]))
  const followed = followable(refining, here, rooms)
  const isWanted = ({ rule, subject }: Asked): boolean =>
    limits.some((limit) => limit.rule === rule && limit.subject === subject)
  const slopes = coordinatesOf(here.placed).map((_, index) => {
    const beside = besideAt(refining, here, index)
    const found = new Map<string, number>()
    if (beside === null) return found
    for (const limit of openLimits(refining.ground, beside.candidate.trial, isWanted)) {
      const name = limitName(limit)
      const roomMm = rooms.get(name)
      if (roomMm === undefined) continue
      const from = followed.get(name)
      const to = from === undefined ? null : limit.followedMm()
      const change =
        from !== undefined && to !== null ? to - from : (limit.roomMm(Infinity) ?? roomMm) - roomMm
      found.set(name, change / beside.step)
    }
    return found
  })
  return limits.map((limit) => ({
    value: limit.roomMm,
    slopes: slopes.map((found) => found.get(limitName(limit)) ?? 0),
  }))
}

const firstReach = (placed: readonly Placed[]): readonly number[] =>
  placed.flatMap(({ track }) => track.axes.map(lookStep))

/**
 * Climbs from a place to more room: near it every limit's room is taken to change evenly, the step after which the least of them is
 * largest is worked out exactly, tried, and kept if the true rooms agree; else a shorter step is tried.
 * Method: sequential linear programming with a shrinking reach for a max-min problem; general practice, no one source.
 */
const climbedBy = (refining: Refining, start: Scored, about: 'broken' | 'kept', lastStep: number): Scored => {
  let here = start
  let slopes: readonly LinearValue[] | null = null
  let share = 1
  const reach = firstReach(start.placed)
  const widest = Math.max(...reach, 0)
  for (let round = 0; round < MOST_ROUNDS && share * widest > lastStep; round += 1) {
    slopes ??= slopesAt(refining, here, limitsInReach(refining.ground, here, about, share * widest))
    const step = maximinStep(
      slopes,
      reach.map((size) => size * share),
    )
    const moved = coordinatesOf(here.placed).map((value, index) => value + (step[index] ?? 0))
    const there = better(refining, placedAt(here.placed, moved), here)
    if (there !== null) {
      here = there
      slopes = null
    } else share *= SHRINK
  }
  return here
}

/** Climbs from a place: first to where what is broken is broken least, then to more room. */
const climbedTo = (refining: Refining, start: Scored, lastStep: number): Scored => {
  const isBroken = start.screen.broken.size > 0
  const mended = isBroken ? climbedBy(refining, start, 'broken', lastStep) : start
  return climbedBy(refining, mended, 'kept', lastStep)
}

/** Near enough to the top to tell which of several places leads highest, in mm or degrees. Our judgement. */
const COARSE_STEP = 0.3

/** Climbs until it is plain how high this place leads. */
export const climbed = (refining: Refining, start: Scored): Scored => climbedTo(refining, start, COARSE_STEP)

/** 360°·(1 − 1/φ): turned by it again and again, directions never repeat. Source: the golden angle, any text on plant spirals. */
const GOLDEN_DEG = 137.507_764

const GOLDEN_RAD = (GOLDEN_DEG * Math.PI) / 180

/** Directions to look in: both ways, twelve in a plane, fourteen evenly over a sphere; along each coordinate when there are more. */
const directions = (count: number, turn: number): readonly (readonly number[])[] => {
  if (count === 1) return [[1], [-1]]
  if (count === 2)
    return Array.from({ length: 12 }, (_, index) => {
      const angle = (index * Math.PI) / 6 + turn * GOLDEN_RAD
      return [Math.cos(angle), Math.sin(angle)]
    })
  if (count === 3)
    return Array.from({ length: 14 }, (_, index) => {
      const up = 1 - (2 * index + 1) / 14
      const angle = (index + turn) * GOLDEN_RAD
      return [Math.sqrt(1 - up * up) * Math.cos(angle), Math.sqrt(1 - up * up) * Math.sin(angle), up]
    })
  return Array.from({ length: 2 * count }, (_, index) =>
    Array.from({ length: count }, (__, axis) => (axis === index >> 1 ? (index % 2 === 0 ? 1 : -1) : 0)),
  )
}

/** The shares of the first reach at which it is looked round a place. Our judgement. */
const LOOK_SHARES = [0.5, 0.2, 0.08, 0.03, 0.01] as const

/** Looks round a place at smaller and smaller distances: what slopes cannot see, such as the edge of another strip of a zone. */
const polled = (refining: Refining, start: Scored): Scored => {
  let here = start
  const reach = firstReach(start.placed)
  for (const [turn, share] of LOOK_SHARES.entries()) {
    const middle = coordinatesOf(here.placed)
    for (const direction of directions(reach.length, turn)) {
      const moved = middle.map(
        (value, index) => value + (direction[index] ?? 0) * share * (reach[index] ?? 0),
      )
      here = better(refining, placedAt(here.placed, moved), here) ?? here
    }
  }
  return here
}

/** As far toward the drawn place, one coordinate after the other, as costs no room: a shorter way to the same. */
const nearer = (refining: Refining, start: Scored): Scored => {
  const drawn = start.placed.flatMap(({ track, group }) => track.nearestAt(group.primary.mount.point))
  return drawn.reduce((here, value, index) => {
    const moved = coordinatesOf(here.placed).map((own, other) => (other === index ? value : own))
    return better(refining, placedAt(here.placed, moved), here) ?? here
  }, start)
}

/** The top above a place that was climbed to: to the end, looked round for something better, climbed again from there, and brought near the drawn one. */
export const lookedRound = (refining: Refining, start: Scored): Scored => {
  const top = climbedTo(refining, start, LAST_STEP)
  const beside = polled(refining, top)
  return nearer(refining, beside === top ? top : climbedTo(refining, beside, LAST_STEP))
}
