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

/** Whether a piece of the side view crosses an open line of corners anywhere. */
const isCut = (line: readonly Flat[], from: Flat, to: Flat): boolean => {
  const side = (a: Flat, b: Flat, p: Flat): number =>
    Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]))
  return line.slice(1).some((b, i) => {
    const a = line[i] ?? b
    return side(a, b, from) !== side(a, b, to) && side(from, to, a) !== side(from, to, b)
  })
}

/** Area under a line of corners, mm²; negative when it is walked forward. */
const areaUnderMm2 = (line: readonly Flat[]): number =>
  line.slice(1).reduce((sum, [x, z], i) => {
    const [bx, bz] = line[i] ?? [x, z]
    return sum + ((x - bx) * (z + bz)) / 2
  }, 0)

/** Both lines of corners from the foremost to the highest: under the lower one there is less. */
const edges = (
  outline: readonly Flat[],
): { readonly upper: readonly Flat[]; readonly lower: readonly Flat[] } => {
  const indexOf = (better: (a: Flat, b: Flat) => boolean): number =>
    outline.reduce((best, point, i) => (better(point, outline[best] ?? point) ? i : best), 0)
  const foremost = indexOf((a, b) => a[0] < b[0])
  const highest = indexOf((a, b) => a[1] > b[1])
  const walked = (step: 1 | -1): readonly Flat[] => {
    const size = outline.length
    const found = [outline[foremost] ?? [0, 0]]
    for (let at = foremost; at !== highest;) {
      at = (at + step + size) % size
      found.push(outline[at] ?? [0, 0])
    }
    return found
  }
  const [one, other] = [walked(1), walked(-1)]
  return areaUnderMm2(one) > areaUnderMm2(other) ? { upper: one, lower: other } : { upper: other, lower: one }
}

/** The part of a straight strap that lies between the sides, seen from the side; null where no part does. */
const betweenSides = (
  from: Vector,
  to: Vector,
  middle: number,
  halfMm: number,
): readonly [Flat, Flat] | null => {
  const shares = [middle - halfMm, middle + halfMm]
    .map((y) => (y - from[1]) / (to[1] - from[1]))
    .toSorted((a, b) => a - b)
  const isLevel = from[1] === to[1]
  if (isLevel && Math.abs(from[1] - middle) >= halfMm) return null
  const [start, end] = isLevel ? [0, 1] : [Math.max(0, shares[0] ?? 0), Math.min(1, shares[1] ?? 1)]
  const at = (share: number): Flat => [
    from[0] + share * (to[0] - from[0]),
    from[2] + share * (to[2] - from[2]),
  ]
  return start < end ? [at(start), at(end)] : null
}

/**
 * A lap or anti-sub strap without a slot: nothing in the way, or one piece after another of the shell's upper edge at its half
 * width, when the straight strap would pass through the shell's side there. Null: between the sides it passes through the shell
 * from below or behind.
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
  const middle = scene.pose.hip.yMm
  const { upper, lower } = edges(outline)
  const inner = betweenSides(contact, arrival.touch, middle, halfMm)
  if (inner === null) return [[]]
  const comesFromOutside = Math.abs(contact[1] - middle) >= halfMm
  if (!comesFromOutside || !isWithin(outline, inner[0])) return isCut(lower, ...inner) ? null : [[]]
  const wall = middle + Math.sign(contact[1] - middle) * halfMm
  return upper.slice(1).map((end, i) => {
    const start = upper[i] ?? end
    const lengthMm = Math.hypot(end[0] - start[0], end[1] - start[1])
    const across: Vector = [(end[0] - start[0]) / lengthMm, 0, (end[1] - start[1]) / lengthMm]
    return [{ origin: [start[0], wall, start[1]], across, up: [0, 1, 0], low: [0, 0], high: [lengthMm, 0] }]
  })
}
