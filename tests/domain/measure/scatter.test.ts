import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { FAR_APART, type Scatter, scatterOf } from '../../../src/domain/measure/scatter'
import { at, byTapes, exactTapes, found } from './support'

const length = { min: 0, max: 100_000, isLength: true }

const scatter = (readings: readonly number[], unit: 'mm' | 'deg' = 'mm'): Scatter => {
  const result = scatterOf({ kind: 'string-length' }, unit, readings, length)
  if (!result.ok) throw new Error(result.error.kind)
  return result.value
}

describe('readings of one thing', () => {
  it('count by their mean; the spread is the largest less the smallest', () => {
    expect(scatter([612, 613, 611.5, 612.5])).toMatchObject({
      count: 4,
      mean: 612.25,
      spread: 1.5,
      isWide: false,
      stray: null,
    })
    expect(scatter([612])).toMatchObject({ count: 1, mean: 612, spread: 0, isWide: false, stray: null })
  })

  it('are wide beyond 5 mm or 2°, not at it', () => {
    expect(scatter([600, 600 + FAR_APART.mm]).isWide).toBe(false)
    expect(scatter([600, 600 + FAR_APART.mm + 0.1]).isWide).toBe(true)
    expect(scatter([40, 42], 'deg').isWide).toBe(false)
    expect(scatter([40, 42.1], 'deg').isWide).toBe(true)
  })

  it('that are two are never told apart', () => {
    expect(scatter([600, 700])).toMatchObject({ isWide: true, stray: null })
  })

  it('point at the one that is far from its fellows', () => {
    // The others are 1 apart about 612.5; 622 is 9.5 more.
    expect(scatter([612, 622, 613]).stray).toEqual({ index: 1, value: 622, offBy: 9.5 })
    expect(scatter([612, 602, 612]).stray).toEqual({ index: 1, value: 602, offBy: -10 })
  })

  it('point at none while the others are scattered themselves', () => {
    // 620 is 10 from the mean of the others, which are 4 apart: less than three times that.
    expect(scatter([608, 612, 620])).toMatchObject({ isWide: true, stray: null })
  })

  it('average errors out: the point lies where the mean of the readings puts it', () => {
    const known = [at([0, 0, 0]), at([900, 0, 0]), at([0, 600, 0])]
    const target = at([500, 300, 700])
    const error = fc.double({ min: 0, max: 3, noNaN: true })
    fc.assert(
      fc.property(fc.tuple(error, error, error), (off) => {
        const tapes = exactTapes(known, target).map((tape, index) => {
          const [mm = 0] = tape.lengthsMm
          return { ...tape, lengthsMm: [mm - (off[index] ?? 0), mm, mm + (off[index] ?? 0)] }
        })
        const { point, scatters } = found(byTapes(tapes, 'normal'))
        expect(point.xMm).toBeCloseTo(500, 8)
        expect(point.yMm).toBeCloseTo(300, 8)
        expect(point.zMm).toBeCloseTo(700, 8)
        scatters.forEach(({ spread }, index) => expect(spread).toBeCloseTo(2 * (off[index] ?? 0), 9))
      }),
    )
  })

  it('of coordinates are averaged axis by axis', () => {
    const { point, residualMm, mirror, sensitivity, scatters } = found({
      kind: 'coordinates',
      xMm: [100, 102],
      yMm: [-50],
      zMm: [300, 301, 302],
    })
    expect(point).toEqual(at([101, -50, 301]))
    expect([residualMm, mirror]).toEqual([null, null])
    // The diagonal of a cube of 1 mm.
    expect(sensitivity).toEqual({ mmPerMm: Math.sqrt(3), mmPerDeg: null })
    expect(scatters.map(({ count, spread }) => [count, spread])).toEqual([
      [2, 2],
      [1, 0],
      [3, 2],
    ])
  })
})
