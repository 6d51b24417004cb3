import { planeSegmentIntersection } from '../geometry/segment'
import { isInsideOutline } from '../geometry/outline'
import { planeDistanceMm, planePoint, type PlanePointMm } from '../geometry/plane'
import { pointBetween, type PointMm } from '../geometry/point'
import { err, ok, type Result } from '../result'
import type { BodyEnd } from './bodyEnd'
import type { MountEnd } from './mountEnd'
import { restsOver, type OverEdge } from './overSide'
import type { PathProblem } from './path'
import type { SeatFrame } from './portal'
import { seatPointIn } from './portal'
import type { Seat } from './seat'
import type { StrapId } from './strap'
import type { StraightRun, StrapRun } from './strapRun'

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

/**
 * The strap bent in over the upper edge of the shell's side. Of several places in balance the one with the shortest way from mount to body
 * counts; a lap strap that can lie behind the hip point lies there: ahead of it nothing holds it.
 */
const overSide = (mount: MountEnd, end: BodyEnd, shell: SeatShell, outward: 1 | -1): StrapRun | null => {
  const yMm = shell.middleYMm + outward * shell.halfWidthMm
  let best: OverEdge | null = null
  for (const rest of restsOver(shell.upperEdge, { mount, end, yMm }))
    if (best === null || isBefore(end, rest, best)) best = rest
  return (
    best && { contact: best.contact, edges: [best.at], edgesOn: 'seat-side', reach: best.reach, pass: null }
  )
}

const isBefore = (end: BodyEnd, a: OverEdge, b: OverEdge): boolean => {
  if (end.family === 'lap') {
    const isBehind = a.at.xMm > end.hip.xMm
    if (isBehind !== b.at.xMm > end.hip.xMm) return isBehind
  }
  return a.outsideMm < b.outsideMm
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
  if (Math.abs(offMm) >= shell.halfWidthMm && isInsideOutline(shell.outline, side(between.from))) {
    const over = overSide(mount, end, shell, offMm < 0 ? -1 : 1)
    if (over !== null) return ok(over)
    // A lap strap that stays nowhere on the edge is drawn along it from behind the hip point and from ahead of it.
    const isDrawn = end.family === 'lap' && shell.upperEdge.length > 1
    return err(isDrawn ? { kind: 'lap-anchor-not-behind', strap, aheadMm: 0 } : { kind: 'no-slot', strap })
  }
  return isThroughShell(shell, between.from, between.to) ? err({ kind: 'no-slot', strap }) : ok(clear)
}
