import type { PointMm } from '../geometry/point'
import { cosDeg, sinDeg } from '../units/angle'
import type { Seat, Slot } from './seat'
import type { StrapId } from './strap'

/** A point of the slot's own face: `long` along its long side, `short` along its short side, before turning. */
const onFace = (slot: Slot, longMm: number, shortMm: number): PointMm => {
  const c = cosDeg(slot.turnDeg)
  const s = sinDeg(slot.turnDeg)
  const first = longMm * c - shortMm * s
  const second = longMm * s + shortMm * c
  const { xMm, yMm, zMm } = slot.centre
  switch (slot.face) {
    case 'back':
      return { xMm, yMm: yMm + first, zMm: zMm + second }
    case 'side':
      return { xMm: xMm + first, yMm, zMm: zMm + second }
    case 'cushion':
      return { xMm: xMm + second, yMm: yMm + first, zMm }
  }
}

/** The four corners of a slot in order round it, in the seat frame. Its edges are taken as thin: the shell's thickness is left out. */
export const slotCorners = (slot: Slot): readonly PointMm[] => {
  const long = slot.lengthMm / 2
  const short = slot.heightMm / 2
  return [
    onFace(slot, long, short),
    onFace(slot, -long, short),
    onFace(slot, -long, -short),
    onFace(slot, long, -short),
  ]
}

/** The slot a strap is led through, or null. A strap passes at most one; the first that names it counts. */
export const slotOf = (seat: Seat, strap: StrapId): Slot | null =>
  seat.slots.find((slot) => slot.straps.includes(strap)) ?? null
