import type { PlanePointMm } from './plane'

/** A convex polygon in a drawn plane, corners anticlockwise (u right, v up); fewer than 3 corners is empty. */
export type ConvexPolygon = readonly PlanePointMm[]

/** A part of a drawn plane as convex polygons that do not overlap; an empty list is nothing at all. */
export type Region = readonly ConvexPolygon[]

/** The points with `nu·u + nv·v ≤ offsetMm`; (nu, nv) has length 1 and points out of the kept side. */
export interface HalfPlane {
  readonly nu: number
  readonly nv: number
  readonly offsetMm: number
}
