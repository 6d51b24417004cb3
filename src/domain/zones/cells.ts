import type { PlanePointMm } from '../geometry/plane'
import { planePoint } from '../geometry/plane'
import { boxRegion, regionClipped, regionDifference, regionDistanceMm } from '../geometry/region'
import { outsideMm } from '../geometry/halfPlane'
import type { ConvexPolygon, HalfPlane, Region } from '../geometry/polygon'

/** A convex part of a drawn plane, bounded or not: the overlap of half-planes. None at all is the whole plane. */
export type Cell = readonly HalfPlane[]

/** A part of a drawn plane as cells that overlap at most in lines; an empty list is nothing at all. */
export type Cells = readonly Cell[]

export const WHOLE_PLANE: Cells = [[]]
export const NOTHING: Cells = []

/**
 * Half the side of the square about the hip point to which every region is cut. Our judgement: no anchor of a buggy is
 * 3 m from its occupant. The square's own edges are never limits.
 */
export const REACH_MM = 3000

/** The square about a point to which regions are cut. */
export const reachBox = (about: PlanePointMm): Region =>
  boxRegion(
    planePoint(about.uMm - REACH_MM, about.vMm - REACH_MM),
    planePoint(about.uMm + REACH_MM, about.vMm + REACH_MM),
  )

/** What two sets of cells have in common. */
export const cellsOverlap = (a: Cells, b: Cells): Cells =>
  a.flatMap((cellA) => b.map((cellB) => [...cellA, ...cellB]))

/** The part of a region inside the cells. */
export const regionInCells = (region: Region, cells: Cells): Region =>
  cells.flatMap((cell) => regionClipped(region, cell))

/** The points with `fromMm ≤ coordinate ≤ toMm`; null leaves that side open. */
export const bandCell = (along: 'u' | 'v', fromMm: number | null, toMm: number | null): Cell => {
  const nu = along === 'u' ? 1 : 0
  const nv = along === 'v' ? 1 : 0
  return [
    ...(fromMm === null ? [] : [{ nu: -nu, nv: -nv, offsetMm: -fromMm }]),
    ...(toMm === null ? [] : [{ nu, nv, offsetMm: toMm }]),
  ]
}

/** The half-plane of each edge of a polygon (corners anticlockwise), edge i from corner i; null for an edge without a length. */
export const polygonEdges = (polygon: ConvexPolygon): readonly (HalfPlane | null)[] =>
  polygon.map((from, index) => {
    const to = polygon[(index + 1) % polygon.length] ?? from
    const lengthMm = Math.hypot(to.uMm - from.uMm, to.vMm - from.vMm)
    if (lengthMm === 0) return null
    const nu = (to.vMm - from.vMm) / lengthMm
    const nv = (from.uMm - to.uMm) / lengthMm
    return { nu, nv, offsetMm: nu * from.uMm + nv * from.vMm }
  })

/** Whether a point is in one of the cells or at most `toleranceMm` outside each of its half-planes. */
export const cellsContain = (cells: Cells, point: PlanePointMm, toleranceMm = 0): boolean =>
  cells.some((cell) => cell.every((halfPlane) => outsideMm(halfPlane, point) <= toleranceMm))

/** A half-plane whose edge is level to this (cosine) does not depend on u. Our judgement: 0.06 µrad, 0.2 µm over the reach. */
const LEVEL = 1e-9

/** A level edge this close to the cut counts as touching it: rounding in a coordinate of a few metres. Our judgement. */
const ON_EDGE_MM = 1e-9

/**
 * The cut through cells along the level line v = `atMm`, as bands in u. This is how a limit drawn in one elevation looks in the
 * other: both share u = x, and the line is where the other elevation's plane lies.
 */
export const levelCut = (cells: Cells, atMm: number): Cells =>
  cells.flatMap((cell) => {
    let fromMm = -Infinity
    let toMm = Infinity
    for (const { nu, nv, offsetMm } of cell) {
      const restMm = offsetMm - nv * atMm
      if (Math.abs(nu) < LEVEL) {
        if (restMm < -ON_EDGE_MM) return []
      } else if (nu > 0) toMm = Math.min(toMm, restMm / nu)
      else fromMm = Math.max(fromMm, restMm / nu)
    }
    if (fromMm > toMm) return []
    return [bandCell('u', Number.isFinite(fromMm) ? fromMm : null, Number.isFinite(toMm) ? toMm : null)]
  })

/**
 * How far a point inside the cells is from the nearest point outside them, mm ≥ 0; null when nothing within reach is outside.
 * Edges between touching cells do not count.
 */
export const distanceToOutsideMm = (cells: Cells, point: PlanePointMm, box: Region): number | null => {
  const [only] = cells
  if (cells.length === 1 && only !== undefined) {
    // Of a convex cell the nearest edge line is also the nearest edge.
    const nearestMm = only.reduce((mm, halfPlane) => Math.min(mm, -outsideMm(halfPlane, point)), Infinity)
    return nearestMm < REACH_MM ? Math.max(0, nearestMm) : null
  }
  let outside = box
  for (const cell of cells) outside = regionDifference(outside, regionClipped(box, cell))
  const distanceMm = regionDistanceMm(outside, point)
  return Number.isFinite(distanceMm) ? distanceMm : null
}
