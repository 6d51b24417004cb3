import type { PlanePointMm } from '../geometry/plane'
import type { ConvexPolygon, Region } from '../geometry/polygon'
import { regionContains } from '../geometry/region'
import { polygonEdges } from './cells'

/** Pieces of a region that come this close along a line belong together, mm. Far above rounding, far below a drawn line. Our judgement. */
const JOINED_MM = 1e-3

/** A stretch of a straight way, from its beginning, mm. */
interface Stretch {
  readonly fromMm: number
  readonly toMm: number
}

/** Where a line from `at` along the unit direction (`du`, `dv`) is inside a convex polygon; null where it is not. Derived here: the overlap of its half-planes. */
const stretchIn = (polygon: ConvexPolygon, at: PlanePointMm, du: number, dv: number): Stretch | null => {
  let fromMm = -Infinity
  let toMm = Infinity
  for (const { nu, nv, offsetMm } of polygonEdges(polygon)) {
    // Outside is where nu u + nv v is above the offset: along the line that quantity is `above + slope t`.
    const above = nu * at.uMm + nv * at.vMm - offsetMm
    const slope = nu * du + nv * dv
    if (slope > 0) toMm = Math.min(toMm, -above / slope)
    else if (slope < 0) fromMm = Math.max(fromMm, -above / slope)
    else if (above > 0) return null
  }
  return Number.isFinite(fromMm) && Number.isFinite(toMm) && fromMm <= toMm ? { fromMm, toMm } : null
}

/** How far an anchor may go from where it is before it leaves its zone, each ≥ 0, mm, in the drawn plane. */
export interface ZoneWays {
  /** Toward −u, the front of the car. */
  readonly forwardMm: number
  /** Toward +u, the rear. */
  readonly rearwardMm: number
  /** Toward −v: down in the side elevation, to the occupant's left in the top elevation. */
  readonly lowMm: number
  /** Toward +v: up, or to the occupant's right. */
  readonly highMm: number
}

/** How far a straight way from `at` stays in the region; what is on the way and comes back later does not count. */
const wayMm = (region: Region, at: PlanePointMm, du: number, dv: number): number => {
  const stretches = region
    .flatMap((polygon) => stretchIn(polygon, at, du, dv) ?? [])
    .toSorted((a, b) => a.fromMm - b.fromMm)
  let reachedMm = 0
  for (const { fromMm, toMm } of stretches)
    if (fromMm <= reachedMm + JOINED_MM) reachedMm = Math.max(reachedMm, toMm)
  return reachedMm
}

/**
 * How far an anchor at `at` may go straight forward, rearward and both ways across before it leaves its zone; null when it is not in
 * it. The edges of the square to which zones are cut count like any other: see `REACH_MM`.
 */
export const zoneWays = (region: Region, at: PlanePointMm): ZoneWays | null =>
  regionContains(region, at, JOINED_MM)
    ? {
        forwardMm: wayMm(region, at, -1, 0),
        rearwardMm: wayMm(region, at, 1, 0),
        lowMm: wayMm(region, at, 0, -1),
        highMm: wayMm(region, at, 0, 1),
      }
    : null
