import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { pointDistanceMm, type PointMm } from '../../../src/domain/geometry/point'
import { leastSquaresPoint, mostDisagreementMm } from '../../../src/domain/geometry/sphereFit'
import { agreementOf, DISAGREE_MM } from '../../../src/domain/measure/agreement'
import type { TapeObservations } from '../../../src/domain/measure/observations'
import { at, byTapes, exactTapes, found, type Triple } from './support'

const MIDDLE = at([0, 0, 0])

/** Tapes from the points to the middle, each longer than it should be by `offMm`. */
const tapesTo = (from: readonly Triple[], offMm: readonly number[] = []): TapeObservations => ({
  tapes: from.map((triple, index) => ({
    index,
    name: '',
    point: at(triple),
    lengthMm: pointDistanceMm(at(triple), MIDDLE) + (offMm[index] ?? 0),
  })),
  coordinate: null,
})

const bestOf = (observations: TapeObservations): PointMm => leastSquaresPoint(observations, at([1, 2, 3]))

const agreement = (observations: TapeObservations): ReturnType<typeof agreementOf> =>
  agreementOf(observations, bestOf(observations))

/** Round the middle in eight directions, the corners of a box not quite square. */
const AROUND: readonly Triple[] = [
  [1500, 900, 800],
  [-1500, 950, -800],
  [1450, -900, -850],
  [-1500, -900, 800],
  [1300, 800, -900],
  [-1400, 1000, 900],
  [1500, -850, 700],
  [-1300, -900, -800],
]

describe('agreementOf', () => {
  it('names the one wrong reading among eight, whichever it is, and never another', () => {
    const noise = fc.array(fc.double({ min: -0.3, max: 0.3, noNaN: true }), { minLength: 8, maxLength: 8 })
    const slip = fc.record({
      index: fc.integer({ min: 0, max: 7 }),
      byMm: fc.oneof(fc.integer({ min: 15, max: 100 }), fc.integer({ min: -100, max: -15 })),
    })
    fc.assert(
      fc.property(noise, slip, (offMm, { index, byMm }) => {
        const wrong = offMm.map((mm, each) => (each === index ? mm + byMm : mm))
        const { oddOneOut, residualMm } = agreement(tapesTo(AROUND, wrong))
        expect(oddOneOut).toBe(index)
        expect(residualMm).toBeGreaterThan(DISAGREE_MM)
      }),
    )
  })

  it('names a coordinate that is wrong', () => {
    const tapes = exactTapes(AROUND.map(at), MIDDLE)
    const { oddOneOut } = found(byTapes(tapes, null, { axis: 'z', readingsMm: [40] }))
    expect(oddOneOut).toEqual({ kind: 'coordinate', axis: 'z' })
  })

  it('names none of four: their disagreements are in one proportion whichever is wrong', () => {
    const four = AROUND.slice(0, 4)
    const first = agreement(tapesTo(four, [40]))
    const last = agreement(tapesTo(four, [0, 0, 0, 40]))
    expect(first.residualMm).toBeGreaterThan(DISAGREE_MM)
    expect(last.residualMm).toBeGreaterThan(DISAGREE_MM)
    expect([first.oddOneOut, last.oddOneOut]).toEqual([null, null])
  })

  it('names none where two are wrong, nor where all agree', () => {
    expect(agreement(tapesTo(AROUND, [30, 0, 30])).oddOneOut).toBeNull()
    expect(agreement(tapesTo(AROUND, [3])).oddOneOut).toBeNull()
  })

  it('hides 3 mm among six tapes along the axes', () => {
    // By hand: N = 2·1, so an error b moves the point b/2 and leaves b/2 in its own tape and the opposite one: 3 mm at b = 6.
    const six: readonly Triple[] = [
      [700, 0, 0],
      [-900, 0, 0],
      [0, 800, 0],
      [0, -600, 0],
      [0, 0, 1000],
      [0, 0, -500],
    ]
    expect(agreement(tapesTo(six)).hiddenMm).toBeCloseTo(DISAGREE_MM, 6)
  })

  it('has no bound for a tape that no other checks', () => {
    // Across and up there is one tape each: they may be wrong by anything, and the others agree.
    const tapes = tapesTo([
      [1000, 0, 0],
      [0, 1000, 0],
      [0, 0, 1000],
      [-1400, 0, 0],
    ])
    expect(agreement(tapes)).toMatchObject({ oddOneOut: null, hiddenMm: null })
  })

  it('is what a wrong reading does that just does not show, tried out', () => {
    const spread = fc.array(fc.double({ min: -400, max: 400, noNaN: true }), { minLength: 15, maxLength: 15 })
    const corners: readonly Triple[] = [
      [1500, 900, 800],
      [-1500, 900, -800],
      [1500, -900, -800],
      [-1500, -900, 800],
      [0, 0, 2500],
    ]
    fc.assert(
      fc.property(spread, (by) => {
        const from = corners.map(([x, y, z], index): Triple => [
          x + (by[3 * index] ?? 0),
          y + (by[3 * index + 1] ?? 0),
          z + (by[3 * index + 2] ?? 0),
        ])
        const { hiddenMm } = agreementOf(tapesTo(from), MIDDLE)
        if (hiddenMm === null) throw new Error('five tapes all round check each other')
        fc.pre(hiddenMm < 40)
        // The worst of the five, each made wrong until the first disagreement is 3 mm.
        const moves = from.map((_, index) => {
          const wrongBy = (mm: number): TapeObservations =>
            tapesTo(
              from,
              from.map((__, each) => (each === index ? mm : 0)),
            )
          const shows = (mm: number): number => mostDisagreementMm(wrongBy(mm), bestOf(wrongBy(mm)))
          const bounds = { low: 0, high: 2000 }
          for (let step = 0; step < 40; step += 1) {
            const mid = (bounds.low + bounds.high) / 2
            if (shows(mid) < DISAGREE_MM) bounds.low = mid
            else bounds.high = mid
          }
          return pointDistanceMm(bestOf(wrongBy(bounds.low)), MIDDLE)
        })
        // Slopes turn a little over such moves.
        expect(Math.max(...moves) / hiddenMm).toBeGreaterThan(0.85)
        expect(Math.max(...moves) / hiddenMm).toBeLessThan(1.15)
      }),
      { numRuns: 20 },
    )
  })
})
