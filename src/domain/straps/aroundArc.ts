import type { CircleMm } from '../geometry/circle'
import { planeDistanceMm, type PlanePointMm } from '../geometry/plane'

/** Below this two contacts have no usable direction between them: the same 1 µm as `directionBetween`. */
export const CONTACT_MM = 1e-3

/**
 * Distance of a point from the line directed from `from` to `to`, mm, + on its left. For two points at one place, their distance
 * from it.
 */
export const leftOfLineMm = (from: PlanePointMm, to: PlanePointMm, point: PlanePointMm): number => {
  const du = to.uMm - from.uMm
  const dv = to.vMm - from.vMm
  const lengthMm = Math.sqrt(du * du + dv * dv)
  if (lengthMm === 0) return planeDistanceMm(from, point)
  return (du * (point.vMm - from.vMm) - dv * (point.uMm - from.uMm)) / lengthMm
}

/**
 * Whether a straight strap walked from `from` to `to` passes a round part of the body with its middle on the right without
 * cutting it; a part that is not beside the piece at all is passed.
 */
export const isPassedOnRight = (circle: CircleMm, from: PlanePointMm, to: PlanePointMm): boolean => {
  const du = to.uMm - from.uMm
  const dv = to.vMm - from.vMm
  const along = (circle.centre.uMm - from.uMm) * du + (circle.centre.vMm - from.vMm) * dv
  if (along <= 0 || along >= du * du + dv * dv) return true
  return -leftOfLineMm(from, to, circle.centre) >= circle.radiusMm
}
