import type { CircleMm } from './circle'
import type { PlanePointMm } from './plane'

/** The left or right hand of somebody who walks along a directed line in the drawn plane (u right, v up). */
export type Side = 'left' | 'right'

/** The two ends of a taut piece between two circles. */
export interface CommonTangent {
  readonly onA: PlanePointMm
  readonly onB: PlanePointMm
}

/** Rounding in a coordinate of a few metres: below this a point that should be on a circle counts as on it. Our judgement. */
const ON_CIRCLE_MM = 1e-9

const sideSign = (side: Side): 1 | -1 => (side === 'left' ? 1 : -1)

/**
 * Where the tangent from `from` touches the circle. Looking from `from` to the touching point, the circle's centre lies on
 * `centreSide`. Null when `from` is inside the circle. On the circle the touching point is `from` itself; radius 0 gives the centre.
 *
 * Formula: with d = |centre − from| the tangent has length t = √(d² − r²) and makes the angle asin(r/d) with the line to the
 * centre. Source: Euclid, Elements III.18 (a tangent is square to the radius at the point of contact) and the right triangle.
 */
export const tangentPoint = (circle: CircleMm, from: PlanePointMm, centreSide: Side): PlanePointMm | null => {
  const { centre, radiusMm } = circle
  if (radiusMm <= 0) return centre
  const duMm = centre.uMm - from.uMm
  const dvMm = centre.vMm - from.vMm
  const distanceMm = Math.sqrt(duMm * duMm + dvMm * dvMm)
  if (distanceMm < radiusMm - ON_CIRCLE_MM) return null
  if (distanceMm <= radiusMm) return from
  const tangentMm = Math.sqrt((distanceMm - radiusMm) * (distanceMm + radiusMm))
  const cosine = tangentMm / distanceMm
  // A centre on the left means that the tangent leaves the line to the centre clockwise.
  const sine = (-sideSign(centreSide) * radiusMm) / distanceMm
  const share = tangentMm / distanceMm
  return {
    uMm: from.uMm + share * (duMm * cosine - dvMm * sine),
    vMm: from.vMm + share * (duMm * sine + dvMm * cosine),
  }
}

/**
 * The line directed from circle `a` to circle `b` that touches both, with a's centre on `aSide` and b's on `bSide`:
 * an outer tangent when the sides are equal, an inner (crossing) one when they differ. Radius 0 stands for the centre.
 * Null when there is none: one circle inside the other, circles that overlap (inner), or one common centre.
 *
 * Formula: with n the left normal of the line and s = ±1 for left/right, (B − A)·n = s_b·r_b − s_a·r_a = k, so the line makes
 * the angle asin(k/|AB|) with AB, and the touching points are A − s_a·r_a·n and B − s_b·r_b·n. Source: derived here from the
 * same right triangle as `tangentPoint`.
 */
export const commonTangent = (a: CircleMm, b: CircleMm, aSide: Side, bSide: Side): CommonTangent | null => {
  const aLeftMm = sideSign(aSide) * Math.max(0, a.radiusMm)
  const bLeftMm = sideSign(bSide) * Math.max(0, b.radiusMm)
  const duMm = b.centre.uMm - a.centre.uMm
  const dvMm = b.centre.vMm - a.centre.vMm
  const distanceMm = Math.hypot(duMm, dvMm)
  const offsetMm = bLeftMm - aLeftMm
  if (distanceMm < ON_CIRCLE_MM || Math.abs(offsetMm) > distanceMm + ON_CIRCLE_MM) return null
  const sine = Math.max(-1, Math.min(1, offsetMm / distanceMm))
  const cosine = Math.sqrt((1 - sine) * (1 + sine))
  const directionU = (duMm * cosine + dvMm * sine) / distanceMm
  const directionV = (dvMm * cosine - duMm * sine) / distanceMm
  const normalU = -directionV
  const normalV = directionU
  return {
    onA: { uMm: a.centre.uMm - aLeftMm * normalU, vMm: a.centre.vMm - aLeftMm * normalV },
    onB: { uMm: b.centre.uMm - bLeftMm * normalU, vMm: b.centre.vMm - bLeftMm * normalV },
  }
}
