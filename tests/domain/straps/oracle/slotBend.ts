import type { StrapScene } from '../../../../src/domain/straps/scene'
import type { Slot } from '../../../../src/domain/straps/seat'
import { slotOpenings } from './openings'
import type { OracleStrap } from './place'
import { CLEAN_DEG } from './place'
import { bentPasses } from './taut'
import { dot, minus, towards, turnDeg, type Vector } from './vector'

/** Turn between two directions as seen in a drawn plane (two of the three coordinates). */
const seenTurnDeg = (a: Vector, b: Vector, [i, j]: readonly [0 | 1 | 2, 0 | 1 | 2]): number => {
  const crossed = a[i] * b[j] - a[j] * b[i]
  return Math.abs((Math.atan2(crossed, a[i] * b[i] + a[j] * b[j]) * 180) / Math.PI)
}

/** Whether every held point lies on a lateral edge only, free to slide across the seat. */
const isHeldAcrossOnly = (scene: StrapScene, slot: Slot, strap: OracleStrap): boolean => {
  if (slot.turnDeg !== 0) return false
  const openings = slotOpenings(scene, slot, strap.strap)
  return bentPasses(strap, CLEAN_DEG).every((point) =>
    openings.every(({ origin, across, low, high }) => {
      const u = dot(minus(point, origin), across)
      return u > low[0] + 1e-7 && u < high[0] - 1e-7
    }),
  )
}

/**
 * The turn that a strap's slot makes, degrees. Side-wall slots: in space. The others: the larger of the turn in side view and,
 * unless a lateral edge alone holds it, the turn in plan view (cushion slots: in front view). Null without a slot.
 */
export const slotBendDeg = (scene: StrapScene, strap: OracleStrap): number | null => {
  const slot = scene.seat.slots.find(({ straps }) => straps.includes(strap.strap))
  if (slot === undefined) return null
  const bent = bentPasses(strap, CLEAN_DEG)
  const first = bent[0]
  const last = bent.at(-1)
  if (first === undefined || last === undefined) return 0
  const before = towards(strap.junction ?? strap.contact, first)
  const after = towards(last, strap.arrival.touch)
  if (slot.face === 'side') return turnDeg(before, after)
  const inSideView = seenTurnDeg(before, after, [0, 2])
  if (isHeldAcrossOnly(scene, slot, strap)) return inSideView
  return Math.max(inSideView, seenTurnDeg(before, after, slot.face === 'back' ? [0, 1] : [1, 2]))
}
