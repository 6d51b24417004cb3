import type { CircleMm } from '../geometry/circle'
import { planeDistanceMm, type PlanePointMm } from '../geometry/plane'
import type { Side } from '../geometry/tangent'

/** Below this two contacts have no usable direction between them: the same 1 µm as `directionBetween`. */
export const CONTACT_MM = 1e-3

/**
 * By how much a straight strap clears a round part of the body that it has to pass with the centre on `side`, mm. Negative: it
 * would cut the body or pass on the wrong side, so it bears on the arc. Where the arc is not beside the piece at all, the
 * distance from the nearer end.
 */
export const arcClearanceMm = (
  circle: CircleMm,
  from: PlanePointMm,
  to: PlanePointMm,
  side: Side,
): number => {
  const du = to.uMm - from.uMm
  const dv = to.vMm - from.vMm
  const cu = circle.centre.uMm - from.uMm
  const cv = circle.centre.vMm - from.vMm
  const lengthSqMm2 = du * du + dv * dv
  const along = lengthSqMm2 === 0 ? 0 : (cu * du + cv * dv) / lengthSqMm2
  if (along <= 0) return planeDistanceMm(circle.centre, from) - circle.radiusMm
  if (along >= 1) return planeDistanceMm(circle.centre, to) - circle.radiusMm
  const leftMm = (du * cv - dv * cu) / Math.sqrt(lengthSqMm2)
  return (side === 'left' ? leftMm : -leftMm) - circle.radiusMm
}
