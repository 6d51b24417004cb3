import { type AxisError, errorDensity, errorShare } from './axisError'
import { clippedConvex } from './halfPlane'
import type { PlanePointMm } from './plane'
import type { ConvexPolygon, HalfPlane, Region } from './polygon'
import { gaussNodes } from './quadrature'

/** Where a point is meant to be and what it may be off by along the two axes of its plane, each on its own. */
export interface UncertainPoint {
  readonly at: PlanePointMm
  readonly uError: AxisError
  readonly vError: AxisError
}

const box = ({ at, uError, vError }: UncertainPoint): readonly HalfPlane[] => [
  { nu: 1, nv: 0, offsetMm: at.uMm + uError.halfWidth },
  { nu: -1, nv: 0, offsetMm: uError.halfWidth - at.uMm },
  { nu: 0, nv: 1, offsetMm: at.vMm + vError.halfWidth },
  { nu: 0, nv: -1, offsetMm: vError.halfWidth - at.vMm },
]

/** The lowest and the highest point of a convex polygon on the line u = `uMm`; null where the line misses it. */
const chord = (polygon: ConvexPolygon, uMm: number): readonly [lowMm: number, highMm: number] | null => {
  let lowMm = Infinity
  let highMm = -Infinity
  let before = polygon.at(-1)
  if (before === undefined) return null
  for (const corner of polygon) {
    const spanMm = corner.uMm - before.uMm
    const share = (uMm - before.uMm) / spanMm
    if (spanMm !== 0 && share >= 0 && share <= 1) {
      const vMm = before.vMm + share * (corner.vMm - before.vMm)
      lowMm = Math.min(lowMm, vMm)
      highMm = Math.max(highMm, vMm)
    }
    before = corner
  }
  return lowMm <= highMm ? [lowMm, highMm] : null
}

const NODES = gaussNodes(12)

/** Chance that the point lies in one convex polygon: ∫ f(u)·(F(top(u)) − F(bottom(u))) du, corner by corner. */
const polygonChance = (polygon: ConvexPolygon, point: UncertainPoint): number => {
  const { at, uError, vError } = point
  const inBox = box(point).reduce<ConvexPolygon>((rest, side) => clippedConvex(rest, side), polygon)
  const corners = [...new Set(inBox.map(({ uMm }) => uMm))].toSorted((a, b) => a - b)
  let chance = 0
  for (const [index, toMm] of corners.entries()) {
    const fromMm = corners[index - 1]
    if (fromMm === undefined) continue
    for (const node of NODES) {
      const uMm = (fromMm + toMm) / 2 + (node.at * (toMm - fromMm)) / 2
      const ends = chord(inBox, uMm)
      if (ends === null) continue
      const shareV = errorShare(vError, ends[1] - at.vMm) - errorShare(vError, ends[0] - at.vMm)
      chance += ((node.weight * (toMm - fromMm)) / 2) * errorDensity(uError, uMm - at.uMm) * shareV
    }
  }
  return chance
}

/**
 * Chance that an uncertain point lies in a region, 0…1. Between corners the edges are straight, so that for even errors the strips
 * are exact; for the others a Gauss–Legendre rule of 12 nodes a strip is far closer than any ± is known.
 */
export const regionChance = (region: Region, point: UncertainPoint): number =>
  Math.min(
    1,
    region.reduce((sum, polygon) => sum + polygonChance(polygon, point), 0),
  )
