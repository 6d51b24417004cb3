import { projected, type PlanePointMm } from '../geometry/plane'
import { forwardAngleDeg } from './lapAim'
import { addMirror } from './mirrorQuantities'
import { anchorOf } from './mount'
import type { QuantitySink } from './quantity'
import type { StrapScene } from './scene'
import type { SolvedStrap } from './strapPath'

/** How far ahead of the hip point an adjustable seat's lap angle is taken. Source: 49 CFR 571.210 S4.3.1.1(b), "64 mm forward of". */
const SHIFTED_AHEAD_MM = 64

/** How far above the hip point an adjustable seat's lap angle is taken. Source: 49 CFR 571.210 S4.3.1.1(b), "10 mm above". */
const SHIFTED_ABOVE_MM = 10

/** The point 64 mm ahead of and 10 mm above the hip point that `lap-shifted-angle` is taken to, in the side plane. */
export const shiftedHip = (hip: PlanePointMm): PlanePointMm => ({
  uMm: hip.uMm - SHIFTED_AHEAD_MM,
  vMm: hip.vMm + SHIFTED_ABOVE_MM,
})

/** The front contact of a lap strap: the last contact before the buckle. */
const frontContact = ({ path, anchorContact }: SolvedStrap): PlanePointMm =>
  projected((path.contacts[path.contacts.length - 2] ?? { point: anchorContact }).point, 'side')

/**
 * Height of the strap's middle over the front hip bone in side view, + above. Where the bone lies ahead of the front contact the
 * strap has already turned across the lap: the contact's own height counts. Behind the effective anchor its height counts.
 */
const overHipBoneMm = (end: PlanePointMm, front: PlanePointMm, bone: PlanePointMm): number => {
  const share = (bone.uMm - front.uMm) / (end.uMm - front.uMm)
  const heldShare = Math.min(1, Math.max(0, share))
  return front.vMm + heldShare * (end.vMm - front.vMm) - bone.vMm
}

/** Adds the quantities of one lap strap; formulas in straps/README.md. */
export const addLapQuantities = (sink: QuantitySink, scene: StrapScene, strap: SolvedStrap): void => {
  const subject = strap.anchor.strap
  const end = projected(strap.path.effectiveAnchor, 'side')
  const hip = projected(scene.body.hip, 'side')
  const front = frontContact(strap)
  const { left, right } = scene.body.frontHipBone
  const bone = projected(subject === 'lap-left' ? left : right, 'side')
  if (sink.wants('lap-angle')) sink.put('lap-angle', subject, forwardAngleDeg(end, hip))
  if (sink.wants('lap-run-angle')) sink.put('lap-run-angle', subject, forwardAngleDeg(end, front))
  if (sink.wants('lap-shifted-angle'))
    sink.put('lap-shifted-angle', subject, forwardAngleDeg(end, shiftedHip(hip)))
  if (sink.wants('lap-over-asis')) sink.put('lap-over-asis', subject, overHipBoneMm(end, front, bone))
}

/**
 * Adds the quantities of the pair: where the anchors are, whether or not the straps have a path. The spacing is across the seat, as the
 * documents say that limit it (49 CFR 571.210 S4.3.1.4, read: “at least 165 mm apart laterally”), and minus when left and right are
 * exchanged.
 */
export const addLapPairQuantities = (sink: QuantitySink, scene: StrapScene): void => {
  const left = anchorOf(scene.anchors, 'lap-left')?.mount.point
  const right = anchorOf(scene.anchors, 'lap-right')?.mount.point
  if (left === undefined || right === undefined) return
  const subject = 'lap-pair'
  if (sink.wants('lap-spacing')) sink.put('lap-spacing', subject, right.yMm - left.yMm)
  addMirror(sink, scene, 'lap')
}
