import { type PlanePointMm, projected, type ViewPlane } from '../../geometry/plane'
import { type Direction, type PointMm, pointSum } from '../../geometry/point'
import { cosDeg, sinDeg } from '../../units/angle'

const cross = (a: Direction, b: Direction): Direction => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
})

const unit = (a: Direction): Direction => {
  const length = Math.hypot(a.x, a.y, a.z)
  return { x: a.x / length, y: a.y / length, z: a.z / length }
}

/** Two unit vectors that span the plane square to `normal`; the axis least along the normal is used to find the first. */
const spanOf = (normal: Direction): readonly [Direction, Direction] => {
  const { x, y, z } = { x: Math.abs(normal.x), y: Math.abs(normal.y), z: Math.abs(normal.z) }
  const helper =
    x <= y && x <= z ? { x: 1, y: 0, z: 0 } : y <= z ? { x: 0, y: 1, z: 0 } : { x: 0, y: 0, z: 1 }
  const first = unit(cross(normal, helper))
  return [first, cross(normal, first)]
}

const RING_CORNERS = 32

/** A circle in space, square to `normal` (length 1), as points round it. */
export const ringPoints = (centre: PointMm, normal: Direction, radiusMm: number): readonly PointMm[] => {
  const [first, second] = spanOf(normal)
  return Array.from({ length: RING_CORNERS }, (_, index) => {
    const atDeg = (360 * index) / RING_CORNERS
    const across = pointSum(centre, first, radiusMm * cosDeg(atDeg))
    return pointSum(across, second, radiusMm * sinDeg(atDeg))
  })
}

/** Such a circle as it is seen squarely on a plane: an ellipse, or a line when seen edge on. */
export const projectedRing = (
  centre: PointMm,
  normal: Direction,
  radiusMm: number,
  plane: ViewPlane,
): readonly PlanePointMm[] => ringPoints(centre, normal, radiusMm).map((point) => projected(point, plane))
