import type { PlanePointMm } from '../geometry/plane'
import { planePoint } from '../geometry/plane'
import { boxRegion, regionClipped } from '../geometry/region'
import type { ConvexPolygon, HalfPlane, Region } from '../geometry/polygon'

/** A convex part of a drawn plane, bounded or not: the overlap of half-planes. None at all is the whole plane. */
export type Cell = readonly HalfPlane[]

/** A part of a drawn plane as cells that overlap at most in lines; an empty list is nothing at all. */
export type Cells = readonly Cell[]

/**
 * Half the side of the square about the hip point to which every region is cut. Our judgement: no anchor of a buggy is
 * 1.5 m from its occupant's hip. The square's own edges are never limits.
 */
export const REACH_MM = 1500

/** A square about a point. */
const squareAbout = (about: PlanePointMm, halfMm: number): Region =>
  boxRegion(
    planePoint(about.uMm - halfMm, about.vMm - halfMm),
    planePoint(about.uMm + halfMm, about.vMm + halfMm),
  )

/** The square about a point to which regions are cut. */
export const reachBox = (about: PlanePointMm): Region => squareAbout(about, REACH_MM)

/** The part of a region inside the cells. */
export const regionInCells = (region: Region, cells: Cells): Region =>
  cells.flatMap((cell) => regionClipped(region, cell))

/** The half-planes of a polygon's edges (corners anticlockwise); an edge without a length has none. */
export const polygonEdges = (polygon: ConvexPolygon): Cell =>
  polygon.flatMap((from, index) => {
    const to = polygon[(index + 1) % polygon.length] ?? from
    const lengthMm = Math.hypot(to.uMm - from.uMm, to.vMm - from.vMm)
    if (lengthMm === 0) return []
    const nu = (to.vMm - from.vMm) / lengthMm
    const nv = (from.uMm - to.uMm) / lengthMm
    return [{ nu, nv, offsetMm: nu * from.uMm + nv * from.vMm }]
  })

/** A region as cells. */
export const regionCells = (region: Region): Cells => region.map(polygonEdges)
