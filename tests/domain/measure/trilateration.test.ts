import { Circle, Point, Vector } from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { pointDistanceMm, pointMm, type PointMm } from '../../../src/domain/geometry/point'
import { pointInCar } from '../../support/arbitraries'
import {
  at,
  byTapes,
  exactTapes,
  expectNear,
  found,
  heightOffMm,
  refused,
  smallestHeightMm,
  tapesFrom,
  type Triple,
} from './support'

/** Three points that are a good way off one line, so that rounding stays small. */
const triangle = fc
  .tuple(pointInCar, pointInCar, pointInCar)
  .filter((points) => smallestHeightMm(points) > 100)

describe('three tapes', () => {
  // Right-angled triangles in whole numbers: 5-12-13 (× 100) and 7-24-25 (× 50) share the upright of 1200.
  const upright = tapesFrom([
    [[0, 0, 0], 1200],
    [[500, 0, 0], 1300],
    [[0, 350, 0], 1250],
  ])

  it('end in the corner of two right-angled triangles, above or below the level plane of the points', () => {
    const above = found(byTapes(upright, 'normal'))
    expectNear(above.point, at([0, 0, 1200]), 1e-9)
    expectNear(above.mirror ?? at([0, 0, 0]), at([0, 0, -1200]), 1e-9)
    expectNear(found(byTapes(upright, 'opposite')).point, at([0, 0, -1200]), 1e-9)
    expect(above.residualMm).toBeNull()
  })

  it('say what the side has to be chosen between, whatever the order of the tapes', () => {
    for (const tapes of [upright, upright.toReversed()]) {
      const problem = refused(byTapes(tapes))
      if (problem.kind !== 'side-not-chosen') throw new Error(problem.kind)
      expect(problem.pair.normalFaces).toBe('z')
      expectNear(problem.pair.normal, at([0, 0, 1200]), 1e-9)
      expectNear(problem.pair.opposite, at([0, 0, -1200]), 1e-9)
      expect(problem.pair.through.map(({ name }) => name).toSorted()).toEqual(['A', 'B', 'C'])
    }
  })

  it('tell the side by the steepest part of the plane: up before across, across before fore and aft', () => {
    const faces = (known: readonly Triple[], target: Triple): string => {
      const problem = refused(byTapes(exactTapes(known.map(at), at(target))))
      if (problem.kind !== 'side-not-chosen') throw new Error(problem.kind)
      const { normal, opposite, normalFaces } = problem.pair
      const along = {
        x: normal.xMm - opposite.xMm,
        y: normal.yMm - opposite.yMm,
        z: normal.zMm - opposite.zMm,
      }
      expect(along[normalFaces]).toBeGreaterThan(0)
      return normalFaces
    }
    // x + y + z = 1000 and x = z are as steep one way as the other; y = 0 is upright; x = 500 stands across the car.
    expect(
      faces(
        [
          [1000, 0, 0],
          [0, 1000, 0],
          [0, 0, 1000],
        ],
        [0, 0, 0],
      ),
    ).toBe('z')
    expect(
      faces(
        [
          [0, 0, 0],
          [500, 0, 500],
          [0, 700, 0],
        ],
        [600, 100, 100],
      ),
    ).toBe('z')
    expect(
      faces(
        [
          [0, 0, 0],
          [900, 900, 0],
          [0, 0, 500],
        ],
        [600, 100, 100],
      ),
    ).toBe('y')
    expect(
      faces(
        [
          [0, 0, 0],
          [900, 0, 0],
          [0, 0, 500],
        ],
        [600, 100, 100],
      ),
    ).toBe('y')
    expect(
      faces(
        [
          [500, 0, 0],
          [500, 900, 0],
          [500, 0, 500],
        ],
        [600, 100, 100],
      ),
    ).toBe('x')
  })

  it('move the point as much in whatever order they were pulled', () => {
    for (const side of ['normal', 'opposite'] as const) {
      const [one, other] = [upright, upright.toReversed()].map((tapes) => found(byTapes(tapes, side)))
      expect(one?.sensitivity.mmPerMm).toBeLessThan(20)
      expect(other?.sensitivity.mmPerMm).toBeCloseTo(one?.sensitivity.mmPerMm ?? 0, 9)
    }
  })

  it.each([
    // The diagonals of whole-number boxes: 2-3-6-7, 1-4-8-9 and 4-4-7-9 (× 100).
    { target: [200, 300, 600], lengthMm: 700 },
    { target: [100, 800, 400], lengthMm: 900 },
    { target: [400, 700, 400], lengthMm: 900 },
  ] as const)('reach the corner $target of a box whose diagonal is $lengthMm mm', ({ target, lengthMm }) => {
    const [x, y, z] = target
    // From the datum the diagonal, from the corners on the floor's axes the rest of it, by Pythagoras.
    const tapes = tapesFrom([
      [[0, 0, 0], lengthMm],
      [[x, 0, 0], Math.sqrt(y * y + z * z)],
      [[0, y, 0], Math.sqrt(x * x + z * z)],
    ])
    const { point } = found(byTapes(tapes, 'normal'))
    expect(pointDistanceMm(point, at(target))).toBeLessThan(1e-9)
  })

  it('move the point by √3 mm for a millimetre when they are square to each other', () => {
    const square = tapesFrom([
      [[1000, 0, 0], 1000],
      [[0, 1000, 0], 1000],
      [[0, 0, 1000], 1000],
    ])
    const { point, mirror, sensitivity } = found(byTapes(square, 'opposite'))
    expectNear(point, at([0, 0, 0]), 1e-9)
    // The origin mirrored in the plane x + y + z = 1000.
    expectNear(mirror ?? point, at([2000 / 3, 2000 / 3, 2000 / 3]), 1e-9)
    expect(sensitivity.mmPerMm).toBeGreaterThan(Math.sqrt(3))
    expect(sensitivity.mmPerMm).toBeLessThan(Math.sqrt(3) + 0.01)
    expect(sensitivity.mmPerDeg).toBeNull()
  })

  it('that form a flat pyramid are said to be bad: 30 mm over points 1000 mm away, 1 mm moves it by far more', () => {
    const flat = exactTapes([at([1000, 0, 0]), at([-500, 866, 0]), at([-500, -866, 0])], at([0, 0, 30]))
    // All tapes 1 mm longer: h² grows by 2·1000.45 + 1 mm², so that h goes from 30 to 53.9 mm; shorter it is gone, 30 mm below.
    expect(found(byTapes(flat, 'normal')).sensitivity.mmPerMm).toBeGreaterThan(29.9)
  })

  it('give back any point that they were measured to, and its mirror, for any triangle of known points', () => {
    fc.assert(
      fc.property(triangle, pointInCar, (known, target) => {
        fc.pre(heightOffMm(target, known) > 20)
        const tapes = exactTapes(known, target)
        const places = [found(byTapes(tapes, 'normal')), found(byTapes(tapes, 'opposite'))]
        // Rounding of 1e-13 in squares of some metres, over a height of 20 mm and a triangle 100 mm high.
        const off = places.map(({ point }) => pointDistanceMm(point, target))
        expect(Math.min(...off)).toBeLessThan(1e-5)
        expect(Math.max(...off)).toBeCloseTo(2 * heightOffMm(target, known), 4)
        for (const { mirror } of places)
          for (const { from, lengthsMm } of tapes)
            expect(pointDistanceMm(from.point, mirror ?? target)).toBeCloseTo(lengthsMm[0] ?? 0, 4)
      }),
    )
  })

  it('never hang on where the datum is or how the car is turned about the vertical', () => {
    const anywhere = fc.record({ shift: pointInCar, turn: fc.double({ min: -3, max: 3, noNaN: true }) })
    fc.assert(
      fc.property(triangle, pointInCar, anywhere, (known, target, { shift, turn }) => {
        fc.pre(heightOffMm(target, known) > 20)
        const moved = ({ xMm, yMm, zMm }: PointMm): PointMm =>
          pointMm(
            shift.xMm + xMm * Math.cos(turn) - yMm * Math.sin(turn),
            shift.yMm + xMm * Math.sin(turn) + yMm * Math.cos(turn),
            shift.zMm + zMm,
          )
        const pair = (points: readonly PointMm[], to: PointMm): readonly PointMm[] =>
          (['normal', 'opposite'] as const).map((side) => found(byTapes(exactTapes(points, to), side)).point)
        const here = pair(known, target).map(moved)
        for (const place of pair(known.map(moved), moved(target)))
          expect(Math.min(...here.map((each) => pointDistanceMm(each, place)))).toBeLessThan(2e-5)
      }),
    )
  })
})

