import type { Direction, PointMm } from '../geometry/point'
import { nearestOnPolyline } from '../geometry/segment'
import type { Tube } from '../geometry/tube'
import type { Mount } from './anchor'
import { tubeAt } from './mount'

/** What a strap's end lies on: a point, or the circle round a wrapped tube square to its axis. */
export interface MountEnd {
  /** The point, or the circle's middle on the tube's centre line. */
  readonly point: PointMm
  /** 0 for a point. */
  readonly radiusMm: number
  /** The tube's direction where the webbing lies, length 1, never toward the occupant's left; null for a point. */
  readonly axis: Direction | null
  /** +1: the strap touches the half of the circle that lies higher, −1: the lower. Meaningless for a point. */
  readonly upward: 1 | -1
}

/** The same line with one of its two directions chosen: to the right, else rearward, else up. */
const oriented = (axis: Direction): Direction =>
  axis.y > 0 || (axis.y === 0 && (axis.x > 0 || (axis.x === 0 && axis.z > 0)))
    ? axis
    : { x: -axis.x, y: -axis.y, z: -axis.z }

/** A mount with its point at `point`; null when the tube it is wrapped round does not exist. */
export const mountEndOf = (mount: Mount, tubes: readonly Tube[], point: PointMm): MountEnd | null => {
  if (mount.kind !== 'wrap') return { point, radiusMm: 0, axis: null, upward: 1 }
  const tube = tubeAt(tubes, mount.tubeId)
  if (tube === null) return null
  return {
    point,
    radiusMm: tube.outsideDiameterMm / 2,
    axis: oriented(nearestOnPolyline(tube.points, point).axis),
    upward: mount.over === 'over' ? 1 : -1,
  }
}

/** Which of the two tangents from a point touches a wrapped tube: +1 the one turned from it about the axis, −1 the other. */
export type MountSide = 1 | -1

/**
 * The side that `over` and `under` mean for a strap from `from`: the tangent that touches the higher half for `over`. A strap straight up a
 * lateral bar counts as running forward.
 */
export const mountSide = ({ point, axis, upward }: MountEnd, from: PointMm): MountSide => {
  if (axis === null) return 1
  const dx = from.xMm - point.xMm
  const dy = from.yMm - point.yMm
  // Height of a × v: across the strap, v the offset of the point from the tube.
  return axis.x * dy - axis.y * dx >= 0 ? upward : upward === 1 ? -1 : 1
}

/**
 * Where a strap that comes straight from `from` meets its mount on a given side. Round a tube it lies in a groove square to the tube:
 * the contact is where the tangent from `from`, seen along the tube, touches its circle. Seen so, the strap may run slantwise
 * to the groove. Null when `from` is nearer to the tube's axis than its surface. Formula: with v the offset of `from` square to
 * the axis a, d = |v| and e = v/d, the contact is C + R(R/d·e ± √(1 − R²/d²)·(a × e)). Source: derived here.
 */
export const contactOnSide = (
  { point, radiusMm, axis }: MountEnd,
  from: PointMm,
  side: MountSide,
): PointMm | null => {
  if (axis === null || radiusMm <= 0) return point
  const dx = from.xMm - point.xMm
  const dy = from.yMm - point.yMm
  const dz = from.zMm - point.zMm
  const along = dx * axis.x + dy * axis.y + dz * axis.z
  const vx = dx - along * axis.x
  const vy = dy - along * axis.y
  const vz = dz - along * axis.z
  const distanceMm = Math.sqrt(vx * vx + vy * vy + vz * vz)
  if (distanceMm < radiusMm || distanceMm === 0) return null
  const ex = vx / distanceMm
  const ey = vy / distanceMm
  const ez = vz / distanceMm
  const cosine = radiusMm / distanceMm
  const sine = side * Math.sqrt((1 - cosine) * (1 + cosine))
  return {
    xMm: point.xMm + radiusMm * (cosine * ex + sine * (axis.y * ez - axis.z * ey)),
    yMm: point.yMm + radiusMm * (cosine * ey + sine * (axis.z * ex - axis.x * ez)),
    zMm: point.zMm + radiusMm * (cosine * ez + sine * (axis.x * ey - axis.y * ex)),
  }
}

/** Where a strap that comes straight from `from` meets its mount: on the higher half of a wrapped tube for `over`. Null inside the tube. */
export const contactOnMount = (mount: MountEnd, from: PointMm): PointMm | null =>
  contactOnSide(mount, from, mountSide(mount, from))
