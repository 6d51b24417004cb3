import { type Elevation, type PlanePointMm, projected } from '../../geometry/plane'
import { pointBetween, pointDistanceMm, type PointMm } from '../../geometry/point'
import type { StrapPath } from '../../straps/path'
import { type Belt, type StrapFamily, strapFamily } from '../../straps/strap'

/** The body of an adjuster as its strap carries it. */
export interface PlacedAdjuster {
  readonly path: StrapPath
  readonly family: StrapFamily
  /** The middle line of the strap under the body, two points or more; what would lie beyond the strap's ends is not there. */
  readonly line: readonly PointMm[]
}

/** The adjusters of a belt on the straps that have a path; none where the strap ends before the body begins. */
export const placedAdjusters = (belt: Belt, paths: readonly StrapPath[]): readonly PlacedAdjuster[] =>
  paths.flatMap((path) => {
    const family = strapFamily(path.strap)
    const adjuster = belt.adjusters?.[family]
    if (adjuster === undefined) return []
    const startMm = Math.max(0, adjuster.fromAnchorMm - adjuster.lengthMm / 2)
    const line = polylinePart(path.polyline, startMm, adjuster.fromAnchorMm + adjuster.lengthMm / 2)
    return line.length < 2 ? [] : [{ path, family, line }]
  })

/** The part of a polyline between two lengths from its start, its ends cut to them; empty beyond its end. */
export const polylinePart = (
  points: readonly PointMm[],
  fromMm: number,
  toMm: number,
): readonly PointMm[] => {
  const part: PointMm[] = []
  let passedMm = 0
  for (const [index, end] of points.entries()) {
    const start = points[index - 1]
    if (start === undefined) continue
    const pieceMm = pointDistanceMm(start, end)
    const [first, last] = [fromMm - passedMm, toMm - passedMm]
    passedMm += pieceMm
    if (pieceMm === 0 || last <= 0 || first >= pieceMm) continue
    if (part.length === 0) part.push(pointBetween(start, end, Math.max(0, first) / pieceMm))
    part.push(pointBetween(start, end, Math.min(pieceMm, last) / pieceMm))
  }
  return part
}

/**
 * A band of even width about a line as the elevation shows it, as one closed outline. Pieces that the elevation sees end on have no
 * width there and are left out; null when all of them are.
 */
export const bandAbout = (
  line: readonly PointMm[],
  halfMm: number,
  elevation: Elevation,
): readonly PlanePointMm[] | null => {
  const flat = line.map((point) => projected(point, elevation))
  const sides = flat.slice(1).flatMap((end, index) => {
    const start = flat[index]
    if (start === undefined) return []
    const [du, dv] = [end.uMm - start.uMm, end.vMm - start.vMm]
    const length = Math.hypot(du, dv)
    if (length < END_ON_MM) return []
    const [u, v] = [(-dv / length) * halfMm, (du / length) * halfMm]
    const beside = (at: PlanePointMm, sign: 1 | -1): PlanePointMm => ({
      uMm: at.uMm + sign * u,
      vMm: at.vMm + sign * v,
    })
    return [{ left: [beside(start, 1), beside(end, 1)], right: [beside(start, -1), beside(end, -1)] }]
  })
  if (sides.length === 0) return null
  return [...sides.flatMap(({ left }) => left), ...sides.flatMap(({ right }) => right).toReversed()]
}

/** Shorter than this in the elevation a piece has no direction to be drawn along. A drawing convention of ours. */
const END_ON_MM = 0.01
