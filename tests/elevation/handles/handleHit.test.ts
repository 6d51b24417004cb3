import { describe, expect, it } from 'vitest'
import {
  CROWD_SLACK_PX,
  crowdAt,
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
  it('reaches 22 px in every direction for a finger and a pen, so that a target is 44 px wide', () => {
    for (const kind of ['touch', 'pen'] as const) {
      expect(HIT_RADIUS_PX[kind] * 2).toBe(44)
      expect(handleAt([spot('a', 22)], POINTER, null, kind)?.id).toBe('a')
      expect(handleAt([spot('a', 22.1)], POINTER, null, kind)).toBeNull()
      // Straight across, not along the axes: 16 px each way is 22.6 px.
      expect(handleAt([{ ...spot('a', 0), at: { xPx: 16, yPx: 16 } }], POINTER, null, kind)).toBeNull()
    }
  })

  it('gives a mouse no less than the 24 px that WCAG 2.2, 2.5.8 Target Size (Minimum), asks for (from memory)', () => {
    expect(HIT_RADIUS_PX.mouse * 2).toBeGreaterThanOrEqual(24)
    expect(handleAt([spot('a', HIT_RADIUS_PX.mouse)], POINTER, null, 'mouse')?.id).toBe('a')
    expect(handleAt([spot('a', HIT_RADIUS_PX.mouse + 0.1)], POINTER, null, 'mouse')).toBeNull()
  })

  it('takes the nearest', () => {
    expect(handleAt([spot('far', 10), spot('near', -5)], POINTER, null, 'touch')?.id).toBe('near')
  })

  it('takes the selected one of several in reach, even when it is further away or cannot move', () => {
    const spots = [spot('near', 1), spot('chosen', 20, { isMovable: false })]
    expect(handleAt(spots, POINTER, 'chosen', 'touch')?.id).toBe('chosen')
  })

  it('does not take the selected one from outside its reach', () => {
    expect(handleAt([spot('near', 1), spot('chosen', 23)], POINTER, 'chosen', 'touch')?.id).toBe('near')
  })

  it('prefers what can move here', () => {
    const spots = [spot('fixed', 0, { isMovable: false }), spot('movable', 15)]
    expect(handleAt(spots, POINTER, null, 'touch')?.id).toBe('movable')
  })

  it('lets scenery win only when it is clearly nearer', () => {
    const tab = spot('tab', 12)
    const inside = spot('end', 12 - MINOR_HANDICAP_PX + 1, { isMinor: true })
    const beyond = spot('end', 12 - MINOR_HANDICAP_PX - 1, { isMinor: true })
    expect(handleAt([inside, tab], POINTER, null, 'touch')?.id).toBe('tab')
    expect(handleAt([beyond, tab], POINTER, null, 'touch')?.id).toBe('end')
  })
})

describe('crowdAt', () => {
  const ids = (spots: readonly HandleSpot[]): readonly string[] =>
    crowdAt(spots, POINTER, 'touch').map(({ id }) => id)

  it('names what lies hardly further away than the nearest, nearest first, whether it moves or not', () => {
    expect(ids([spot('b', 5), spot('a', -2), spot('fixed', 6, { isMovable: false })])).toEqual([
      'a',
      'b',
      'fixed',
    ])
  })

  it('counts from the nearest and not from the finger', () => {
    expect(ids([spot('a', 9), spot('b', 9 + CROWD_SLACK_PX)])).toEqual(['a', 'b'])
    expect(ids([spot('a', 1), spot('b', 1 + CROWD_SLACK_PX + 0.1)])).toEqual(['a'])
  })

  it('names nothing out of reach', () => {
    expect(ids([spot('a', 18), spot('b', 23)])).toEqual(['a'])
    expect(ids([spot('b', 23)])).toEqual([])
  })
})
