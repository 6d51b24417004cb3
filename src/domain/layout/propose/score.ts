import { pointDistanceMm } from '../../geometry/point'
import type { Anchor } from '../../straps/anchor'
import { strapFamily } from '../../straps/strap'
import type { Place } from '../document/layout'
import { type BrokenCounts, type Ground, screened, type Screened, type Trial, trialAt } from './ground'
import type { MovingGroup } from './group'
import { byLeverMm } from './lever'
import { closedLimit, limitName, limitRooms, type LimitRoom, type OpenLimit, openLimits } from './rooms'
import { heldToAxis, type Spot, type Track } from './track'
import { MOST_ROOM_MM } from './wish'

/** One group at one place of one of its tracks. */
export interface Placed {
  readonly group: MovingGroup
  readonly track: Track
  readonly at: readonly number[]
}

/** Groups placed and solved; not yet measured. */
export interface Candidate {
  readonly placed: readonly Placed[]
  readonly spots: readonly Spot[]
  readonly trial: Trial
  readonly screen: Screened
}

/** A candidate with its rooms. */
export interface Scored extends Candidate {
  /** The rooms that were worked out, limit by limit: the least one is among them. */
  readonly rooms: readonly LimitRoom[]
  /** What is known about every limit that has been looked at here or near by: its room is at least so much, mm. */
  readonly known: ReadonlyMap<string, number>
  /** The least of those whose rules are kept; null where none of them has a room. */
  readonly keptMm: number | null
  /** The furthest that an anchor is from where a broken rule would be kept, ≤ 0; 0 where none is broken or nothing says how far. */
  readonly violationMm: number
  /** How far the anchor that goes furthest is moved. */
  readonly movedMm: number
}

/** Rooms this close count as the same; then the shorter way wins. Our judgement: far below anything that can be welded. */
const SAME_ROOM_MM = 1e-6

const LEVELS = ['must', 'should', 'advice'] as const

/** Fewer broken orders first, then fewer broken recommendations, then less broken advice; < 0 when `a` is better. */
export const compareCounts = (a: BrokenCounts, b: BrokenCounts): number => {
  for (const level of LEVELS) if (a[level] !== b[level]) return a[level] - b[level]
  return 0
}

/** Violations this close count as the same: a tenth of what positions are rounded to. Our judgement. */
const SAME_VIOLATION_MM = 0.01

/** Whether a room is of a rule that is broken at a candidate. */
export const isOfBroken = (
  { screen }: Candidate,
  { rule, subject }: Pick<LimitRoom, 'rule' | 'subject'>,
): boolean => [...screen.broken].some((asked) => asked.rule === rule && asked.subject === subject)

/** Which of two is better: fewer broken rules, then these broken by less, then more room, then the shorter way; < 0 when it is `a`. */
export const compareScored = (a: Scored, b: Scored): number => {
  const byCounts = compareCounts(a.screen.counts, b.screen.counts)
  if (byCounts !== 0) return byCounts
  const lessMm = b.violationMm - a.violationMm
  if (Math.abs(lessMm) > SAME_VIOLATION_MM) return lessMm
  const aMm = a.keptMm ?? Number.NEGATIVE_INFINITY
  const bMm = b.keptMm ?? Number.NEGATIVE_INFINITY
  if (aMm !== bMm && !(Math.abs(aMm - bMm) <= SAME_ROOM_MM)) return bMm - aMm
  return a.movedMm - b.movedMm
}

/** Two loops of webbing on one tube lie beside each other at the nearest. */
const hasWrapsOverlapping = (place: Place, moved: ReadonlySet<string>): boolean => {
  const { webbingMm } = place.belt
  const wraps = place.anchors.filter(({ mount }) => mount.kind === 'wrap')
  const halfMm = ({ strap }: Anchor): number => webbingMm[strapFamily(strap)] / 2
  return wraps.some((a, index) =>
    wraps
      .slice(index + 1)
      .some(
        (b) =>
          (moved.has(a.id) || moved.has(b.id)) &&
          a.mount.tubeId === b.mount.tubeId &&
          pointDistanceMm(a.mount.point, b.mount.point) < halfMm(a) + halfMm(b),
      ),
  )
}

/** The groups placed and solved; null where one of them cannot be there or a rule that has to stay kept would not. */
export const candidateAt = (ground: Ground, placed: readonly Placed[]): Candidate | null => {
  const mounts = new Map<string, Anchor['mount']>()
  const spots: Spot[] = []
  for (const { group, track, at } of placed) {
    const spot = track.spotAt(at)
    const own = spot && group.mountsAt(spot)
    if (spot === null || own === null) return null
    spots.push(spot)
    for (const [id, mount] of own) mounts.set(id, mount)
  }
  const follower = (anchorId: string): string | null =>
    placed.find(({ group }) => group.primary.id === anchorId)?.group.partner?.id ?? null
  const trial = trialAt(ground, mounts, follower)
  if (hasWrapsOverlapping(trial.place, new Set(mounts.keys()))) return null
  const screen = screened(ground, trial)
  return screen && { placed, spots, trial, screen }
}

