import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { pointDistanceMm, pointMm } from '../../../src/domain/geometry/point'
import { leastSquaresPoint, misfitMm2, slopes } from '../../../src/domain/geometry/sphereFit'

const anyPoint = fc
  .tuple(
    fc.noBias(fc.integer({ min: -500, max: 2_400 })),
    fc.noBias(fc.integer({ min: -800, max: 800 })),
    fc.noBias(fc.integer({ min: -100, max: 1_400 })),
  )
  .map(([x, y, z]) => pointMm(x, y, z))

/** Tapes that meet within what somebody may read wrong, from any points. */
const anyTapes = fc
  .record({
    known: fc.array(anyPoint, { minLength: 3, maxLength: 6 }),
    target: anyPoint,
    offMm: fc.array(fc.noBias(fc.integer({ min: -30, max: 30 })), { minLength: 6, maxLength: 6 }),
  })
  .map(({ known, target, offMm }) =>
    known.map((point, index) => ({
      point,
      lengthMm: Math.max(1, pointDistanceMm(point, target) + (offMm[index] ?? 0)),
    })),
  )

describe('leastSquaresPoint', () => {
  it('ends no worse than it starts, where no step to any side is better', () => {
    fc.assert(
      fc.property(anyTapes, anyPoint, (tapes, start) => {
        const observations = { tapes, coordinate: null }
        const end = leastSquaresPoint(observations, start)
        const misfit = misfitMm2(observations, end)
        expect(misfit).toBeLessThanOrEqual(misfitMm2(observations, start))
        for (const [dx, dy, dz] of [
          [0.5, 0, 0],
          [-0.5, 0, 0],
          [0, 0.5, 0],
          [0, -0.5, 0],
          [0, 0, 0.5],
          [0, 0, -0.5],
        ] as const)
          expect(
            misfitMm2(observations, pointMm(end.xMm + dx, end.yMm + dy, end.zMm + dz)),
          ).toBeGreaterThanOrEqual(misfit - 1e-6 * (1 + misfit))
      }),
    )
  })

  it('started in a known point itself finds its way out', () => {
    const known = [pointMm(0, 0, 0), pointMm(900, 0, 0), pointMm(0, 600, 0), pointMm(0, 0, 700)]
    const target = pointMm(500, 300, 400)
    const tapes = known.map((point) => ({ point, lengthMm: pointDistanceMm(point, target) }))
    const end = leastSquaresPoint({ tapes, coordinate: null }, pointMm(0, 0, 0))
    expect(pointDistanceMm(end, target)).toBeLessThan(1e-6)
  })
})

describe('slopes', () => {
  it('are how much each observation grows for a small step', () => {
    fc.assert(
      fc.property(anyPoint, anyPoint, (known, point) => {
        fc.pre(pointDistanceMm(known, point) > 10)
        const observations = {
          tapes: [{ point: known, lengthMm: 1 }],
          coordinate: { axis: 'y' as const, valueMm: 0 },
        }
        const [tape, coordinate] = slopes(observations, point)
        const step = 1e-3
        const grown = pointDistanceMm(known, pointMm(point.xMm, point.yMm + step, point.zMm))
        expect((grown - pointDistanceMm(known, point)) / step).toBeCloseTo(tape?.y ?? Number.NaN, 3)
        expect(coordinate).toEqual({ x: 0, y: 1, z: 0 })
      }),
    )
  })
})
