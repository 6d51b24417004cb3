import { type Direction, directionDot, pointDifference, type PointMm, pointSum } from '../../geometry/point'
import { nearestOnPolyline } from '../../geometry/segment'
import type { Tube } from '../../geometry/tube'
import { squareTo, unitDirection } from '../../geometry/vector'
import type { Mount } from '../../straps/anchor'

const UP: Direction = { x: 0, y: 0, z: 1 }
const FORWARD: Direction = { x: -1, y: 0, z: 0 }

/**
 * A tube within 30° of plumb has no top that a scriber finds: its foremost line is marked instead, which a square held to it from
 * the front shows. Cosine of 30°. Our judgement.
 */
const PLUMB_SHARE = Math.cos(Math.PI / 6)

/** Which line along the tube's outside is marked: the highest one, or on a tube near plumb the foremost. */
export type MarkSide = 'top' | 'front'

export const markSide = (axis: Direction): MarkSide => (Math.abs(axis.z) > PLUMB_SHARE ? 'front' : 'top')

/**
 * Where a punch mark lies on the outside of a tube at a point of its centre line: on the highest point of the cross-section
 * square to the axis there, for a tube near plumb on the foremost one. Formula: D/2 along what is left of up (or forward) square
 * to the axis. A level tube is marked straight above its centre. Derived here.
 */
export const markOnTube = (tube: Tube, centre: PointMm, axis: Direction): PointMm => {
  const toward = markSide(axis) === 'top' ? UP : FORWARD
  const outward = unitDirection(squareTo(axis, toward)) ?? toward
  return pointSum(centre, outward, tube.outsideDiameterMm / 2)
}

/**
 * Where the plumb line through a place in a tube comes out of its top, or for a tube near plumb the level line forward out of its front:
 * on a sloping tube that is not on the cross-section square to the axis. `axis`: of the straight piece, length 1, through `onAxis`.
 * Formula: |w + t·u|² = (D/2)², with w and u what is left of the place and of up square to the axis; the larger root. Source: a line
 * and a cylinder, derived here. A place beside the tube, which no such line meets, is marked as its nearest place is.
 */
export const markAbove = (tube: Tube, place: PointMm, onAxis: PointMm, axis: Direction): PointMm => {
  const toward = markSide(axis) === 'top' ? UP : FORWARD
  const w = squareTo(axis, pointDifference(place, onAxis))
  const u = squareTo(axis, toward)
  const square = directionDot(u, u)
  const half = directionDot(w, u)
  const root = half * half - square * (directionDot(w, w) - (tube.outsideDiameterMm / 2) ** 2)
  return root < 0
    ? markOnTube(tube, onAxis, axis)
    : pointSum(place, toward, (-half + Math.sqrt(root)) / square)
}

/** What a tape to an anchor is held to. */
export type HeldAt = 'hole' | 'eye' | 'tube-mark'

export const heldAt = (mount: Mount): HeldAt => {
  switch (mount.kind) {
    case 'tab':
      return 'hole'
    case 'eye':
      return 'eye'
    case 'wrap':
      return 'tube-mark'
  }
}

/**
 * Where a tape to an anchor is held, from the datum: to the centre of a tab's hole in the middle of its plate (with a pin through
 * the hole, at the pin's middle), to the centre of an eye, and for a wrap to the mark on the outside of the tube in the middle of
 * the webbing, since its own point lies inside the tube. A wrap whose tube does not exist is taken at its own point.
 */
export const heldPoint = (mount: Mount, tubes: readonly Tube[]): PointMm => {
  if (mount.kind !== 'wrap') return mount.point
  const tube = tubes.find(({ id }) => id === mount.tubeId)
  return tube === undefined
    ? mount.point
    : markOnTube(tube, mount.point, nearestOnPolyline(tube.points, mount.point).axis)
}

/** Points this little inside a tube's outside lie on it: marks, holes at a tab's foot, rounding of what was typed. Our judgement. */
const ON_OUTSIDE_MM = 1

/** The tube that a point lies inside of, where no tape can be held; null when it is free. */
export const tubeAround = (point: PointMm, tubes: readonly Tube[]): Tube | null =>
  tubes.find(
    ({ points, outsideDiameterMm }) =>
      nearestOnPolyline(points, point).distanceMm < outsideDiameterMm / 2 - ON_OUTSIDE_MM,
  ) ?? null
