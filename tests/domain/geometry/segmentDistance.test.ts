import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pointBetween, pointDistanceMm, pointMm } from '../../../src/domain/geometry/point'
import { segmentDistanceMm } from '../../../src/domain/geometry/segmentDistance'

describe('segmentDistanceMm', () => {
  it.each([
    { of: 'two that cross at 7 mm', b: [pointMm(5, -5, 7), pointMm(5, 5, 7)], mm: 7 },
    { of: 'two side by side', b: [pointMm(2, 3, 4), pointMm(8, 3, 4)], mm: 5 },
    { of: 'two in line', b: [pointMm(14, 0, 0), pointMm(20, 0, 0)], mm: 4 },
    { of: 'an end and an end', b: [pointMm(13, 4, 0), pointMm(20, 30, 0)], mm: 5 },
    { of: 'a point', b: [pointMm(3, 4, 0), pointMm(3, 4, 0)], mm: 4 },
    { of: 'two that meet', b: [pointMm(5, -5, 0), pointMm(5, 5, 0)], mm: 0 },
  ])('from a piece 10 mm along x: $of', ({ b, mm }) => {
    const [from, to] = b
    if (from === undefined || to === undefined) throw new Error('no piece')
    expect(segmentDistanceMm(pointMm(0, 0, 0), pointMm(10, 0, 0), from, to)).toBeCloseTo(mm, 12)
    expect(segmentDistanceMm(from, to, pointMm(10, 0, 0), pointMm(0, 0, 0))).toBeCloseTo(mm, 12)
  })

  it('is no more than between any two sampled points, and reached by some', () => {
    const coordinate = fc.double({ min: -500, max: 500, noNaN: true })
    const point = fc.tuple(coordinate, coordinate, coordinate).map(([x, y, z]) => pointMm(x, y, z))
    fc.assert(
      fc.property(point, point, point, point, (a0, a1, b0, b1) => {
        const found = segmentDistanceMm(a0, a1, b0, b1)
        let least = Infinity
        for (let i = 0; i <= 60; i += 1)
          for (let k = 0; k <= 60; k += 1)
            least = Math.min(
              least,
              pointDistanceMm(pointBetween(a0, a1, i / 60), pointBetween(b0, b1, k / 60)),
            )
        expect(found).toBeLessThan(least + 1e-9)
        // The samples lie at most half a step, 1/120 of each piece, from the nearest points.
        const slackMm = (pointDistanceMm(a0, a1) + pointDistanceMm(b0, b1)) / 120
        expect(found).toBeGreaterThan(least - slackMm - 1e-9)
      }),
      { numRuns: 60 },
    )
  })
})
