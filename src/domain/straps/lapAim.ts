import type { PosedBody } from '../body/posedBody'
import type { PlanePointMm } from '../geometry/plane'
import { atan2Deg, cosDeg, sinDeg } from '../units/angle'

/** Angle above horizontal of the line from `from` forward to `to` in the side plane: 0° level, 90° straight up, (−180°, 180°]. */
export const forwardAngleDeg = (from: PlanePointMm, to: PlanePointMm): number =>
  atan2Deg(to.vMm - from.vMm, from.uMm - to.uMm)

/** The point of the lap arc at an angle above horizontal, seen from the hip point forward. */
export const lapFrontAt = (body: PosedBody, angleDeg: number): PlanePointMm => ({
  uMm: body.lapArc.centre.uMm - body.lapArc.radiusMm * cosDeg(angleDeg),
  vMm: body.lapArc.centre.vMm + body.lapArc.radiusMm * sinDeg(angleDeg),
})
