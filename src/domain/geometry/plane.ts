import type { PointMm } from './point'

/** The two drawn planes. Side: looking toward +y, u = x, v = z. Top: looking down, u = x, v = y. */
export type Elevation = 'side' | 'top'

/**
 * A plane that something is looked at squarely on: an elevation, or from behind. Rear: looking forward, u = y, v = z, so that the
 * occupant's left is at the left.
 */
export type ViewPlane = Elevation | 'rear'

/** A point on a drawn plane: u to the right of the drawing, v up the drawing. */
export interface PlanePointMm {
  readonly uMm: number
  readonly vMm: number
}

export const planePoint = (uMm: number, vMm: number): PlanePointMm => ({ uMm, vMm })

/** A vehicle point as the elevation, or somebody behind the car, sees it. */
export const projected = (point: PointMm, plane: ViewPlane): PlanePointMm => {
  switch (plane) {
    case 'side':
      return { uMm: point.xMm, vMm: point.zMm }
    case 'top':
      return { uMm: point.xMm, vMm: point.yMm }
    case 'rear':
      return { uMm: point.yMm, vMm: point.zMm }
  }
}

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
