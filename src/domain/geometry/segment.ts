import type { PlanePointMm } from './plane'
import { directionBetween, pointBetween, pointDistanceMm, type Direction, type PointMm } from './point'

/** The nearest place on a polyline to some point. */
export interface NearestOnPolyline {
  readonly point: PointMm
  /** Which straight piece, counted from 0. At a joint the earlier of the two. */
  readonly segmentIndex: number
  /** How far along that piece, 0 at its start to 1 at its end. */
  readonly share: number
  readonly distanceMm: number
  /** Direction of that piece, length 1. Straight across the car (+y) for a piece without a length. */
  readonly axis: Direction
}

/** Where the perpendicular from a point meets the line through `a` and `b`, held between the ends; 0 at `a`, 1 at `b`. */
const nearestShare = (point: PointMm, a: PointMm, b: PointMm): number => {
  const dxMm = b.xMm - a.xMm
  const dyMm = b.yMm - a.yMm
  const dzMm = b.zMm - a.zMm
  const lengthSqMm2 = dxMm * dxMm + dyMm * dyMm + dzMm * dzMm
  if (lengthSqMm2 === 0) return 0
  const alongMm2 = (point.xMm - a.xMm) * dxMm + (point.yMm - a.yMm) * dyMm + (point.zMm - a.zMm) * dzMm
  return Math.min(1, Math.max(0, alongMm2 / lengthSqMm2))
}

/** Shortest distance from a point to the straight piece from `a` to `b`, mm ≥ 0; the ends belong to it. */
export const pointToSegmentMm = (point: PointMm, a: PointMm, b: PointMm): number =>
  pointDistanceMm(point, pointBetween(a, b, nearestShare(point, a, b)))

/** The place on a polyline nearest to a point. Needs at least two points (throws: a tube always has them). */
export const nearestOnPolyline = (points: readonly PointMm[], point: PointMm): NearestOnPolyline => {
  let nearest: NearestOnPolyline | null = null
  let start = points[0]
  for (const [segmentIndex, end] of points.slice(1).entries()) {
    if (start === undefined) break
    const share = nearestShare(point, start, end)
    const foot = pointBetween(start, end, share)
    const distanceMm = pointDistanceMm(point, foot)
    if (nearest === null || distanceMm < nearest.distanceMm) {
      const axis = directionBetween(start, end) ?? { x: 0, y: 1, z: 0 }
      nearest = { point: foot, segmentIndex, share, distanceMm, axis }
    }
    start = end
  }
  if (nearest === null)
    throw new RangeError(`a polyline needs at least 2 points, this one has ${points.length}`)
  return nearest
}

/** Segments whose directions differ by less than this (sine of the angle) count as parallel. Our judgement: about 0.06 µrad. */
const PARALLEL_SINE = 1e-9

/**
 * Where two straight pieces a–b and c–d of a drawn plane cross, their ends included. Null when they do not meet, when a piece
 * has no length, and when they are parallel, even if they overlap: then no single point is meant.
 *
 * Formula: a + t(b − a) = c + s(d − c), solved by cross products. Source: Cramer's rule.
 */
export const planeSegmentIntersection = (
  a: PlanePointMm,
  b: PlanePointMm,
  c: PlanePointMm,
  d: PlanePointMm,
): PlanePointMm | null => {
  const abU = b.uMm - a.uMm
  const abV = b.vMm - a.vMm
  const cdU = d.uMm - c.uMm
  const cdV = d.vMm - c.vMm
  const abMm = Math.hypot(abU, abV)
  const cdMm = Math.hypot(cdU, cdV)
  const cross = abU * cdV - abV * cdU
  if (abMm === 0 || cdMm === 0 || Math.abs(cross) <= PARALLEL_SINE * abMm * cdMm) return null
  const acU = c.uMm - a.uMm
  const acV = c.vMm - a.vMm
  const shareAb = (acU * cdV - acV * cdU) / cross
  const shareCd = (acU * abV - acV * abU) / cross
  if (!isOnSegment(shareAb, abMm) || !isOnSegment(shareCd, cdMm)) return null
  return { uMm: a.uMm + shareAb * abU, vMm: a.vMm + shareAb * abV }
}

/** Rounding in a coordinate of a few metres: a crossing this little beyond an end counts as on it. Our judgement. */
const BEYOND_END_MM = 1e-9

const isOnSegment = (share: number, lengthMm: number): boolean =>
  share * lengthMm >= -BEYOND_END_MM && (share - 1) * lengthMm <= BEYOND_END_MM
