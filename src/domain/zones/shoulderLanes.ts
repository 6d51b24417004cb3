import { projected } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { tangentPoint } from '../geometry/tangent'
import type { Anchor } from '../straps/anchor'
import { mountCircle } from '../straps/mount'
import type { Gate, StrapScene } from '../straps/scene'
import { atan2Deg } from '../units/angle'
import { bandCell } from './cells'
import type { Fan } from './fan'
import type { Bend, Lane, LaneGate } from './lane'
import { beyondGate, farRays, isClearOf, rayThroughDeg } from './laneGate'

/** Signed radius by which the contact of a mount lies beside its centre, along the left normal of the run away from the body. */
export const contactShiftMm = (anchor: Anchor, radiusMm: number): number =>
  anchor.mount.kind === 'wrap' && anchor.mount.over === 'under' ? -radiusMm : radiusMm

/**
 * The steepest rise (ray angle) at which a strap still bears on the shoulder: the front piece from the buckle carried on
 * straight. 90° while there is no buckle.
 */
const highestDeg = (scene: StrapScene, buckle: PointMm | null): number | null => {
  if (buckle === null) return 90
  const end = projected(buckle, 'side')
  const front = tangentPoint(scene.body.shoulderArc, end, 'right')
  return front && Math.min(90, atan2Deg(front.vMm - end.vMm, front.uMm - end.uMm))
}

const laneGate = (
  gate: Gate,
  body: Fan,
  circle: StrapScene['body']['shoulderArc'],
  highestRiseDeg: number,
): LaneGate | null => {
  const beyond = beyondGate(gate, body.centre)
  const { lower, upper } = gate
  if (beyond === null || !isClearOf(circle, lower) || (upper !== null && !isClearOf(circle, upper)))
    return null
  const lowDeg = rayThroughDeg(body, lower, 0)
  const highDeg = upper === null ? Infinity : rayThroughDeg(body, upper, 0)
  if (lowDeg === null || highDeg === null || highDeg < lowDeg) return null
  const bendAt = (at: Bend['at'], runDeg: number): Bend | null =>
    runDeg > -90 && runDeg <= highestRiseDeg ? { at, runDeg, from: 'shoulder' } : null
  const far = farRays(body, beyond, 0)
  return {
    beyond,
    lowDeg,
    highDeg,
    lower: bendAt(lower, lowDeg),
    upper: upper && bendAt(upper, highDeg),
    // Leaving the shoulder beyond the gate, the strap does not meet it.
    far: far && { ...far, bend: null },
  }
}

/**
 * The one lane of a shoulder strap: tangents to the shoulder arc, over its top. Null when the position of the gate lets no
 * straight-line description hold; then the region is traced. A wrap is taken behind the middle of the shoulder only.
 */
export const shoulderLanes = (
  scene: StrapScene,
  anchor: Anchor,
  gate: Gate | null,
  buckle: PointMm | null,
): readonly Lane[] | null => {
  const arc = scene.body.shoulderArc
  const circle = mountCircle(anchor.mount, scene.tubes)
  const riseDeg = highestDeg(scene, buckle)
  if (circle === null || riseDeg === null) return []
  const shiftMm = contactShiftMm(anchor, circle.radiusMm)
  const body: Fan = { centre: arc.centre, offsetMm: arc.radiusMm }
  const acting = gate && laneGate(gate, body, arc, riseDeg)
  if (gate !== null && acting === null) return null
  return [
    {
      on: 'shoulder',
      fan: { centre: arc.centre, offsetMm: arc.radiusMm - shiftMm },
      contactShiftMm: shiftMm,
      fromDeg: -90,
      toDeg: riseDeg,
      openBelow: true,
      openAbove: true,
      where: anchor.mount.kind === 'wrap' ? bandCell('u', arc.centre.uMm, null) : [],
      closedByWhere: false,
      whereUnbent: [],
      gate: acting,
    },
  ]
}
