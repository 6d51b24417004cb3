import { projected, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { atan2Deg, cosDeg, sinDeg } from '../units/angle'
import { anchorOf } from './mount'
import type { QuantitySink } from './quantity'
import type { StrapScene } from './scene'
import { strapSide, type StrapId } from './strap'
import type { SolvedStrap } from './strapPath'

/*
 * Where anchors lie from the hip point and from the points that European road law constructs on the torso line. The hip point of
 * the seated occupant stands in for the document's design point R.
 */

/** How far up the torso line B lies for an anchorage in the middle plane. Source: 76/115/EEC, Annex I 4.4.4.3, "260 mm + S". */
const B_UP_MM = 260

/** Angle between the torso line and the plane FK. Source: 76/115/EEC, Annex I 4.4.4.3, "120°". */
export const FK_DEG = 120

/** How far up the torso line Z lies. Source: 76/115/EEC, Annex I 4.4.4.1, "530 mm". */
const Z_UP_MM = 530

/** How far sideways from Z the shoulder's reference point lies. Source: 76/115/EEC, Annex I 4.4.4.1, from memory. */
export const X_SIDEWAYS_MM = 120

/** The point of the torso line `upMm` from the hip point, in the side plane. Formula: H + up·(sin β, cos β); source: the torso unit vector. */
const onTorsoLine = (hip: PlanePointMm, reclineDeg: number, upMm: number): PlanePointMm => ({
  uMm: hip.uMm + upMm * sinDeg(reclineDeg),
  vMm: hip.vMm + upMm * cosDeg(reclineDeg),
})

/** The point B of an anchorage `lateralMm` ≥ 0 from the seat's middle plane. Source: 76/115/EEC, Annex I 4.4.4.3: BR = 260 mm + S. */
export const pointB = (hip: PlanePointMm, reclineDeg: number, lateralMm: number): PlanePointMm =>
  onTorsoLine(hip, reclineDeg, B_UP_MM + lateralMm)

/** The point Z. Source: 76/115/EEC, Annex I 4.4.4.1: 530 mm from R up the reference line. */
export const pointZ = (hip: PlanePointMm, reclineDeg: number): PlanePointMm =>
  onTorsoLine(hip, reclineDeg, Z_UP_MM)

/**
 * How far a point lies behind the plane FK, mm, + behind and above. The plane is square to the seat's middle plane, passes B and
 * turns 120° rearward from the upward torso line; of the two planes at 120° it is the one that falls rearward, because only that
 * one has a rear side (the document's figure was not read). Formula: (E − B)·n with n the plane's normal, β + 30° from vertical.
 */
export const behindFkMm = (hip: PointMm, reclineDeg: number, at: PointMm): number => {
  const b = pointB(projected(hip, 'side'), reclineDeg, Math.abs(at.yMm - hip.yMm))
  const normalDeg = reclineDeg + FK_DEG - 90
  return (at.xMm - b.uMm) * sinDeg(normalDeg) + (at.zMm - b.vMm) * cosDeg(normalDeg)
}

/** +1 when inward is +y (left), −1 on the right; 0 in the middle. */
const inwardSign = (strap: StrapId): 1 | -1 | 0 => {
  const side = strapSide(strap)
  if (side === 'centre') return 0
  return side === 'left' ? 1 : -1
}

/** Plan angle of the line from the shoulder's reference point to a point, from straight rearward, + inward, (−180°, 180°]. */
const referencePlanDeg = (strap: StrapId, hip: PointMm, reclineDeg: number, at: PointMm): number => {
  const z = pointZ(projected(hip, 'side'), reclineDeg)
  const inward = inwardSign(strap)
  return atan2Deg(inward * (at.yMm - hip.yMm) + X_SIDEWAYS_MM, at.xMm - z.uMm)
}

/** Adds where a shoulder strap's effective anchor lies; definitions in straps/README.md. */
export const addShoulderReferences = (
  sink: QuantitySink,
  { body }: StrapScene,
  { anchor, path }: SolvedStrap,
): void => {
  const subject = anchor.strap
  const { hip, reclineDeg } = body
  const at = path.effectiveAnchor
  if (sink.wants('shoulder-above-hip')) sink.put('shoulder-above-hip', subject, at.zMm - hip.zMm)
  if (sink.wants('shoulder-behind-hip')) sink.put('shoulder-behind-hip', subject, at.xMm - hip.xMm)
  if (sink.wants('shoulder-behind-fk'))
    sink.put('shoulder-behind-fk', subject, behindFkMm(hip, reclineDeg, at))
  if (sink.wants('shoulder-reference-plan'))
    sink.put('shoulder-reference-plan', subject, referencePlanDeg(subject, hip, reclineDeg, at))
}

/** Adds how far a lap mount at `point` lies from the seat's middle plane, + on its own side. */
export const addOffCentre = (
  sink: QuantitySink,
  { body }: Pick<StrapScene, 'body'>,
  subject: 'lap-left' | 'lap-right',
  point: PointMm,
): void => {
  sink.put('lap-off-centre', subject, inwardSign(subject) * (body.hip.yMm - point.yMm))
}

/** Adds the same for an anchor as placed, whether or not the strap has a path. */
export const addLapOffCentre = (
  sink: QuantitySink,
  scene: StrapScene,
  subject: 'lap-left' | 'lap-right',
): void => {
  const point = anchorOf(scene.anchors, subject)?.mount.point
  if (point !== undefined) addOffCentre(sink, scene, subject, point)
}
