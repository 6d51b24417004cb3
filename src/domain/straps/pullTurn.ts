import {
  directionDot,
  pointDifference,
  pointDistanceMm,
  type Direction,
  type PointMm,
} from '../geometry/point'
import type { ShoulderEnd } from './bodyEnd'
import type { MountEnd } from './mountEnd'
import type { Portal } from './portal'
import type { StrapRun } from './strapRun'

/*
 * How the pull of a taut strap turns when the place it starts from moves. Every piece is straight, so its direction turns by the part
 * of its ends' movement that is square to it, over its length; its far end follows, along an edge that holds it or round an arc.
 */

/** A linear answer to a movement: of a point that follows it, mm per mm, or of a pull of length 1, 1/mm. */
export type Answer = (by: Direction) => Direction

const NOTHING: Direction = { x: 0, y: 0, z: 0 }

const STAYS: Answer = () => NOTHING

/** Stands for a straight piece without a length. */
const LEAST_MM = 1e-9

/** How the direction from a point to the next turns when the point moves and the next one follows: (v − d(d·v))/ℓ, v their change. */
const pieceTurn = (from: PointMm, to: PointMm, followed: Answer): Answer => {
  const lengthMm = Math.max(LEAST_MM, pointDistanceMm(from, to))
  const x = (to.xMm - from.xMm) / lengthMm
  const y = (to.yMm - from.yMm) / lengthMm
  const z = (to.zMm - from.zMm) / lengthMm
  return (by) => {
    const led = followed(by)
    const dx = led.x - by.x
    const dy = led.y - by.y
    const dz = led.z - by.z
    const along = dx * x + dy * y + dz * z
    return {
      x: (dx - along * x) / lengthMm,
      y: (dy - along * y) / lengthMm,
      z: (dz - along * z) / lengthMm,
    }
  }
}

/**
 * How the touching point of a tangent follows on a circle about `middle`: from a point t away along the tangent a movement by v turns
 * the radius n by (n·v)/t, and the touching point by −(R/t)(n·v) along the tangent. `axis`: square to the circle.
 */
const onCircle = (
  middle: PointMm,
  radiusMm: number,
  axis: Direction,
  touching: PointMm,
  from: PointMm,
): Answer => {
  if (radiusMm <= 0) return STAYS
  const n = {
    x: (touching.xMm - middle.xMm) / radiusMm,
    y: (touching.yMm - middle.yMm) / radiusMm,
    z: (touching.zMm - middle.zMm) / radiusMm,
  }
  const away = pointDifference(from, touching)
  const along = directionDot(away, axis)
  const flat = { x: away.x - along * axis.x, y: away.y - along * axis.y, z: away.z - along * axis.z }
  const perMm = -radiusMm / Math.max(LEAST_MM * LEAST_MM, directionDot(flat, flat))
  return (by) => {
    const across = perMm * directionDot(n, by)
    return { x: across * flat.x, y: across * flat.y, z: across * flat.z }
  }
}

/** How the contact on a mount follows the point it is drawn to. */
export const contactFollows = (mount: MountEnd, contact: PointMm, from: PointMm): Answer =>
  mount.axis === null ? STAYS : onCircle(mount.point, mount.radiusMm, mount.axis, contact, from)

const ACROSS: Direction = { x: 0, y: 1, z: 0 }

/** How the touching point on the shoulder arc follows: seen from the side, its place across the seat stays. */
const touchFollows = ({ arc, yMm }: ShoulderEnd, touching: PointMm, from: PointMm): Answer =>
  onCircle({ xMm: arc.centre.uMm, yMm, zMm: arc.centre.vMm }, arc.radiusMm, ACROSS, touching, from)

/** A place this near to the end of its opening is held there, mm: rounding of coordinates of some metres. */
const HELD_MM = 1e-9

/** The direction in which a strap that bears on an opening can slide there: along its edge, or none at a corner. */
const slidesAlong = (portal: Portal, at: PointMm): Direction | null => {
  const { centre, long, short } = portal
  const away = { x: at.xMm - centre.xMm, y: at.yMm - centre.yMm, z: at.zMm - centre.zMm }
  const longMm = directionDot(away, long)
  if (longMm > portal.longMinMm + HELD_MM && longMm < portal.longMaxMm - HELD_MM) return long
  const shortMm = directionDot(away, short)
  return shortMm > portal.shortMinMm + HELD_MM && shortMm < portal.shortMaxMm - HELD_MM ? short : null
}

/**
 * How a place on an edge follows the one before it: it slides until the pulls on it have no part along the edge. `back`: how the
 * piece to the place before turns as the place on the edge moves; it turns the other way as the place before does. `onward`: the
 * same for the pull toward the body.
 */
const edgeFollows = (edge: Direction | null, back: Answer, onward: Answer): Answer => {
  if (edge === null) return STAYS
  const hold = directionDot(edge, back(edge)) + directionDot(edge, onward(edge))
  return (by) => {
    const slide = directionDot(edge, back(by)) / hold
    return { x: slide * edge.x, y: slide * edge.y, z: slide * edge.z }
  }
}

/** How the pull of a shoulder strap on the place it starts from, in the air, turns when that place moves. */
export const pullTurn = (
  end: ShoulderEnd,
  portal: Portal | null,
  { contact, edges, reach }: StrapRun,
): Answer => {
  const last = edges.at(-1) ?? contact
  let turn = pieceTurn(last, reach.point, touchFollows(end, reach.point, last))
  for (let index = edges.length - 1; index >= 0 && portal !== null; index -= 1) {
    const at = edges[index] ?? contact
    const before = edges[index - 1] ?? contact
    const follows = edgeFollows(slidesAlong(portal, at), pieceTurn(at, before, STAYS), turn)
    turn = pieceTurn(before, at, follows)
  }
  return turn
}