describe('two tapes and a coordinate', () => {
  it('end where two circles in the plane of the coordinate cross: 3-4-5 triangles', () => {
    // In the plane z = 0 of both points: 300 forward of the middle of 800, 500 from each.
    const tapes = tapesFrom([
      [[0, -400, 0], 500],
      [[0, 400, 0], 500],
    ])
    const rearward = found(byTapes(tapes, 'normal', { axis: 'z', readingsMm: [0] }))
    expectNear(rearward.point, at([300, 0, 0]), 1e-9)
    expectNear(rearward.mirror ?? at([0, 0, 0]), at([-300, 0, 0]), 1e-9)
    expect(rearward.residualMm).toBeNull()
    const problem = refused(byTapes(tapes, null, { axis: 'z', readingsMm: [0] }))
    expect(problem.kind === 'side-not-chosen' && problem.pair.normalFaces).toBe('x')
  })

  it('move the point by what the tapes and the coordinate are off together', () => {
    const tapes = tapesFrom([
      [[0, -400, 0], 500],
      [[0, 400, 0], 500],
    ])
    const { sensitivity } = found(byTapes(tapes, 'normal', { axis: 'z', readingsMm: [0] }))
    // Both tapes 1 mm shorter: √(499² − 400²) = 298.33, 1.67 back; with the coordinate 1 mm off 1.95 together. One longer and one
    // shorter: (501² − 499²)/1600 = 1.25 aside.
    expect(sensitivity.mmPerMm).toBeCloseTo(Math.hypot(300 - Math.sqrt(499 ** 2 - 400 ** 2 - 1), 1), 2)
  })

  it('agree with a general geometry library on where the circles cross', () => {
    const axes = fc.constantFrom('x' as const, 'y' as const, 'z' as const)
    fc.assert(
      fc.property(pointInCar, pointInCar, pointInCar, axes, (one, other, target, axis) => {
        const part = { x: 'xMm', y: 'yMm', z: 'zMm' } as const
        const across = (['x', 'y', 'z'] as const).filter((each) => each !== axis)
        const plan = (p: PointMm): Point => new Point(p[part[across[0] ?? 'x']], p[part[across[1] ?? 'y']])
        const apart = new Vector(plan(one), plan(other))
        fc.pre(apart.length > 100)
        // Nearly touching circles: the library refuses them.
        fc.pre(Math.abs(apart.cross(new Vector(plan(one), plan(target)))) > 10 * apart.length)
        const circle = (centre: PointMm): Circle => {
          const deep = target[part[axis]] - centre[part[axis]]
          return new Circle(plan(centre), Math.sqrt(pointDistanceMm(centre, target) ** 2 - deep ** 2))
        }
        const crossings = circle(one).intersect(circle(other))
        expect(crossings).toHaveLength(2)
        const coordinate = { axis, readingsMm: [target[part[axis]]] }
        for (const side of ['normal', 'opposite'] as const) {
          const { point } = found(byTapes(exactTapes([one, other], target), side, coordinate))
          expect(point[part[axis]]).toBeCloseTo(target[part[axis]], 6)
          const off = crossings.map((crossing) => crossing.distanceTo(plan(point))[0])
          expect(Math.min(...off)).toBeLessThan(1e-4)
        }
      }),
    )
  })
})
