import { describe, expect, it } from 'vitest'
import { pointMm } from '../../../src/domain/geometry/point'
import type { Handle } from '../../../src/domain/layout/edit/handle'
import {
  dragTarget,
  isMovableIn,
  nudgeTarget,
  refusalText,
} from '../../../src/elevation/handles/handleTarget'

const handle = (moves: Handle['moves'], point = pointMm(100, 20, 300.4)): Handle => ({
  id: 'h',
  ref: { kind: 'hip', placeId: 'p' },
  point,
  moves,
  name: 'Driver, left lap tab',
})
const ANY = handle({ x: true, y: true, z: true })
const ACROSS = handle({ x: false, y: true, z: false })

describe('dragTarget', () => {
  it('moves x and z in the side elevation, x and y in the top elevation', () => {
    expect(dragTarget(ANY, 'side', { uMm: 10, vMm: -20 }, 1)).toEqual({ xMm: 110, zMm: 280 })
    expect(dragTarget(ANY, 'top', { uMm: 10, vMm: -20 }, 1)).toEqual({ xMm: 110, yMm: 0 })
  })

  it('lands on whole steps from the datum', () => {
    expect(dragTarget(ANY, 'side', { uMm: 3.3, vMm: 10 }, 1)).toEqual({ xMm: 103, zMm: 310 }) // 300.4 + 10 → 310
    const sixteenthMm = 25.4 / 16
    const { xMm } = dragTarget(ANY, 'side', { uMm: 5, vMm: 0 }, sixteenthMm)
    expect((xMm ?? 0) / sixteenthMm).toBeCloseTo(66, 9) // 105 / 1.5875 = 66.14
  })

  it('leaves a coordinate exactly alone below half a step of movement', () => {
    expect(dragTarget(ANY, 'side', { uMm: 0.4, vMm: -50 }, 1)).toEqual({ xMm: 100, zMm: 250 })
    expect(dragTarget(ANY, 'side', { uMm: 0, vMm: 0.49 }, 1)).toEqual({ xMm: 100, zMm: 300.4 })
    expect(dragTarget(ANY, 'side', { uMm: 0, vMm: 0.5 }, 1)).toEqual({ xMm: 100, zMm: 301 })
  })

  it('asks only for coordinates the handle can move in', () => {
    expect(dragTarget(ACROSS, 'side', { uMm: 10, vMm: 10 }, 1)).toEqual({})
    expect(dragTarget(ACROSS, 'top', { uMm: 10, vMm: 10 }, 1)).toEqual({ yMm: 30 })
  })
})

describe('nudgeTarget', () => {
  it('moves by exactly the step, without snapping', () => {
    expect(nudgeTarget(ANY, 'side', { uMm: 0, vMm: 1 })).toEqual({ zMm: 301.4 })
    expect(nudgeTarget(ANY, 'top', { uMm: -10, vMm: 0 })).toEqual({ xMm: 90 })
  })

  it('is null when the handle cannot move that way', () => {
    expect(nudgeTarget(ACROSS, 'side', { uMm: 1, vMm: 0 })).toBeNull()
    expect(nudgeTarget(ACROSS, 'top', { uMm: 1, vMm: 0 })).toBeNull()
  })
})

describe('refusalText', () => {
  it('names the part and where it does move', () => {
    expect(isMovableIn(ACROSS, 'side')).toBe(false)
    expect(isMovableIn(ACROSS, 'top')).toBe(true)
    expect(refusalText(ACROSS, 'side')).toBe(
      'Driver, left lap tab: does not move in the side elevation. Drag it in the top elevation.',
    )
    expect(refusalText(handle({ x: false, y: false, z: false }), 'side')).toContain('cannot be moved')
  })
})
