import { pointBetween, type PointMm } from './point'

const clamped = (share: number): number => (share < 0 ? 0 : share > 1 ? 1 : share)

/** Two pieces whose directions differ by less than this (sine squared) are parallel. Our judgement. */
const PARALLEL = 1e-18

/** How far along each of two straight pieces their nearest points lie, 0 at the start to 1 at the end. */
interface NearestShares {
  readonly s: number
  readonly t: number
}

/**
 * Where two straight pieces in space are nearest to each other; their ends belong to them, a piece may be a point. Formula: the
 * closest points of the two lines, each held within its piece and the other found anew. Source: Ericson, Real-Time Collision
 * Detection, 5.1.9 (from memory).
 */
const nearestShares = (a0: PointMm, a1: PointMm, b0: PointMm, b1: PointMm): NearestShares => {
  const ux = a1.xMm - a0.xMm
  const uy = a1.yMm - a0.yMm
  const uz = a1.zMm - a0.zMm
  const vx = b1.xMm - b0.xMm
  const vy = b1.yMm - b0.yMm
  const vz = b1.zMm - b0.zMm
  const wx = a0.xMm - b0.xMm
  const wy = a0.yMm - b0.yMm
  const wz = a0.zMm - b0.zMm
  const uu = ux * ux + uy * uy + uz * uz
  const vv = vx * vx + vy * vy + vz * vz
  const uv = ux * vx + uy * vy + uz * vz
  const uw = ux * wx + uy * wy + uz * wz
  const vw = vx * wx + vy * wy + vz * wz
  const size = uu * vv - uv * uv
  let s = size > PARALLEL * uu * vv ? clamped((uv * vw - uw * vv) / size) : 0
  let t = vv > 0 ? (uv * s + vw) / vv : 0
  if (t < 0 || t > 1 || vv === 0) {
    t = clamped(t)
    s = uu > 0 ? clamped((uv * t - uw) / uu) : 0
  }
  return { s, t }
}

/** The two points at which two straight pieces in space are nearest to each other. */
export const segmentsNearest = (
  a0: PointMm,
  a1: PointMm,
  b0: PointMm,
  b1: PointMm,
): { readonly onFirst: PointMm; readonly onSecond: PointMm } => {
  const { s, t } = nearestShares(a0, a1, b0, b1)
  return { onFirst: pointBetween(a0, a1, s), onSecond: pointBetween(b0, b1, t) }
}

/** Shortest distance between two straight pieces in space, mm ≥ 0. */
export const segmentDistanceMm = (a0: PointMm, a1: PointMm, b0: PointMm, b1: PointMm): number => {
  const { s, t } = nearestShares(a0, a1, b0, b1)
  const dx = a0.xMm + s * (a1.xMm - a0.xMm) - b0.xMm - t * (b1.xMm - b0.xMm)
  const dy = a0.yMm + s * (a1.yMm - a0.yMm) - b0.yMm - t * (b1.yMm - b0.yMm)
  const dz = a0.zMm + s * (a1.zMm - a0.zMm) - b0.zMm - t * (b1.zMm - b0.zMm)
  return Math.sqrt(dx * dx + dy * dy + dz * dz)
}