/**
 * What the straps that stay have now, by limit: a proposal may leave them less, but then what is left counts as its own. Only where
 * lap straps move is there any difference: the buckle goes along.
 */
const othersRooms = (ground: Ground): ReadonlyMap<string, number> => {
  const drawn: Trial = { place: ground.place, sittings: ground.sittings, mounts: new Map() }
  return new Map(
    limitRooms(ground, drawn, (asked) => ground.keptOthers.has(asked)).map((room) => [
      limitName(room),
      room.roomMm,
    ]),
  )
}

const OTHERS = new WeakMap<Ground, ReadonlyMap<string, number>>()

const othersOf = (ground: Ground): ReadonlyMap<string, number> => {
  const known = OTHERS.get(ground) ?? othersRooms(ground)
  OTHERS.set(ground, known)
  return known
}

const movesLap = ({ moving }: Ground): boolean => [...moving].some((strap) => strapFamily(strap) === 'lap')

/**
 * A move changes the room to a limit by no more than so many times its own length; mostly it is once, more where an anchor moves
 * across the plane of a rule. Only for leaving limits out that cannot be the nearest; what is given to anybody is worked out in full.
 * Our judgement.
 */
const MOST_CHANGE = 3

/** A limit's room as it is known from a place near by: it is at least so much. */
type KnownRooms = ReadonlyMap<string, number>

const apartMm = (a: Candidate, b: Candidate): number =>
  Math.max(
    0,
    ...[...a.trial.mounts].map(([id, { point }]) => {
      const other = b.trial.mounts.get(id)
      return other === undefined ? 0 : pointDistanceMm(point, other.point)
    }),
  )

const nearKnown = (candidate: Candidate, near: Scored): KnownRooms => {
  const lessMm = MOST_CHANGE * apartMm(candidate, near)
  return new Map([...near.known].map(([name, mm]) => [name, mm - lessMm]))
}

/** A limit that may matter to a candidate, with what is known of its room: it is at least so much. */
interface Awaited {
  readonly limit: OpenLimit
  readonly name: string
  readonly isOfBroken: boolean
  readonly boundMm: number
}

/** About how far a limit is; null where that cannot be reckoned. */
const aboutMm = ({ solved, rule, subject, side }: OpenLimit): number | null =>
  byLeverMm(solved, side === 'min' ? { ...rule, max: null } : { ...rule, min: null }, subject)

/** The limits that may matter: those of broken rules first, then about the nearest first. */
const awaitedLimits = (ground: Ground, candidate: Candidate, known: KnownRooms): readonly Awaited[] => {
  const withOthers = movesLap(ground)
  const all = openLimits(
    ground,
    candidate.trial,
    (asked) => asked.isOwn || (withOthers && ground.keptOthers.has(asked)),
  ).map((limit) => {
    const name = limitName(limit)
    const isOfBroken = candidate.screen.broken.has(limit.asked)
    const boundMm = isOfBroken ? Number.NEGATIVE_INFINITY : (known.get(name) ?? Number.NEGATIVE_INFINITY)
    return { limit, name, isOfBroken, boundMm, aboutMm: aboutMm(limit) ?? Number.POSITIVE_INFINITY }
  })
  return all.toSorted(
    (a, b) =>
      Number(b.isOfBroken) - Number(a.isOfBroken) || a.aboutMm - b.aboutMm || a.boundMm - b.boundMm || 0,
  )
}

interface Measured {
  readonly rooms: readonly LimitRoom[]
  readonly known: KnownRooms
  /** The least of rules that are kept; null where none of them has a room. */
  readonly keptMm: number | null
}

/** What a limit followed by slopes may be off, mm. */
const FOLLOWED_OFF_MM = 0.01

/** Whether some limit of a rule that is kept is seen at once to leave no more than `beatMm`: its room is never more than the way to the limit. */
const isSurelyNoMore = (awaited: readonly Awaited[], beatMm: number): boolean =>
  Number.isFinite(beatMm) &&
  awaited.some(({ limit, isOfBroken, boundMm }) => {
    if (isOfBroken || boundMm > beatMm || !limit.asked.isOwn) return false
    const followedMm = limit.followedMm()
    return followedMm !== null && followedMm + FOLLOWED_OFF_MM <= beatMm
  })

/**
 * The rooms that matter: every one of a broken rule, and of the others those that may be the least, about the nearest first. Null as
 * soon as one of a rule that is kept is no more than `beatMm`.
 */
