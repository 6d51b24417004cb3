import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { spread } from '../../../../src/sheet/mount/figure/spread'

describe('spread', () => {
  const range = { fromMm: 0, toMm: 100 }

  it('leaves positions alone that are far enough apart', () => {
    expect(spread([10, 20, 40], 5, range)).toEqual([10, 20, 40])
    expect(spread([], 5, range)).toEqual([])
  })

  it('shares the shift between neighbours that are too close', () => {
    // Two at 50 with a gap of 4 lie 2 to each side; a third at 51 pulls the middle of the three to 50 + 1/3.
    expect(spread([50, 50], 4, range)).toEqual([48, 52])
    const three = spread([50, 50, 51], 4, range)
    expect(three?.[1]).toBeCloseTo(50 + 1 / 3, 9)
  })

  it('stays inside the range at both ends', () => {
    expect(spread([0, 0, 0], 4, range)).toEqual([0, 4, 8])
    expect(spread([100, 100], 4, range)).toEqual([96, 100])
  })

  it('says so when there is not enough room, and fits when there is just enough', () => {
    expect(spread([1, 2, 3], 51, range)).toBeNull()
    expect(spread([1, 2, 3], 50, range)).toEqual([0, 50, 100])
  })

  it('always keeps order, gap and range', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -20, max: 120, noNaN: true }), { maxLength: 20 }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        (positions, gapMm) => {
          const places = spread(
            positions.toSorted((a, b) => a - b),
            gapMm,
            range,
          )
          if (places === null) throw new Error('20 × 5 mm fit into 100 mm')
          expect(Math.min(0, ...places)).toBeGreaterThanOrEqual(-1e-9)
          expect(Math.max(0, ...places)).toBeLessThanOrEqual(100 + 1e-9)
          const gaps = places.slice(1).map((place, index) => place - (places[index] ?? 0))
          expect(Math.min(gapMm, ...gaps)).toBeGreaterThanOrEqual(gapMm - 1e-9)
        },
      ),
    )
  })
})
