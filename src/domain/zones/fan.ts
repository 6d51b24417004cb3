import type { PlanePointMm } from '../geometry/plane'
import type { HalfPlane } from '../geometry/polygon'
import { acosDeg, atan2Deg, cosDeg, sinDeg, wrappedDeg } from '../units/angle'
import { type Cells, NOTHING } from './cells'

/**
 * The straight runs that leave a circle, each along one tangent: the ray at angle α starts at `centre + offsetMm·n` and goes in
 * the direction d, with d = (cos α, sin α) and n its left normal (−sin α, cos α), in the drawn plane (u right, v up).
 * `offsetMm` > 0 puts the circle on the right of the run, < 0 on its left; 0 is a point.
 *
 * Every point beyond the circle lies on exactly one such ray, which is why an angle limit of a taut strap is a straight line:
 * d(point)/dα × d = −s, not 0 for a run of length s > 0. Source: derived here.
 */
export interface Fan {
  readonly centre: PlanePointMm
  readonly offsetMm: number
}

/**
 * How far from the circle a wedge may leave points out: between its two lines and the circle a cap of R·(1/cos(Δ/2) − 1) belongs
 * to neither side. Our judgement: no mount is welded within 2 mm of the body it holds.
 */
const CAP_MM = 2

/** Widest wedge in one cell, degrees: short of a half turn, and with a cap of at most CAP_MM. */
const widestDeg = (radiusMm: number): number =>
  Math.min(170, 2 * acosDeg(Math.abs(radiusMm) / (Math.abs(radiusMm) + CAP_MM)))

/** The side of the ray's line on which larger α lies, the line included. */
export const turnedBeyond = ({ centre, offsetMm }: Fan, angleDeg: number): HalfPlane => {
  const nu = sinDeg(angleDeg)
  const nv = -cosDeg(angleDeg)
  return { nu, nv, offsetMm: nu * centre.uMm + nv * centre.vMm - offsetMm }
}

/** The side of the ray's line on which smaller α lies, the line included. */
export const turnedShortOf = ({ centre, offsetMm }: Fan, angleDeg: number): HalfPlane => {
  const nu = -sinDeg(angleDeg)
  const nv = cosDeg(angleDeg)
  return { nu, nv, offsetMm: nu * centre.uMm + nv * centre.vMm + offsetMm }
}

/** The points whose run leaves the fan at an angle from `fromDeg` to `toDeg` (at most a whole turn); nothing when `toDeg` is smaller. */
export const fanCells = (fan: Fan, fromDeg: number, toDeg: number): Cells => {
  if (toDeg < fromDeg) return NOTHING
  const count = Math.max(1, Math.ceil((toDeg - fromDeg) / widestDeg(fan.offsetMm) - 1e-9))
  const stepDeg = (toDeg - fromDeg) / count
  return Array.from({ length: count }, (_, index) => [
    turnedBeyond(fan, fromDeg + index * stepDeg),
    turnedShortOf(fan, fromDeg + (index + 1) * stepDeg),
  ])
}

/** The point of the ray at `angleDeg`, `alongMm` from where it starts. */
export const fanPoint = ({ centre, offsetMm }: Fan, angleDeg: number, alongMm: number): PlanePointMm => {
  const c = cosDeg(angleDeg)
  const s = sinDeg(angleDeg)
  return {
    uMm: centre.uMm - offsetMm * s + alongMm * c,
    vMm: centre.vMm + offsetMm * c + alongMm * s,
  }
}

/**
 * The angle of the ray that a point lies on, (−180°, 180°]; null inside the circle.
 * Formula: seen from the centre the point lies atan2(offset, s) to the left of the ray, with s = √(d² − offset²).
 */
export const fanAngleDeg = ({ centre, offsetMm }: Fan, point: PlanePointMm): number | null => {
  const du = point.uMm - centre.uMm
  const dv = point.vMm - centre.vMm
  const alongSqMm2 = du * du + dv * dv - offsetMm * offsetMm
  if (alongSqMm2 < 0) return null
  return wrappedDeg(atan2Deg(dv, du) - atan2Deg(offsetMm, Math.sqrt(alongSqMm2)))
}

/** The same direction as `angleDeg`, within half a turn of `nearDeg`. */
export const angleNearDeg = (angleDeg: number, nearDeg: number): number =>
  nearDeg + wrappedDeg(angleDeg - nearDeg)
