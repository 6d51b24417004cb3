import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bendOf } from '../../../../src/domain/layout/evaluate/seatSearch'

describe('how much a number bends', () => {
  it('is nothing along a straight line, however far apart the positions are, and nothing where one has no number', () => {
    expect(bendOf([0, 30, 100], [3, 10])).toBeCloseTo(0, 12)
    expect(bendOf([5, 4, 0], [10, 50])).toBeCloseTo(0, 12)
    expect(bendOf([0, NaN, 100], [3, 10])).toBe(0)
    expect(bendOf([NaN, 0, 10], [5, 10])).toBe(0)
    // Best in the middle: nothing worse hides there.
    expect(bendOf([0, 10, 0], [5, 10])).toBe(0)
  })

  it('covers what is worse at a kink anywhere between three positions', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    const slope = fc.double({ min: 0.01, max: 5, noNaN: true })
    fc.assert(
      fc.property(
        share,
        slope,
        slope,
        fc.double({ min: 10, max: 50, noNaN: true }),
        (at, left, right, first) => {
          const kink = at * 2 * first
          const valueAt = (x: number): number => (x < kink ? left * (kink - x) : right * (x - kink))
          const values = [valueAt(0), valueAt(first), valueAt(2 * first)] as const
          const least = Math.min(...values)
          // At the kink it is 0: so much worse than at the worst of the three.
          expect(bendOf(values, [first, 2 * first])).toBeGreaterThanOrEqual(least - 1e-9)
        },
      ),
    )
  })
})
