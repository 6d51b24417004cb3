import { planeSegmentIntersection } from '../geometry/segment'
import { planeDistanceMm, planePoint, type PlanePointMm } from '../geometry/plane'
import { pointBetween, pointDistanceMm, type PointMm } from '../geometry/point'
import { ellipseArcMm } from '../geometry/ellipse'
import { err, ok, type Result } from '../result'
import type { BodyEnd, LapReach, Reach, SubReach } from './bodyEnd'
import type { MountEnd } from './mountEnd'
import type { PathProblem } from './path'
import type { Portal, SeatFrame } from './portal'
import { seatPointIn } from './portal'
import type { Seat } from './seat'
import type { StrapId } from './strap'
import type { StraightRun, StrapRun } from './strapRun'
import { tautString } from './tautString'

/** The seat's shell as seen from the side, and how far it reaches to both sides of the seat's middle. */
export interface SeatShell {
  readonly outline: readonly PlanePointMm[]
  /** The occupant's side of the outline, from its foremost to its highest point: over it a strap from outside comes in. */
  readonly upperEdge: readonly PlanePointMm[]
  /** The rest, from the same foremost point below and behind to the highest: what a strap between the sides would pass through. */
  readonly lowerEdge: readonly PlanePointMm[]
  readonly middleYMm: number
  readonly halfWidthMm: number
}

/** The outline's points from one to another, one step at least, going up or down through the list; both ends included. */
const chain = (
  outline: readonly PlanePointMm[],
  from: number,
  to: number,
  step: 1 | -1,
): readonly PlanePointMm[] => {
  const points: PlanePointMm[] = []
  const count = outline.length
  for (let index = from; ; index = (index + step + count) % count) {
    const point = outline[index]
    if (point === undefined) return points
    points.push(point)
    if (index === to && points.length > 1) return points
  }
}

/** The point that goes before all others. */
const indexOfFirst = (
  outline: readonly PlanePointMm[],
  isBefore: (a: PlanePointMm, b: PlanePointMm) => boolean,
): number => {
  let first = 0
  for (const [index, point] of outline.entries()) if (isBefore(point, outline[first] ?? point)) first = index
  return first
}

/** Twice the area that an outline goes round, mm², + when it is listed from the front down and back. Formula: Gauss's area formula. */
const turnMm2 = (outline: readonly PlanePointMm[]): number => {
  let sum = 0
  let before = outline.at(-1)
  for (const corner of outline) {
    if (before !== undefined) sum += before.uMm * corner.vMm - corner.uMm * before.vMm
    before = corner
  }
  return sum
}

/**
 * The two ways round the outline from its foremost point (the highest of several) to its highest (the rearmost of several). An upright
 * front belongs to the lower one, a level top to the upper. Where the foremost point is also the highest the whole outline is lower.
 */
const edgesOf = (outline: readonly PlanePointMm[]): Pick<SeatShell, 'upperEdge' | 'lowerEdge'> => {
  const foremost = indexOfFirst(outline, (a, b) => a.uMm < b.uMm || (a.uMm === b.uMm && a.vMm > b.vMm))
  const highest = indexOfFirst(outline, (a, b) => a.vMm > b.vMm || (a.vMm === b.vMm && a.uMm > b.uMm))
  const [up, down] = turnMm2(outline) > 0 ? ([-1, 1] as const) : ([1, -1] as const)
  return {
    upperEdge: foremost === highest ? [] : chain(outline, foremost, highest, up),
    lowerEdge: chain(outline, foremost, highest, down),
  }
}

/** The shell in one sitting; null for a seat drawn without outlines. */
export const seatShell = (frame: SeatFrame, seat: Seat): SeatShell | null => {
  const halfWidthMm = seat.topOutline.reduce((most, { yMm }) => Math.max(most, Math.abs(yMm)), 0)
  if (seat.sideOutline.length < 3 || halfWidthMm <= 0) return null
  const outline = seat.sideOutline.map(({ xMm, zMm }) => {
    const at = seatPointIn(frame, { xMm, yMm: 0, zMm })
    return planePoint(at.xMm, at.zMm)
  })
  return { outline, ...edgesOf(outline), middleYMm: frame.origin.yMm, halfWidthMm }
}

