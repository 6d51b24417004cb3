import type { Slot, SlotFace } from '../../straps/seat'
import type { StrapId } from '../../straps/strap'
import { type LengthUnit, lengthText, lengthWithUnit } from '../../units/length'
import { strapName } from './names'

const FACE_WORDS: Readonly<Record<SlotFace, string>> = {
  back: 'the backrest',
  side: 'the side of the shell',
  cushion: 'the cushion',
}

/** What a button does that adds a slot where the straight strap crosses a face of the shell; null: it crosses none. */
export const slotOfferText = (face: SlotFace | null): string =>
  face === null ? 'Add a slot for it' : `Add a slot where it crosses ${FACE_WORDS[face]}`

/** What has been added and what is left to do: the numbers are a start, not the seat. */
export const startingSlotText = (strap: StrapId, slots: readonly Slot[], unit: LengthUnit): string => {
  const [slot] = slots
  if (slot === undefined)
    return `No slot was added for the ${strapName(strap)}: the seat has as many as it can hold.`
  const size = `${lengthText(slot.lengthMm, unit)} × ${lengthWithUnit(slot.heightMm, unit)}`
  const mirrored = slots.length > 1 ? ', with its mirror image on the other side' : ''
  return `The ${strapName(strap)} has a slot in ${FACE_WORDS[slot.face]}${mirrored}. Its place and its ${size} are starting values: measure the seat and change them under Seat.`
}
