import type { PointMm } from '../geometry/point'
import { err, type Result } from '../result'
import { CONTACT_MM } from './aroundArc'
import type { LapEnd, LapReach } from './bodyEnd'
import { outsideTouches, passOf } from './edgeTouches'
import type { MountEnd } from './mountEnd'
import type { PathProblem } from './path'
import type { PlaceFrame, StrapFrame } from './placeFrame'
import { pastShell } from './seatShell'
import type { StrapId } from './strap'
import { strapPath, type SolvedStrap, type Touch, type TouchArc } from './strapPath'
import { inBodyMm, lastOutside, straightRun, throughPortal, type StrapRun } from './strapRun'

/** A lap strap up to its front contact; the way on to the buckle follows when both sides are known. */
export interface LapRun extends StrapRun {
  readonly reach: LapReach
}

const lapEndOf = ({ lapEnds }: PlaceFrame, strap: StrapId): LapEnd =>
  strap === 'lap-left' ? lapEnds.left : lapEnds.right

/**
 * Why a lap strap whose last contact outside the body is `from` cannot hold the pelvis, or null: it would not pull rearward. Straight
 * below the hip point (90°) is the last place that counts as behind.
 */
const notBehind = (strap: StrapId, { hip }: LapEnd, from: PointMm): PathProblem | null => {
  const behindMm = from.xMm - hip.xMm
  const isStraightBelow = Math.abs(behindMm) < CONTACT_MM && from.zMm < hip.zMm - CONTACT_MM
  if (behindMm >= CONTACT_MM || isStraightBelow) return null
  return { kind: 'lap-anchor-not-behind', strap, aheadMm: Math.max(0, -behindMm) }
}

const across = (strap: StrapId, { hip, outward }: LapEnd, mount: PointMm): PathProblem | null => {
  const acrossMm = -outward * (mount.yMm - hip.yMm)
  return acrossMm > CONTACT_MM ? { kind: 'lap-anchor-across', strap, acrossMm } : null
}

/** Solves one lap strap from its mount to the front contact. */
export const lapRun = (
  place: PlaceFrame,
  { strap, portal }: StrapFrame,
  mount: MountEnd,
): Result<LapRun, PathProblem> => {
  const end = lapEndOf(place, strap)
  const { contact, reach } = straightRun(mount, end)
  if (contact === null || reach === null) {
    const insideMm = Math.max(0, inBodyMm(end, mount.point) + mount.radiusMm)
    const inside: PathProblem = { kind: 'anchor-inside-body', strap, insideMm }
    const known = contact && (notBehind(strap, end, contact) ?? across(strap, end, mount.point))
    return err(known ?? inside)
  }
  const straight = { contact, reach }
  const run =
    portal === null
      ? pastShell(strap, mount, end, place.shell, straight)
      : throughPortal(strap, mount, end, portal, straight)
  if (!run.ok) {
    const isShort = run.error.kind === 'slot-not-reached' || run.error.kind === 'no-slot'
    return isShort ? err(notBehind(strap, end, contact) ?? across(strap, end, mount.point) ?? run.error) : run
  }
  const problem = notBehind(strap, end, lastOutside(run.value)) ?? across(strap, end, mount.point)
  return problem === null ? (run as Result<LapRun, PathProblem>) : err(problem)
}

/** The strap round the end of the pelvis, from where it meets it to the front contact; null when it meets it there. */
const endArc = ({ outward, cylinderHalfMm, hip }: LapEnd, reach: LapReach): TouchArc | null => {
  const { front, forwardU, forwardV, alongMm, acrossMm, meets } = reach
  const fromRad = Math.atan2(meets.sine, meets.cosine)
  if (fromRad <= 0) return null
  return {
    middle: {
      xMm: front.xMm - alongMm * forwardU,
      yMm: hip.yMm + outward * cylinderHalfMm,
      zMm: front.zMm - alongMm * forwardV,
    },
    first: { x: alongMm * forwardU, y: 0, z: alongMm * forwardV },
    second: { x: 0, y: outward * acrossMm, z: 0 },
    fromRad,
    sweepRad: -fromRad,
    lengthMm: null,
    across: 'own',
  }
}

const unbent = (on: Touch['on'], point: PointMm, arcToNext: TouchArc | null): Touch => ({
  on,
  point,
  bendDeg: 0,
  arcToNext,
})

/**
 * The whole lap strap: anchor, edges where it bears on them, the side of the pelvis, round it to the front contact beside the
 * front hip bone, straight across to the buckle.
 */
export const lapStrap = (
  place: PlaceFrame,
  { strap, anchor }: StrapFrame,
  run: LapRun,
  buckle: PointMm,
): SolvedStrap => {
  const touches = outsideTouches(run, null)
  const arc = endArc(lapEndOf(place, strap), run.reach)
  if (arc !== null) touches.push(unbent('body', run.reach.point, arc))
  touches.push(unbent('body', run.reach.front, null), unbent('buckle', buckle, null))
  return { anchor, path: strapPath(strap, touches), touches, anchorContact: run.contact, pass: passOf(run) }
}