/** Whether a point lies within a closed outline. Formula: crossings of a ray counted, odd is inside. Source: Jordan's curve theorem. */
const isInside = (outline: readonly PlanePointMm[], { uMm, vMm }: PlanePointMm): boolean => {
  let inside = false
  let before = outline.at(-1)
  for (const corner of outline) {
    if (before !== undefined && corner.vMm > vMm !== before.vMm > vMm) {
      const atMm = corner.uMm + ((vMm - corner.vMm) / (before.vMm - corner.vMm)) * (before.uMm - corner.uMm)
      if (uMm < atMm) inside = !inside
    }
    before = corner
  }
  return inside
}

const side = ({ xMm, zMm }: PointMm): PlanePointMm => planePoint(xMm, zMm)

/** A place this near to a corner of the edge is on it, mm. */
const AT_CORNER_MM = 1e-6

/**
 * Whether a straight piece between the sides passes through the shell: it meets the lower edge. Over the lip or the top itself, where
 * that edge begins and ends, it passes.
 */
const isThroughShell = ({ lowerEdge }: SeatShell, from: PointMm, to: PointMm): boolean => {
  const ends = [lowerEdge[0], lowerEdge.at(-1)]
  let before: PlanePointMm | undefined
  for (const corner of lowerEdge) {
    const at = before === undefined ? null : planeSegmentIntersection(side(from), side(to), before, corner)
    if (at !== null && ends.every((end) => end === undefined || planeDistanceMm(end, at) > AT_CORNER_MM))
      return true
    before = corner
  }
  return false
}

/** Length of strap from where it reaches the body to its front contact or buckle; what differs between two ways in. */
const onBodyMm = (end: BodyEnd, reach: Reach): number => {
  if (end.family === 'lap') {
    const { alongMm, acrossMm, fromRad } = reach as LapReach
    return ellipseArcMm(alongMm, acrossMm, Math.max(0, fromRad))
  }
  return (reach as SubReach).onGroin?.toBuckleMm ?? 0
}

/** One straight piece of the shell's upper edge as an opening without a height. */
const edgePortal = (from: PlanePointMm, to: PlanePointMm, yMm: number, outward: 1 | -1): Portal | null => {
  const du = to.uMm - from.uMm
  const dv = to.vMm - from.vMm
  const lengthMm = Math.hypot(du, dv)
  if (lengthMm === 0) return null
  return {
    on: 'slot',
    face: 'side',
    centre: { xMm: (from.uMm + to.uMm) / 2, yMm, zMm: (from.vMm + to.vMm) / 2 },
    long: { x: du / lengthMm, y: 0, z: dv / lengthMm },
    short: { x: -dv / lengthMm, y: 0, z: du / lengthMm },
    normal: { x: 0, y: outward, z: 0 },
    longMinMm: -lengthMm / 2,
    longMaxMm: lengthMm / 2,
    shortMinMm: 0,
    shortMaxMm: 0,
    depthMm: 0,
    backrest: null,
    isOnWrongSide: false,
  }
}

/** Part of the strap's two unit pulls along an edge below which it stays: rounding. */
const DRAWN = 1e-7

/** Whether the strap at `at` is drawn along the edge toward a next corner of it; not toward one that it is at. */
const isDrawnToward = (at: PointMm, ends: readonly PointMm[], corner: PlanePointMm | undefined): boolean => {
  if (corner === undefined) return false
  const u = corner.uMm - at.xMm
  const v = corner.vMm - at.zMm
  const lengthMm = Math.hypot(u, v)
  if (lengthMm < AT_CORNER_MM) return false
  const along = ends.reduce(
    (sum, end) => sum + ((end.xMm - at.xMm) * u + (end.zMm - at.zMm) * v) / pointDistanceMm(at, end),
    0,
  )
  return along / lengthMm > DRAWN
}

