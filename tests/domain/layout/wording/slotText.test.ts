import { describe, expect, it } from 'vitest'
import { slotOfferText, startingSlotText } from '../../../../src/domain/layout/wording/slotText'
import type { Slot } from '../../../../src/domain/straps/seat'

const slot: Slot = {
  id: 'slot-1',
  straps: ['sub-left'],
  face: 'cushion',
  centre: { xMm: -60, yMm: -55, zMm: -98 },
  lengthMm: 66,
  heightMm: 25.4,
  turnDeg: 0,
}

describe('words about a new slot', () => {
  it('say where it would be cut', () => {
    expect(slotOfferText('cushion')).toBe('Add a slot where it crosses the cushion')
    expect(slotOfferText('back')).toBe('Add a slot where it crosses the backrest')
    expect(slotOfferText('side')).toBe('Add a slot where it crosses the side of the shell')
    expect(slotOfferText(null)).toBe('Add a slot for it')
  })

  it('say that its numbers are a start, in the unit of the layout', () => {
    expect(startingSlotText('sub-left', [slot], 'mm')).toBe(
      'The left anti-submarine strap has a slot in the cushion. Its place and its 66 × 25.4 mm are starting values: measure the seat and change them under Seat.',
    )
    expect(startingSlotText('sub-left', [slot, { ...slot, straps: ['sub-right'] }], 'in')).toContain(
      'a slot in the cushion, with its mirror image on the other side',
    )
    expect(startingSlotText('sub-left', [slot], 'in')).toContain('× 1 in')
  })

  it('say so when no slot was added', () => {
    expect(startingSlotText('lap-left', [], 'mm')).toContain('No slot was added for the left lap strap')
  })
})
