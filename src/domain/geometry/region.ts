import { clippedConvex, oppositeHalfPlane } from './halfPlane'
import { planeDistanceMm, type PlanePointMm } from './plane'
import type { ConvexPolygon, HalfPlane, Region } from './polygon'

/**
 * Pieces smaller than this are rounding, not room for a part: a square of one micrometre a side. They are dropped, so that
 * regions which only touch have nothing in common. Our judgement.
 */
const SLIVER_MM2 = 1e-6

/** Area of one convex polygon, mm² ≥ 0. Formula: half the sum of cross products (surveyor's formula). Source: Meister 1769 (from memory). */
const convexAreaMm2 = (polygon: ConvexPolygon): number => {
  const origin = polygon[0]
  if (origin === undefined) return 0
  let doubledMm2 = 0
  let before = origin
  for (const corner of polygon) {
    // From the first corner, not from the datum: far from the datum the products would lose their small digits.
    doubledMm2 +=
      (before.uMm - origin.uMm) * (corner.vMm - origin.vMm) -
      (corner.uMm - origin.uMm) * (before.vMm - origin.vMm)
    before = corner
  }
  return Math.max(0, doubledMm2 / 2)
}

/**
 * Corners closer than this are one corner: rounding decides where an edge this short points, and a wrong edge would put the
 * inside of a piece outside. A thousand times finer than the finest drawing grid. Our judgement.
 */
const SAME_CORNER_MM = 1e-6

const withoutDoubledCorners = (polygon: ConvexPolygon): ConvexPolygon =>
  polygon.filter((corner, index) => {
    const before = polygon.at(index - 1)
    return before === undefined || planeDistanceMm(before, corner) > SAME_CORNER_MM
  })

const withoutSlivers = (region: Region): Region =>
  region.map(withoutDoubledCorners).filter((polygon) => convexAreaMm2(polygon) >= SLIVER_MM2)

/** The edges of a convex polygon as half-planes whose overlap it is; edges without a length are left out. */
const edgeHalfPlanes = (polygon: ConvexPolygon): readonly HalfPlane[] =>
  polygon.flatMap((from, index) => {
    const to = polygon[(index + 1) % polygon.length] ?? from
    const lengthMm = planeDistanceMm(from, to)
    if (lengthMm === 0) return []
    const nu = (to.vMm - from.vMm) / lengthMm
    const nv = -(to.uMm - from.uMm) / lengthMm
    return [{ nu, nv, offsetMm: nu * from.uMm + nv * from.vMm }]
  })

const convexClipped = (polygon: ConvexPolygon, halfPlanes: readonly HalfPlane[]): ConvexPolygon => {
  let rest = polygon
  for (const halfPlane of halfPlanes) {
    rest = clippedConvex(rest, halfPlane)
    if (rest.length === 0) break
  }
  return rest
}

/** `polygon` without the convex `hole`: what is cut off by the hole's edges one after another. */
const convexDifference = (polygon: ConvexPolygon, hole: readonly HalfPlane[]): Region => {
  // Left whole when nothing would be taken away, so that repeated differences do not crumble a region.
  if (convexAreaMm2(convexClipped(polygon, hole)) < SLIVER_MM2) return [polygon]
  const pieces: ConvexPolygon[] = []
  let rest = polygon
  for (const edge of hole) {
    pieces.push(clippedConvex(rest, oppositeHalfPlane(edge)))
    rest = clippedConvex(rest, edge)
  }
  return pieces
}

/** The rectangle between two corners; empty when `max` is not above and to the right of `min`. */
export const boxRegion = (min: PlanePointMm, max: PlanePointMm): Region =>
  withoutSlivers(
    max.uMm > min.uMm && max.vMm > min.vMm
      ? [[min, { uMm: max.uMm, vMm: min.vMm }, max, { uMm: min.uMm, vMm: max.vMm }]]
      : [],
  )

/** The part of a region inside every one of the half-planes. */
export const regionClipped = (region: Region, halfPlanes: readonly HalfPlane[]): Region =>
  withoutSlivers(region.map((polygon) => convexClipped(polygon, halfPlanes)))

/** What two regions have in common; regions that only touch have nothing. */
export const regionIntersection = (a: Region, b: Region): Region =>
  withoutSlivers(
    b.flatMap((clip) => {
      const edges = edgeHalfPlanes(clip)
      // A polygon without an edge bounds nothing: it must not be taken for the whole plane.
      return edges.length < 3 ? [] : a.map((polygon) => convexClipped(polygon, edges))
    }),
  )

/** What of `a` is not in `b`. */
export const regionDifference = (a: Region, b: Region): Region => {
  let rest: Region = withoutSlivers(a)
  for (const polygon of b) {
    const edges = edgeHalfPlanes(polygon)
    if (edges.length < 3) continue
    rest = withoutSlivers(rest.flatMap((piece) => convexDifference(piece, edges)))
  }
  return rest
}

/** What is in `a` or in `b`, as polygons that do not overlap. */
export const regionUnion = (a: Region, b: Region): Region => [...withoutSlivers(a), ...regionDifference(b, a)]

/** Area of a region, mm² ≥ 0. */
export const regionArea = (region: Region): number =>
  region.reduce((sumMm2, polygon) => sumMm2 + convexAreaMm2(polygon), 0)

/** Distance from a point to a plane segment, mm. Formula: foot of the perpendicular, held between the ends. */
const segmentDistanceMm = (point: PlanePointMm, from: PlanePointMm, to: PlanePointMm): number => {
  const duMm = to.uMm - from.uMm
  const dvMm = to.vMm - from.vMm
  const lengthSqMm2 = duMm * duMm + dvMm * dvMm
  const alongMm2 = (point.uMm - from.uMm) * duMm + (point.vMm - from.vMm) * dvMm
  const share = lengthSqMm2 === 0 ? 0 : Math.min(1, Math.max(0, alongMm2 / lengthSqMm2))
  return Math.hypot(point.uMm - (from.uMm + share * duMm), point.vMm - (from.vMm + share * dvMm))
}

/** Rounding in a coordinate of a few metres: a point this little outside an edge is on it. Our judgement. */
const ON_EDGE_MM = 1e-9

const convexDistanceMm = (polygon: ConvexPolygon, point: PlanePointMm): number => {
  let nearestMm = Infinity
  let isInside = polygon.length >= 3
  let before = polygon.at(-1)
  if (before === undefined) return Infinity
  for (const corner of polygon) {
    const turn =
      (corner.uMm - before.uMm) * (point.vMm - before.vMm) -
      (corner.vMm - before.vMm) * (point.uMm - before.uMm)
    if (turn < 0) isInside = false
    nearestMm = Math.min(nearestMm, segmentDistanceMm(point, before, corner))
    before = corner
  }
  return isInside || nearestMm <= ON_EDGE_MM ? 0 : nearestMm
}

/** Shortest distance from a point to a region, mm: 0 inside and on the edge, Infinity when the region is empty. */
export const regionDistanceMm = (region: Region, point: PlanePointMm): number =>
  region.reduce((nearestMm, polygon) => Math.min(nearestMm, convexDistanceMm(polygon, point)), Infinity)

/** Whether a point is in a region or at most `toleranceMm` (≥ 0) outside it; the edge belongs to the region. */
export const regionContains = (region: Region, point: PlanePointMm, toleranceMm = 0): boolean =>
  regionDistanceMm(region, point) <= toleranceMm