/** The strap bent in over the upper edge of the shell's side: the shortest over all its pieces that does not slide on along the next. */
const overSide = (
  mount: MountEnd,
  end: BodyEnd,
  shell: SeatShell,
  { contact, reach }: StraightRun,
  outward: 1 | -1,
): StrapRun | null => {
  const yMm = shell.middleYMm + outward * shell.halfWidthMm
  let best: StrapRun | null = null
  let bestMm = Infinity
  for (const [index, to] of shell.upperEdge.entries()) {
    const from = shell.upperEdge[index - 1]
    const portal = from && edgePortal(from, to, yMm, outward)
    if (from === undefined || portal === undefined || portal === null) continue
    const taut = tautString(mount, end, portal, { contact, body: reach.point })
    const [at] = 'by' in taut ? [] : taut.crossings
    if ('by' in taut || at === undefined) continue
    const ends = [taut.contact, taut.reach.point]
    const isAtCorner = (corner: PlanePointMm): boolean =>
      Math.hypot(corner.uMm - at.xMm, corner.vMm - at.zMm) < AT_CORNER_MM
    const nexts = isAtCorner(from) ? [index - 2, index] : isAtCorner(to) ? [index - 1, index + 1] : []
    if (nexts.some((next) => isDrawnToward(at, ends, shell.upperEdge[next]))) continue
    const lengthMm =
      pointDistanceMm(taut.contact, at) + pointDistanceMm(at, taut.reach.point) + onBodyMm(end, taut.reach)
    if (lengthMm >= bestMm) continue
    bestMm = lengthMm
    best = { contact: taut.contact, edges: [at], edgesOn: 'seat-side', reach: taut.reach, pass: null }
  }
  return best
}

/** The part of a straight piece that lies between the shell's sides; null when none does. */
const betweenSides = (
  { middleYMm, halfWidthMm }: SeatShell,
  from: PointMm,
  to: PointMm,
): { readonly from: PointMm; readonly to: PointMm } | null => {
  const a = from.yMm - middleYMm
  const b = to.yMm - middleYMm
  if (Math.min(a, b) >= halfWidthMm || Math.max(a, b) <= -halfWidthMm) return null
  const within = (point: PointMm, offMm: number): PointMm =>
    Math.abs(offMm) <= halfWidthMm
      ? point
      : pointBetween(from, to, (Math.sign(offMm) * halfWidthMm - a) / (b - a))
  return { from: within(from, a), to: within(to, b) }
}

/**
 * A lap or anti-submarine strap without a slot: over the side of the shell where the straight strap would come in through it, a problem
 * where between the sides it would pass through the shell from below or behind, else straight. Where it crosses only the upper edge
 * between the sides it runs through the open shell.
 */
export const pastShell = (
  strap: StrapId,
  mount: MountEnd,
  end: BodyEnd,
  shell: SeatShell | null,
  straight: StraightRun,
): Result<StrapRun, PathProblem> => {
  const { contact, reach } = straight
  const clear: StrapRun = { contact, edges: [], edgesOn: 'seat-side', reach, pass: null }
  if (shell === null) return ok(clear)
  const between = betweenSides(shell, contact, reach.point)
  if (between === null) return ok(clear)
  const offMm = contact.yMm - shell.middleYMm
  if (Math.abs(offMm) >= shell.halfWidthMm && isInside(shell.outline, side(between.from))) {
    const over = overSide(mount, end, shell, straight, offMm < 0 ? -1 : 1)
    return over === null ? err({ kind: 'no-slot', strap }) : ok(over)
  }
  return isThroughShell(shell, between.from, between.to) ? err({ kind: 'no-slot', strap }) : ok(clear)
}
