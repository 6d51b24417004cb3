import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Place } from '../../../../src/domain/layout/document/layout'
import { bendOf } from '../../../../src/domain/layout/evaluate/seatSearch'
import { seatLattice, sittingAt, sittingOfId } from '../../../../src/domain/layout/evaluate/sittings'
import { flatLayout, flatPlace } from '../../../support/flatLayout'

const seated = (place: Place, change: Partial<Place['seat']>): Place => ({
  ...place,
  seat: { ...place.seat, ...change },
})

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

describe('the positions that are looked at', () => {
  const latticeOf = (change: Partial<Place['seat']>) => {
    const place = seated(flatPlace(), change)
    return seatLattice(flatLayout([place]), place)
  }

  it('lie at most 50 mm and 5° apart, with one at least between any two that a place always has', () => {
    expect(latticeOf({ slide: { forwardMm: 60, rearwardMm: 101 } }).slidesMm).toEqual([
      -60, -30, 0, 34, 67, 101,
    ])
    expect(latticeOf({ slide: { forwardMm: 0, rearwardMm: 100 } }).slidesMm).toEqual([0, 50, 100])
    expect(latticeOf({ slide: { forwardMm: 20, rearwardMm: 0 } }).slidesMm).toEqual([-20, -10, 0])
    // 30°: where the student rules change.
    expect(latticeOf({ reclineRange: { uprightDeg: 12, reclinedDeg: 36 } }).reclinesDeg).toEqual([
      12, 16, 20, 25, 30, 33, 36,
    ])
    expect(latticeOf({ reclineRange: { uprightDeg: 19, reclinedDeg: 20 } }).reclinesDeg).toEqual([
      19, 19.5, 20,
    ])
  })

  it('add nothing to a fixed seat, nor between ends closer than can be told apart', () => {
    expect(latticeOf({})).toEqual({ slidesMm: [0], reclinesDeg: [20] })
    expect(latticeOf({ slide: { forwardMm: 0, rearwardMm: 1 } }).slidesMm).toEqual([0, 1])
  })

  it('have ids that name them again', () => {
    const layout = flatLayout([flatPlace()])
    expect(sittingOfId(layout, 'driver/marla/75/22.5')).toEqual(sittingAt(flatPlace(), 'marla', 75, 22.5))
    expect(sittingOfId(layout, 'driver/marla/-60/20')?.slideMm).toBe(-60)
    for (const id of [
      'driver/marla/75',
      'driver/marla/75/x',
      'driver/ove/0/20',
      'driver/marla/0/20/1',
      'rear/marla/0/20',
    ])
      expect(sittingOfId(layout, id)).toBeNull()
  })
})
