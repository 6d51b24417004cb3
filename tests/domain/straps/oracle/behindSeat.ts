import type { QuantityId } from '../../../../src/domain/straps/quantity'
import type { StrapScene } from '../../../../src/domain/straps/scene'
import { rimOpening } from './openings'
import type { OracleStrap } from './place'
import { apart, minus, plus, vectorOf, type Vector } from './vector'

/* What rules ask of a shoulder strap behind the seat, its tail included, from the slow solver's contacts. */

const hasSlot = ({ seat }: StrapScene, { strap }: OracleStrap): boolean =>
  seat.slots.some(({ straps }) => straps.includes(strap))

const lengthAlong = (points: readonly Vector[]): number =>
  points.slice(1).reduce((sum, point, i) => sum + apart(point, points[i] ?? point), 0)

/** The straight pieces outside the body from the mount on: over the junction and every opening. */
const outside = ({ contact, junction, passes, arrival }: OracleStrap): readonly Vector[] => [
  contact,
  ...(junction ? [junction] : []),
  ...passes,
  arrival.touch,
]

/** The first place from the mount on where the strap is no more behind the upright plane through the rim; null when it begins ahead of it. */
const overRim = (scene: StrapScene, strap: OracleStrap): { at: Vector; behindMm: number } | null => {
  const rimX = rimOpening(scene).origin[0]
  const points = outside(strap)
  const index = points.findIndex((point) => point[0] <= rimX)
  const [last, next] = [points[index - 1], points[index]]
  if (index === 0) return null
  if (last === undefined || next === undefined)
    return { at: strap.arrival.touch, behindMm: lengthAlong(points) }
  const at = plus(last, minus(next, last), (last[0] - rimX) / (last[0] - next[0]))
  return { at, behindMm: lengthAlong([...points.slice(0, index), at]) }
}

const fallDeg = (from: Vector, to: Vector): number =>
  (Math.atan2(from[2] - to[2], to[0] - from[0]) * 180) / Math.PI

/** Rim drop and length behind the seat: where there is a slot from its opening on the mount's side, else from the rim. */
const behind = (scene: StrapScene, strap: OracleStrap): { rimDropDeg: number | null; lengthMm: number } => {
  const { contact, junction, passes } = strap
  const [slot] = passes
  if (hasSlot(scene, strap)) {
    if (slot === undefined) return { rimDropDeg: null, lengthMm: NaN }
    const points = [contact, ...(junction ? [junction] : []), slot]
    return { rimDropDeg: fallDeg(slot, contact), lengthMm: lengthAlong(points) }
  }
  const rim = rimOpening(scene).origin
  const over = overRim(scene, strap)
  const isPassed = over !== null && strap.arrival.touch[0] < rim[0]
  return { rimDropDeg: isPassed ? fallDeg(rim, contact) : null, lengthMm: over?.behindMm ?? 0 }
}

/** Numbers of one shoulder strap; null where it has none. */
export const behindSeatNumbers = (
  scene: StrapScene,
  strap: OracleStrap,
): readonly (readonly [QuantityId, number | null])[] => {
  const { rimDropDeg, lengthMm } = behind(scene, strap)
  const side = strap.strap === 'shoulder-left' ? 'left' : 'right'
  return [
    ['shoulder-rim-drop', rimDropDeg],
    ['shoulder-length-behind-seat', lengthMm],
    ['shoulder-free-length', lengthAlong(outside(strap))],
    ['shoulder-height', vectorOf(scene.body.shoulderPoint[side])[2] - strap.contact[2]],
  ]
}
