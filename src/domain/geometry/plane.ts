import type { PointMm } from './point'

/** The two drawn planes. Side: looking toward +y, u = x, v = z. Top: looking down, u = x, v = y. */
export type Elevation = 'side' | 'top'

/** A point on a drawn plane: u to the right of the drawing, v up the drawing. */
export interface PlanePointMm {
  readonly uMm: number
  readonly vMm: number
}

export const planePoint = (uMm: number, vMm: number): PlanePointMm => ({ uMm, vMm })

/** A vehicle point as the elevation shows it. */
export const projected = (point: PointMm, elevation: Elevation): PlanePointMm =>
  elevation === 'side' ? { uMm: point.xMm, vMm: point.zMm } : { uMm: point.xMm, vMm: point.yMm }

/** `point` moved to where `at` is in the drawn plane; the coordinate across the plane is kept. */
export const movedInPlane = (point: PointMm, at: PlanePointMm, elevation: Elevation): PointMm =>
  elevation === 'side'
    ? { xMm: at.uMm, yMm: point.yMm, zMm: at.vMm }
    : { xMm: at.uMm, yMm: at.vMm, zMm: point.zMm }

export const planeDistanceMm = (from: PlanePointMm, to: PlanePointMm): number => {
  const du = to.uMm - from.uMm
  const dv = to.vMm - from.vMm
  return Math.sqrt(du * du + dv * dv)
}
