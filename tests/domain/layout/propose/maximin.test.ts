import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { type LinearValue, maximinStep } from '../../../../src/domain/layout/propose/maximin'

const leastAfter = (values: readonly LinearValue[], step: readonly number[]): number =>
  Math.min(
    ...values.map(({ value, slopes }) =>
      slopes.reduce((sum, slope, index) => sum + slope * (step[index] ?? 0), value),
    ),
  )

describe('maximinStep', () => {
  it('goes as far as it may where everything rises one way', () => {
    expect(maximinStep([{ value: 3, slopes: [2, -1] }], [5, 4])).toEqual([5, -4])
  })

  it('stops where two limits leave the same: 10 − d and 2 + 3d meet at d = 2', () => {
    const [step] = maximinStep(
      [
        { value: 10, slopes: [-1] },
        { value: 2, slopes: [3] },
      ],
      [50],
    )
    expect(step).toBeCloseTo(2, 9)
  })

  it('goes along the ridge of a narrow wedge, where neither axis helps alone', () => {
    // Distances to the two sides of a wedge of 10° about the u axis: sin 5°·u ∓ cos 5°·v.
    const s = Math.sin((5 * Math.PI) / 180)
    const c = Math.cos((5 * Math.PI) / 180)
    const [along, across] = maximinStep(
      [
        { value: 1, slopes: [s, -c] },
        { value: 1, slopes: [s, c] },
      ],
      [40, 40],
    )
    expect(along).toBeCloseTo(40, 9)
    expect(across).toBeCloseTo(0, 9)
  })

  it('stays without any values, and keeps to a reach of nothing', () => {
    expect(maximinStep([], [3])).toEqual([0])
    expect(maximinStep([{ value: 0, slopes: [1, 1] }], [0, 2])).toEqual([0, 2])
  })

  it('is never beaten by any other step within reach', () => {
    const slope = fc.double({ min: -3, max: 3, noNaN: true })
    const value = fc.record({
      value: fc.double({ min: -100, max: 100, noNaN: true }),
      slopes: fc.tuple(slope, slope, slope),
    })
    const share = fc.double({ min: -1, max: 1, noNaN: true })
    fc.assert(
      fc.property(
        fc.array(value, { minLength: 1, maxLength: 30 }),
        fc.array(fc.tuple(share, share, share), { minLength: 20, maxLength: 60 }),
        (values, shares) => {
          const reach = [40, 15, 22.5]
          const step = maximinStep(values, reach)
          expect(step.every((size, index) => Math.abs(size) <= (reach[index] ?? 0))).toBe(true)
          const best = leastAfter(values, step)
          for (const other of shares)
            expect(
              leastAfter(
                values,
                other.map((each, index) => each * (reach[index] ?? 0)),
              ),
            ).toBeLessThanOrEqual(best + 1e-6)
        },
      ),
    )
  })
})
