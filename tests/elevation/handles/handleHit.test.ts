import { describe, expect, it } from 'vitest'
import {
  handleAt,
  type HandleSpot,
  HIT_RADIUS_PX,
  MINOR_HANDICAP_PX,
} from '../../../src/elevation/handles/handleHit'

const spot = (id: string, xPx: number, more: Partial<HandleSpot> = {}): HandleSpot => ({
  id,
  at: { xPx, yPx: 0 },
  isMovable: true,
  isMinor: false,
  ...more,
})
const POINTER = { xPx: 0, yPx: 0 }

describe('handleAt', () => {
  it('reaches 22 px in every direction, so that a target is 44 px wide', () => {
    expect(HIT_RADIUS_PX * 2).toBe(44)
    expect(handleAt([spot('a', HIT_RADIUS_PX)], POINTER, null)?.id).toBe('a')
    expect(handleAt([spot('a', HIT_RADIUS_PX + 0.1)], POINTER, null)).toBeNull()
    // Straight across, not along the axes: 16 px each way is 22.6 px.
    expect(handleAt([{ ...spot('a', 0), at: { xPx: 16, yPx: 16 } }], POINTER, null)).toBeNull()
  })

  it('takes the nearest', () => {
    expect(handleAt([spot('far', 10), spot('near', -5)], POINTER, null)?.id).toBe('near')
  })

  it('takes the selected one of several in reach, even when it is further away or cannot move', () => {
    const spots = [spot('near', 1), spot('chosen', 20, { isMovable: false })]
    expect(handleAt(spots, POINTER, 'chosen')?.id).toBe('chosen')
  })

  it('does not take the selected one from outside its reach', () => {
    expect(handleAt([spot('near', 1), spot('chosen', 23)], POINTER, 'chosen')?.id).toBe('near')
  })

  it('prefers what can move here', () => {
    const spots = [spot('fixed', 0, { isMovable: false }), spot('movable', 15)]
    expect(handleAt(spots, POINTER, null)?.id).toBe('movable')
  })

  it('lets scenery win only when it is clearly nearer', () => {
    const tab = spot('tab', 12)
    const inside = spot('end', 12 - MINOR_HANDICAP_PX + 1, { isMinor: true })
    const beyond = spot('end', 12 - MINOR_HANDICAP_PX - 1, { isMinor: true })
    expect(handleAt([inside, tab], POINTER, null)?.id).toBe('tab')
    expect(handleAt([beyond, tab], POINTER, null)?.id).toBe('end')
  })
})
