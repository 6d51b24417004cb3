import { type PlanePointMm, planePoint } from '../../../geometry/plane'
import { type Direction, directionDot, directionLength, type PointMm } from '../../../geometry/point'

/** A plane to draw on by its two axes in the vehicle frame, both of length 1 and square to each other. */
export interface DrawnPlane {
  /** To the right of the drawing. */
  readonly u: Direction
  /** Up the drawing. */
  readonly v: Direction
}

export const SIDE_PLANE: DrawnPlane = { u: { x: 1, y: 0, z: 0 }, v: { x: 0, y: 0, z: 1 } }
export const TOP_PLANE: DrawnPlane = { u: { x: 1, y: 0, z: 0 }, v: { x: 0, y: 1, z: 0 } }
/** Looking forward from behind: the occupant's right is at the right of the drawing. */
export const BEHIND_PLANE: DrawnPlane = { u: { x: 0, y: 1, z: 0 }, v: { x: 0, y: 0, z: 1 } }

/** A vehicle point seen square to the plane. */
export const onPlane = ({ u, v }: DrawnPlane, { xMm, yMm, zMm }: PointMm): PlanePointMm => {
  const at: Direction = { x: xMm, y: yMm, z: zMm }
  return planePoint(directionDot(u, at), directionDot(v, at))
}

/** Below this a direction has no usable part square to another: about 0.06 µrad. Our judgement. */
const PARALLEL_SINE = 1e-9

/** The part of `wish` square to `along` (length 1), at length 1; null when they are parallel. */
const squarePart = (along: Direction, wish: Direction): Direction | null => {
  const share = directionDot(along, wish)
  const part = {
    x: wish.x - share * along.x,
    y: wish.y - share * along.y,
    z: wish.z - share * along.z,
  }
  const length = directionLength(part)
  return length < PARALLEL_SINE ? null : { x: part.x / length, y: part.y / length, z: part.z / length }
}

/**
 * The plane through a direction (length 1), which runs to the right, and as nearly as can be through another, which points up.
 * Lengths along the first and angles between the two have their true size in it. Source: orthogonalisation of two vectors
 * (Gram–Schmidt).
 */
export const planeThrough = (along: Direction, up: Direction): DrawnPlane => {
  const fallbacks: readonly Direction[] = [up, SIDE_PLANE.v, SIDE_PLANE.u, TOP_PLANE.v]
  for (const wish of fallbacks) {
    const v = squarePart(along, wish)
    if (v !== null) return { u: along, v }
  }
  return SIDE_PLANE
}
