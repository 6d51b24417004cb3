import { vehiclePoint } from '../../../../src/domain/body/pose'
import type { StrapScene } from '../../../../src/domain/straps/scene'
import type { BodyEnd } from './bodyEnds'
import type { Opening } from './chain'
import type { MountEnd } from './mountEnd'
import type { Flat } from './oval'
import { tautStrap } from './taut'
import type { Vector } from './vector'

/** Whether a point of the side view lies inside a closed outline: crossings of the ray to the right are odd. */
const isWithin = (outline: readonly Flat[], [x, z]: Flat): boolean =>
  outline.reduce((inside, [bx, bz], i) => {
    const [ax, az] = outline.at(i - 1) ?? [bx, bz]
    const crosses = az > z !== bz > z && x < ax + ((bx - ax) * (z - az)) / (bz - az)
    return crosses ? !inside : inside
  }, false)

/** Whether a piece of the side view crosses the outline anywhere. */
const isCut = (outline: readonly Flat[], from: Flat, to: Flat): boolean => {
  const side = (a: Flat, b: Flat, p: Flat): number =>
    Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]))
  return outline.some((b, i) => {
    const a = outline.at(i - 1) ?? b
    return side(a, b, from) !== side(a, b, to) && side(from, to, a) !== side(from, to, b)
  })
}

/** The outline's corners from the foremost to the highest, on the side that does not hold the lowest. */
const upperEdge = (outline: readonly Flat[]): readonly Flat[] => {
  const indexOf = (better: (a: Flat, b: Flat) => boolean): number =>
    outline.reduce((best, point, i) => (better(point, outline[best] ?? point) ? i : best), 0)
  const foremost = indexOf((a, b) => a[0] < b[0])
  const highest = indexOf((a, b) => a[1] > b[1])
  const lowest = indexOf((a, b) => a[1] < b[1])
  const walked = (step: 1 | -1): readonly number[] => {
    const size = outline.length
    const indices = [foremost]
    for (let at = foremost; at !== highest;) {
      at = (at + step + size) % size
      indices.push(at)
    }
    return indices
  }
  const one = walked(1)
  const indices = one.slice(1, -1).includes(lowest) ? walked(-1) : one
  return indices.flatMap((i) => [outline[i] ?? [0, 0]])
}

/**
 * A lap or anti-sub strap without a slot: nothing in the way, or one piece after another of the shell's upper edge at its half
 * width, when the straight strap would pass through the shell's side there. Null: it lies between
 * the sides and passes through the shell.
 */
export const edgeChain = (
  scene: StrapScene,
  mount: MountEnd,
  from: Vector,
  body: BodyEnd,
): readonly (readonly Opening[])[] | null => {
  const outline = scene.seat.sideOutline.map(({ xMm, zMm }): Flat => {
    const at = vehiclePoint(scene.pose, { xMm, yMm: 0, zMm })
    return [at.xMm, at.zMm]
  })
  const halfMm = Math.max(0, ...scene.seat.topOutline.map(({ yMm }) => Math.abs(yMm)))
  const free = tautStrap(mount, [[]], body, from)
  if (outline.length < 3 || halfMm === 0 || free === null) return [[]]
  const { contact, arrival } = free
  const wall = scene.pose.hip.yMm + Math.sign(from[1] - scene.pose.hip.yMm) * halfMm
  const isWithinWidth = ({ 1: y }: Vector): boolean => Math.abs(y - scene.pose.hip.yMm) < halfMm
  if (isWithinWidth(contact) && isWithinWidth(arrival.touch))
    return isCut(outline, [contact[0], contact[2]], [arrival.touch[0], arrival.touch[2]]) ? null : [[]]
  if ((contact[1] - wall) * (arrival.touch[1] - wall) >= 0) return [[]]
  const share = (wall - contact[1]) / (arrival.touch[1] - contact[1])
  const through: Flat = [
    contact[0] + share * (arrival.touch[0] - contact[0]),
    contact[2] + share * (arrival.touch[2] - contact[2]),
  ]
  if (!isWithin(outline, through)) return [[]]
  const edge = upperEdge(outline)
  return edge.slice(1).map((end, i) => {
    const start = edge[i] ?? end
    const lengthMm = Math.hypot(end[0] - start[0], end[1] - start[1])
    const across: Vector = [(end[0] - start[0]) / lengthMm, 0, (end[1] - start[1]) / lengthMm]
    return [{ origin: [start[0], wall, start[1]], across, up: [0, 1, 0], low: [0, 0], high: [lengthMm, 0] }]
  })
}