const roomsThatMatter = (
  ground: Ground,
  candidate: Candidate,
  before: KnownRooms,
  beatMm: number,
): Measured | null => {
  const others = movesLap(ground) ? othersOf(ground) : new Map<string, number>()
  const awaited = awaitedLimits(ground, candidate, before)
  if (isSurelyNoMore(awaited, beatMm)) return null
  const rooms: LimitRoom[] = []
  const known = new Map(before)
  let leastMm = MOST_ROOM_MM
  let hasKept = false
  for (const { limit, name, isOfBroken: isBroken, boundMm } of awaited) {
    hasKept ||= !isBroken && limit.asked.isOwn
    if (boundMm > leastMm) continue
    const otherMm = limit.asked.isOwn
      ? Number.POSITIVE_INFINITY
      : (others.get(name) ?? Number.POSITIVE_INFINITY) - SAME_ROOM_MM
    // The room is never more than the way to the limit; of a broken rule that way says enough, or about how far it is.
    const followedMm = limit.followedMm()
    const withinMm = isBroken
      ? Number.POSITIVE_INFINITY
      : Math.min(leastMm, otherMm, (followedMm ?? Number.POSITIVE_INFINITY) + FOLLOWED_OFF_MM)
    const roomMm = isBroken ? (followedMm ?? aboutMm(limit)) : limit.roomMm(withinMm)
    known.set(name, roomMm ?? Number.POSITIVE_INFINITY)
    if (roomMm === null || (!isBroken && roomMm >= withinMm)) continue
    rooms.push(closedLimit(limit, roomMm))
    if (isBroken) continue
    leastMm = roomMm
    if (leastMm <= beatMm) return null
  }
  return { rooms, known, keptMm: hasKept || rooms.length > 0 ? leastMm : null }
}

const scoredWith = (ground: Ground, candidate: Candidate, { rooms, known, keptMm }: Measured): Scored => {
  const broken = rooms.filter((room) => isOfBroken(candidate, room)).map(({ roomMm }) => roomMm)
  const movedMm = Math.max(
    0,
    ...ground.place.anchors.map(({ id, mount }) => {
      const to = candidate.trial.mounts.get(id)
      return to === undefined ? 0 : pointDistanceMm(mount.point, to.point)
    }),
  )
  return {
    ...candidate,
    rooms,
    known,
    keptMm,
    violationMm: Math.min(0, ...broken),
    movedMm,
  }
}

const NOTHING: KnownRooms = new Map()

/** A candidate measured. */
export const scoredCandidate = (ground: Ground, candidate: Candidate): Scored => {
  const measured = roomsThatMatter(ground, candidate, NOTHING, Number.NEGATIVE_INFINITY)
  return scoredWith(ground, candidate, measured ?? { rooms: [], known: NOTHING, keptMm: null })
}

/**
 * A candidate measured if it is better than a place near by that was measured before, else null. Limits that are far away there are
 * not looked at again, and where no rule is broken at either it ends with the first limit that leaves no more room than that place has.
 */
export const scoredIfBetter = (ground: Ground, candidate: Candidate, near: Scored): Scored | null => {
  if (compareCounts(candidate.screen.counts, near.screen.counts) > 0) return null
  const isAlike = candidate.screen.broken.size === 0 && near.screen.broken.size === 0
  // With as much room the shorter way would still be better.
  const beatMm = isAlike ? (near.keptMm ?? Number.NEGATIVE_INFINITY) - SAME_ROOM_MM : Number.NEGATIVE_INFINITY
  const measured = roomsThatMatter(ground, candidate, nearKnown(candidate, near), beatMm)
  const scored = measured && scoredWith(ground, candidate, measured)
  return scored !== null && compareScored(scored, near) < 0 ? scored : null
}

/** The rooms of a measured place up to so much more than its least, those included that were left out when it was measured. */
export const roomsWithin = (ground: Ground, scored: Scored, moreMm: number): readonly LimitRoom[] => {
  const farthestMm = (scored.keptMm ?? 0) + moreMm
  const done = new Set(scored.rooms.map(limitName))
  const left = openLimits(ground, scored.trial, ({ isOwn }) => isOwn).flatMap((limit) => {
    const name = limitName(limit)
    if (done.has(name) || (scored.known.get(name) ?? Number.POSITIVE_INFINITY) > farthestMm) return []
    // About how far is enough here: a step after which less is left is not taken.
    const roomMm = limit.followedMm() ?? limit.roomMm(farthestMm)
    return roomMm === null || roomMm >= farthestMm ? [] : [closedLimit(limit, roomMm)]
  })
  return [...scored.rooms, ...left]
}

/** The same groups with other coordinates, each brought into its ends. */
export const placedAt = (placed: readonly Placed[], coordinates: readonly number[]): readonly Placed[] => {
  let next = 0
  return placed.map((each) => ({
    ...each,
    at: each.track.axes.map((axis) => heldToAxis(axis, coordinates[next++] ?? 0)),
  }))
}

/** All coordinates of all groups, one after the other. */
export const coordinatesOf = (placed: readonly Placed[]): readonly number[] => placed.flatMap(({ at }) => at)

/** Whether some anchor is at least so far away from where it is in another candidate, or on another tube. */
export const isApart = (a: Candidate, b: Candidate, apartMm: number): boolean =>
  [...a.trial.mounts].some(([id, mount]) => {
    const other = b.trial.mounts.get(id)
    return (
      other === undefined ||
      pointDistanceMm(mount.point, other.point) >= apartMm ||
      (mount.tubeId !== other.tubeId && mount.tubeId !== null && other.tubeId !== null)
    )
  })
