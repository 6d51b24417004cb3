import { cosDeg, sinDeg } from '../units/angle'
import type { PlanePointMm } from './plane'
import type { ConvexPolygon, HalfPlane } from './polygon'

/**
 * Everything on the left of the line through `point` in the direction `directionDeg`, the line included.
 * The direction is anticlockwise from the drawing's right (+u); 90° is up the drawing (+v).
 */
export const halfPlaneLeftOf = (point: PlanePointMm, directionDeg: number): HalfPlane => {
  // The left normal is (−sin, cos); the stored normal points out of the kept side, so it is the right one.
  const nu = sinDeg(directionDeg)
  const nv = -cosDeg(directionDeg)
  return { nu, nv, offsetMm: nu * point.uMm + nv * point.vMm }
}

/** Everything on the right of the line through `point` in the direction `directionDeg`, the line included. */
export const halfPlaneRightOf = (point: PlanePointMm, directionDeg: number): HalfPlane =>
  oppositeHalfPlane(halfPlaneLeftOf(point, directionDeg))

/** The other side of the same line; both include the line. */
export const oppositeHalfPlane = (halfPlane: HalfPlane): HalfPlane => ({
  nu: -halfPlane.nu,
  nv: -halfPlane.nv,
  offsetMm: -halfPlane.offsetMm,
})

/** How far outside the kept side a point is, mm: 0 on the line, negative inside. */
export const outsideMm = (halfPlane: HalfPlane, point: PlanePointMm): number =>
  halfPlane.nu * point.uMm + halfPlane.nv * point.vMm - halfPlane.offsetMm

/**
 * The part of a convex polygon inside a half-plane; empty (no corners) when nothing with an area is left.
 * Corners on the line are kept. Source: Sutherland and Hodgman, Reentrant polygon clipping, Comm. ACM 17 (1974) 32–42 (from memory).
 */
export const clippedConvex = (polygon: ConvexPolygon, halfPlane: HalfPlane): ConvexPolygon => {
  const kept: PlanePointMm[] = []
  let before = polygon.at(-1)
  if (before === undefined) return []
  let beforeMm = outsideMm(halfPlane, before)
  for (const corner of polygon) {
    const cornerMm = outsideMm(halfPlane, corner)
    // Strictly opposite signs: a corner on the line itself is kept below and must not be doubled by a crossing.
    if ((beforeMm < 0 && cornerMm > 0) || (beforeMm > 0 && cornerMm < 0)) {
      const share = beforeMm / (beforeMm - cornerMm)
      kept.push({
        uMm: before.uMm + (corner.uMm - before.uMm) * share,
        vMm: before.vMm + (corner.vMm - before.vMm) * share,
      })
    }
    if (cornerMm <= 0) kept.push(corner)
    before = corner
    beforeMm = cornerMm
  }
  return kept.length < 3 ? [] : kept
}
