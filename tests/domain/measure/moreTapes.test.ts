import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { pointDistanceMm, pointMm, type PointMm } from '../../../src/domain/geometry/point'
import { tapeSensitivity } from '../../../src/domain/measure/sensitivity'
import { pointInCar } from '../../support/arbitraries'
import {
  at,
  byTapes,
  exactTapes,
  expectNear,
  found,
  heightOffMm,
  refused,
  tapesFrom,
  triple,
  type Triple,
} from './support'

describe('more than three observations', () => {
  const corners: readonly Triple[] = [
    [0, 0, 0],
    [1500, 0, 0],
    [0, 700, 0],
    [1500, 700, 0],
  ]

  it('in no plane tell the place by themselves, whatever side was chosen', () => {
    const shift = fc.record({
      xMm: fc.double({ min: -300, max: 300, noNaN: true }),
      yMm: fc.double({ min: -300, max: 300, noNaN: true }),
      zMm: fc.double({ min: -300, max: 300, noNaN: true }),
    })
    const near = (...[x, y, z]: Triple): fc.Arbitrary<PointMm> =>
      shift.map(({ xMm, yMm, zMm }) => pointMm(x + xMm, y + yMm, z + zMm))
    const known = fc.tuple(near(-1500, -700, 0), near(1500, -700, 0), near(0, 900, 0), near(0, 0, 1500))
    const anySide = fc.constantFrom(null, 'normal' as const, 'opposite' as const)
    fc.assert(
      fc.property(
        known,
        near(1200, 300, 0),
        near(-800, -400, 1200),
        pointInCar,
        anySide,
        (points, ...rest) => {
          const [fifth, sixth, target, side] = rest
          const [a, b, c] = points
          fc.pre(heightOffMm(target, [a, b, c]) > 100)
          for (const from of [points, [...points, fifth], [sixth, ...points, fifth]]) {
            const { point, residualMm, mirror } = found(byTapes(exactTapes(from, target), side))
            expect(pointDistanceMm(point, target)).toBeLessThan(1e-5)
            expect(residualMm).toBeLessThan(1e-5)
            expect(mirror).toBeNull()
          }
        },
      ),
    )
  })

  it('in one plane leave both sides open', () => {
    const target = at([1200, 300, 400])
    const tapes = exactTapes(corners.map(at), target)
    expect(refused(byTapes(tapes)).kind).toBe('side-not-chosen')
    const { point, mirror, residualMm } = found(byTapes(tapes, 'normal'))
    expectNear(point, target, 1e-6)
    expectNear(mirror ?? point, at([1200, 300, -400]), 1e-6)
    expect(residualMm).toBeLessThan(1e-9)
  })

  it('in one plane with a coordinate out of it tell the side', () => {
    const tapes = exactTapes(corners.map(at), at([1200, 300, 400]))
    const { point, mirror } = found(byTapes(tapes, null, { axis: 'z', readingsMm: [400] }))
    expectNear(point, at([1200, 300, 400]), 1e-6)
    expect(mirror).toBeNull()
  })

  it('nearly in one plane ask for the side when the readings could be off by as much as the sides differ', () => {
    const nearly = [...corners.slice(0, 3).map(at), at([1500, 700, 5])]
    expect(refused(byTapes(exactTapes(nearly, at([1200, 300, 400])))).kind).toBe('side-not-chosen')
  })

  it('from points in one line work with a coordinate square to it', () => {
    const line = [at([0, 0, 0]), at([700, 0, 0]), at([1400, 0, 0])]
    const tapes = exactTapes(line, at([900, 240, 320]))
    const { point, mirror, residualMm } = found(byTapes(tapes, 'normal', { axis: 'z', readingsMm: [320] }))
    expectNear(point, at([900, 240, 320]), 1e-6)
    expectNear(mirror ?? point, at([900, -240, 320]), 1e-6)
    expect(residualMm).toBeLessThan(1e-9)
  })

  it('share out what they disagree by: four tapes from the corners of a square, one pair 3 mm longer', () => {
    // By hand: straight over the middle the tapes from two opposite corners read 3 mm more than those from the others. Sideways
    // moves help none of the four at once; lifting the point splits the difference, 1.5 mm each way.
    const tapes = tapesFrom([
      [[500, 500, 0], 1003],
      [[-500, -500, 0], 1003],
      [[500, -500, 0], 1000],
      [[-500, 500, 0], 1000],
    ])
    const { point, residualMm } = found(byTapes(tapes, 'normal'))
    expect(residualMm).toBeCloseTo(1.5, 6)
    const [x, y, z] = triple(point)
    expect(x).toBeCloseTo(0, 6)
    expect(y).toBeCloseTo(0, 6)
    // 1001.5 along the slope from a corner 500·√2 away.
    expect(z).toBeCloseTo(Math.sqrt(1001.5 ** 2 - 500_000), 6)
  })

  it('lie where no place nearby and no place on a lattice through the car fits better', () => {
    const noise = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 5, maxLength: 5 })
    const known = [...corners.map(at), at([1200, 100, 1100])]
    fc.assert(
      fc.property(pointInCar, noise, (target, offMm) => {
        const tapes = exactTapes(known, target).map((tape, index) => ({
          ...tape,
          lengthsMm: tape.lengthsMm.map((mm) => mm + (offMm[index] ?? 0)),
        }))
        fc.pre(tapes.every(({ lengthsMm: [mm = 0] }) => mm > 20))
        const misfit = (p: PointMm): number =>
          tapes.reduce(
            (sum, { from, lengthsMm: [mm = 0] }) => sum + (pointDistanceMm(from.point, p) - mm) ** 2,
            0,
          )
        const { point } = found(byTapes(tapes, 'normal'))
        const least = misfit(point)
        for (const [dx, dy, dz] of [-0.01, 0, 0.01].flatMap((dx) =>
          [-0.01, 0, 0.01].flatMap((dy) => [-0.01, 0, 0.01].map((dz) => [dx, dy, dz] as const)),
        ))
          expect(misfit(pointMm(point.xMm + dx, point.yMm + dy, point.zMm + dz))).toBeGreaterThanOrEqual(
            least - 1e-9,
          )
        for (let x = -4000; x <= 4000; x += 500)
          for (let y = -2000; y <= 2000; y += 500)
            for (let z = -1000; z <= 3000; z += 500)
              expect(misfit(pointMm(x, y, z)) >= least - 1e-9).toBe(true)
      }),
      { numRuns: 60 },
    )
  })

  it('move the point less than the worst of three, the more they are', () => {
    const target = at([700, 350, 600])
    const few = found(byTapes(exactTapes(corners.slice(0, 3).map(at), target), 'normal'))
    const many = found(byTapes(exactTapes(corners.map(at), target), 'normal'))
    expect(many.sensitivity.mmPerMm).toBeLessThanOrEqual(few.sensitivity.mmPerMm + 1e-6)
  })

  it('rise out of the plane of the known points where that fits better, though no three of the tapes meet', () => {
    // Found by trying random tapes; what is checked is only that no place in the plane is as good.
    const tapes = tapesFrom([
      [[275, 584, 0], 440],
      [[1060, 606, 0], 380],
      [[444, 622, 0], 267],
      [[1014, 599, 0], 331],
    ])
    for (const left of [0, 1, 2, 3]) {
      const three = tapes.filter((_, index) => index !== left)
      expect(refused(byTapes(three, 'normal')).kind).toMatch(/^third-tape-misses$|^tape-too-long$/)
    }
    const { point } = found(byTapes(tapes, 'normal'))
    expect(point.zMm).toBeGreaterThan(5)
    const misfit = (p: PointMm): number =>
      tapes.reduce(
        (sum, { from, lengthsMm: [mm = 0] }) => sum + (pointDistanceMm(from.point, p) - mm) ** 2,
        0,
      )
    let least = Number.POSITIVE_INFINITY
    for (let x = -60; x <= 60; x += 0.5)
      for (let y = -60; y <= 60; y += 0.5)
        least = Math.min(least, misfit(pointMm(point.xMm + x, point.yMm + y, 0)))
    expect(misfit(point)).toBeLessThan(least)
  })

  it('end in the plane of the known points where that fits best', () => {
    // As above, from random tapes. A search that only nears the plane stops millimetres above it.
    const tapes = tapesFrom([
      [[1465, 724, 0], 1170],
      [[1185, 271, 0], 725],
      [[561, 634, 0], 542],
      [[628, 557, 0], 482],
    ])
    const { point, mirror } = found(byTapes(tapes))
    expect(Math.abs(point.zMm)).toBeLessThan(1e-3)
    expect(mirror).toBeNull()
  })

  it('say how far a point exactly in the plane may rise', () => {
    const square = [at([0, 0, 0]), at([1000, 0, 0]), at([0, 1000, 0]), at([1000, 1000, 0])]
    const middle = at([500, 500, 0])
    const tapes = square.map((point, index) => ({
      index,
      name: '',
      point,
      lengthMm: pointDistanceMm(point, middle),
    }))
    const { mmPerMm } = tapeSensitivity({ tapes, coordinate: null }, middle, 'normal')
    expect(mmPerMm).toBeGreaterThan(37)
  })

  it('say how far a point in the plane of the known points may rise or fall', () => {
    // In the middle of a square of 1000: with all tapes 1 mm longer it is √(708.1² − 707.1²) = 37.6 mm above or below.
    const square = [at([0, 0, 0]), at([1000, 0, 0]), at([0, 1000, 0]), at([1000, 1000, 0])]
    const { point, mirror, sensitivity } = found(byTapes(exactTapes(square, at([500, 500, 0]))))
    expectNear(point, at([500, 500, 0]), 1e-3)
    expect(mirror).toBeNull()
    expect(sensitivity.mmPerMm).toBeGreaterThan(37)
    expect(sensitivity.mmPerMm).toBeLessThan(39)
  })
})
