import type { PathContact, StrapPath } from '../../../../src/domain/straps/path'
import type { StrapScene } from '../../../../src/domain/straps/scene'
import { crossing, type Opening } from './chain'
import { planeDistance, rimOpening, slotOpenings } from './openings'
import { dot, minus, plus, towards, vectorOf, type Vector } from './vector'

/** A strap in the air: the straight pieces from the mount (or the junction) to the first touch of the body. */
export interface InAir {
  readonly points: readonly Vector[]
  /** Its openings with the point of the strap in each, and whether it bends there. */
  readonly passes: readonly { readonly opening: Opening; readonly at: Vector; readonly isBent: boolean }[]
}

const isHeld = ({ on }: PathContact): boolean => on === 'slot' || on === 'rim'

const openingsFor = (scene: StrapScene, path: StrapPath): readonly Opening[] => {
  const slot = scene.seat.slots.find(({ straps }) => straps.includes(path.strap))
  if (slot !== undefined) return slotOpenings(scene, slot, path.strap)
  return path.contacts.some(({ on }) => on === 'rim') ? [rimOpening(scene)] : []
}

/** The part of a solved path outside the body. */
export const inAir = (scene: StrapScene, path: StrapPath): InAir => {
  const from = path.contacts.findIndex(({ on }) => on === 'junction')
  const outside = path.contacts.slice(Math.max(0, from))
  const last = outside.findIndex(({ on }) => on === 'body' || on === 'buckle')
  const held = outside.slice(0, last + 1)
  const points = held.map(({ point }) => vectorOf(point))
  const bent = held.filter(isHeld).map(({ point }) => vectorOf(point))
  const passes = openingsFor(scene, path).map((opening) => {
    const own = bent.find((at) => Math.abs(planeDistance(opening, at)) < 1e-6)
    return { opening, at: own ?? crossingPoint(opening, points), isBent: own !== undefined }
  })
  return { points, passes }
}

/** Where the polyline crosses an opening's plane; throws where it does not. */
const crossingPoint = (opening: Opening, points: readonly Vector[]): Vector => {
  for (const [i, end] of points.slice(1).entries()) {
    const start = points[i] ?? end
    if (planeDistance(opening, start) * planeDistance(opening, end) > 0) continue
    return plus(start, minus(end, start), crossing(opening, start, end).share)
  }
  throw new Error('the strap does not cross the plane of its opening')
}

/** How far a point lies outside an opening, mm; 0 inside. */
export const outsideMm = ({ origin, across, up, low, high }: Opening, at: Vector): number => {
  const away = minus(at, origin)
  return Math.max(
    0,
    ...[dot(away, across), dot(away, up)].map((value, i) =>
      Math.max((low[i] ?? value) - value, value - (high[i] ?? value)),
    ),
  )
}

/**
 * The part of the two unit pulls on a held point that its opening cannot take: a point may only be pressed against the ends of its
 * ranges. 0 in balance.
 */
export const unbalanced = (opening: Opening, before: Vector, at: Vector, after: Vector): number => {
  const pull = plus(towards(at, before), towards(at, after))
  const away = minus(at, opening.origin)
  const parts = [opening.across, opening.up].map((axis, i) => {
    const force = dot(pull, axis)
    const place = dot(away, axis)
    const isAtLow = place < (opening.low[i] ?? 0) + 1e-6
    const isAtHigh = place > (opening.high[i] ?? 0) - 1e-6
    if (isAtLow && isAtHigh) return 0
    if (isAtLow) return Math.max(0, force)
    if (isAtHigh) return Math.max(0, -force)
    return Math.abs(force)
  })
  return Math.max(...parts)
}
