import { Point, Polygon } from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { isInsideOutline } from '../../../src/domain/geometry/outline'
import { planePoint, type PlanePointMm } from '../../../src/domain/geometry/plane'

/** A seat seen from the side: not convex, so that a ray may meet it four times. */
const SEAT = [
  [0, 0],
  [400, 0],
  [400, 500],
  [350, 500],
  [350, 50],
  [0, 50],
] as const

const outline: readonly PlanePointMm[] = SEAT.map(([u, v]) => planePoint(u, v))

describe('isInsideOutline', () => {
  it.each([
    { at: [200, 25], inside: true, where: 'in the cushion' },
    { at: [375, 400], inside: true, where: 'in the back' },
    { at: [200, 300], inside: false, where: 'above the cushion, ahead of the back' },
    { at: [500, 300], inside: false, where: 'behind' },
    { at: [-10, 25], inside: false, where: 'ahead' },
    { at: [200, -10], inside: false, where: 'below' },
  ] as const)('$where: $inside', ({ at: [u, v], inside }) => {
    expect(isInsideOutline(outline, planePoint(u, v))).toBe(inside)
    // Whichever way round the outline is drawn.
    expect(isInsideOutline(outline.toReversed(), planePoint(u, v))).toBe(inside)
  })

  it('has nothing inside an outline of fewer than three points', () => {
    expect(isInsideOutline([], planePoint(0, 0))).toBe(false)
    expect(isInsideOutline([planePoint(-1, -1), planePoint(1, 1)], planePoint(0, 0.5))).toBe(false)
  })

  it('always says what another library says, off the outline itself', () => {
    // Source: @flatten-js/core, Polygon.contains.
    const other = new Polygon(SEAT.map(([u, v]) => new Point(u, v)))
    const half = fc.integer({ min: -100, max: 600 }).map((mm) => mm + 0.5)
    fc.assert(
      fc.property(half, half, (u, v) => {
        expect(isInsideOutline(outline, planePoint(u, v))).toBe(other.contains(new Point(u, v)))
      }),
    )
  })
})
