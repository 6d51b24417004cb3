import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { pointDistanceMm } from '../../../src/domain/geometry/point'
import type { Measurement } from '../../../src/domain/measure/measurement'
import { isBadlyPlaced } from '../../../src/domain/measure/sensitivity'
import { pointInCar } from '../../support/arbitraries'
import { at, found, refused } from './support'

type StringMeasurement = Extract<Measurement, { readonly kind: 'angle' }>

const pulled = (change: Partial<StringMeasurement>): StringMeasurement => ({
  kind: 'angle',
  from: { name: 'seat bolt', point: at([1000, 200, 100]) },
  stringDeg: [0],
  lengthMm: [500],
  runs: 'rearward',
  aside: { kind: 'y', readingsMm: [0] },
  ...change,
})

describe('a string with an angle finder', () => {
  it.each([
    // Level, straight back and straight ahead.
    { stringDeg: 0, lengthMm: 500, runs: 'rearward', y: 0, expected: [1500, 200, 100] },
    { stringDeg: 0, lengthMm: 500, runs: 'forward', y: 0, expected: [500, 200, 100] },
    // Half of the length up at 30° (an equilateral triangle halved): rise 250, run 250·√3.
    { stringDeg: 30, lengthMm: 500, runs: 'rearward', y: 0, expected: [1000 + 250 * Math.sqrt(3), 200, 350] },
    {
      stringDeg: -30,
      lengthMm: 500,
      runs: 'forward',
      y: 0,
      expected: [1000 - 250 * Math.sqrt(3), 200, -150],
    },
    // 3-4-5 in plan: 500 of level run, 300 aside, 400 along.
    { stringDeg: 0, lengthMm: 500, runs: 'rearward', y: 300, expected: [1400, 500, 100] },
    { stringDeg: 0, lengthMm: 500, runs: 'forward', y: -300, expected: [600, -100, 100] },
    // Square to the car: all of it aside.
    { stringDeg: 0, lengthMm: 500, runs: 'forward', y: 500, expected: [1000, 700, 100] },
    // Plumb.
    { stringDeg: 90, lengthMm: 500, runs: 'rearward', y: 0, expected: [1000, 200, 600] },
  ] as const)(
    '$lengthMm mm at $stringDeg° $runs, $y mm aside ends at $expected',
    ({ stringDeg, lengthMm, runs, y, expected }) => {
      const { point, residualMm, mirror } = found(
        pulled({
          stringDeg: [stringDeg],
          lengthMm: [lengthMm],
          runs,
          aside: { kind: 'y', readingsMm: [y] },
        }),
      )
      expect(pointDistanceMm(point, at(expected))).toBeLessThan(1e-5)
      expect(residualMm).toBeNull()
      expect(mirror).toBeNull()
    },
  )

  it.each([
    // √2/2 each way at 45°; a string to the left has a negative plan angle.
    { planDeg: 45, runs: 'rearward', expected: [1000 + 250 * Math.SQRT2, 200 + 250 * Math.SQRT2, 100] },
    { planDeg: -45, runs: 'forward', expected: [1000 - 250 * Math.SQRT2, 200 - 250 * Math.SQRT2, 100] },
    { planDeg: 90, runs: 'forward', expected: [1000, 700, 100] },
  ] as const)('at a plan angle of $planDeg° $runs ends at $expected', ({ planDeg, runs, expected }) => {
    const { point } = found(pulled({ runs, aside: { kind: 'plan', readingsDeg: [planDeg] } }))
    expect(pointDistanceMm(point, at(expected))).toBeLessThan(1e-9)
  })

  it('goes no further aside than its level run: the run itself passes, a millionth more does not', () => {
    // At 60° half of the length is level run: 250.
    const aside = (y: number): StringMeasurement =>
      pulled({ stringDeg: [60], aside: { kind: 'y', readingsMm: [y] } })
    expect(found(aside(-250)).point.yMm).toBeCloseTo(-50, 9)
    const problem = refused(aside(250 + 1e-6))
    if (problem.kind !== 'aside-too-long') throw new Error(problem.kind)
    expect(problem.asideMm).toBe(250 + 1e-6)
    expect(problem.levelRunMm).toBeCloseTo(250, 9)
    expect(refused(aside(-250 - 1e-6)).kind).toBe('aside-too-long')
  })

  it('read by angles off the range of an angle finder is refused', () => {
    expect(refused(pulled({ stringDeg: [10, 91] }))).toMatchObject({
      kind: 'out-of-range',
      index: 1,
      value: 91,
    })
    expect(refused(pulled({ aside: { kind: 'plan', readingsDeg: [-90.5] } }))).toMatchObject({
      kind: 'out-of-range',
      of: { kind: 'aside', by: 'plan' },
    })
  })

  it('gives back any point that it was pulled to', () => {
    fc.assert(
      fc.property(pointInCar, pointInCar, (from, to) => {
        const lengthMm = pointDistanceMm(from, to)
        const dx = to.xMm - from.xMm
        fc.pre(lengthMm > 1 && Math.abs(dx) > 1)
        const deg = 180 / Math.PI
        const shared: Partial<StringMeasurement> = {
          from: { name: 'A', point: from },
          lengthMm: [lengthMm],
          stringDeg: [Math.asin((to.zMm - from.zMm) / lengthMm) * deg],
          runs: dx < 0 ? 'forward' : 'rearward',
        }
        const dy = to.yMm - from.yMm
        for (const aside of [
          { kind: 'y' as const, readingsMm: [dy] },
          { kind: 'plan' as const, readingsDeg: [Math.atan(dy / Math.abs(dx)) * deg] },
        ]) {
          const { point } = found(pulled({ ...shared, aside }))
          expect(pointDistanceMm(point, to)).toBeLessThan(1e-4)
        }
      }),
    )
  })

  it('moves with what was read by about what was read wrongly: 1° of 1000 mm is 17.5 mm', () => {
    const { sensitivity } = found(pulled({ lengthMm: [1000], aside: { kind: 'plan', readingsDeg: [0] } }))
    // Both angles off by 1°: an arc of 17.45 mm up and one across, 24.7 mm together.
    expect(sensitivity.mmPerDeg).toBeCloseTo(((1000 * Math.PI) / 180) * Math.SQRT2, 0)
    expect(sensitivity.mmPerMm).toBeCloseTo(1, 9)
    expect(isBadlyPlaced(sensitivity)).toBe(true)
    // 300 mm long one angle moves it 5.2 mm.
    const short = found(pulled({ lengthMm: [300] })).sensitivity
    expect(short.mmPerDeg).toBeCloseTo((300 * Math.PI) / 180, 1)
    expect(isBadlyPlaced(short)).toBe(false)
  })

  it('nearly square to the car tells little of how far along it ends', () => {
    // 500 of run, 499 aside: √(500² − 499²) = 31.6 along. Off by 1 mm each: √(501² − 498²) = 54.7 along.
    const { sensitivity } = found(pulled({ aside: { kind: 'y', readingsMm: [499] } }))
    expect(sensitivity.mmPerMm).toBeGreaterThan(20)
    expect(isBadlyPlaced(sensitivity)).toBe(true)
  })
})
