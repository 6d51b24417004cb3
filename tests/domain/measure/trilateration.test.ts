import { Circle, Point, Vector } from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { pointDistanceMm, pointMm, type PointMm } from '../../../src/domain/geometry/point'
import { pointInCar } from '../../support/arbitraries'
import { at, byTapes, exactTapes, found, refused, tapesFrom, triple, type Triple } from './support'

const expectNear = (point: PointMm, expected: PointMm, withinMm: number): void =>
  expect(pointDistanceMm(point, expected)).toBeLessThanOrEqual(withinMm)

/** Three points that are a good way off one line, so that rounding stays small. */
const triangle = fc
  .tuple(pointInCar, pointInCar, pointInCar)
  .filter((points) => smallestHeightMm(points) > 100)

/** Smallest height of a triangle, mm: twice its area (Heron) over its longest side. */
const smallestHeightMm = ([a, b, c]: readonly [PointMm, PointMm, PointMm]): number => {
  const sides = [pointDistanceMm(a, b), pointDistanceMm(b, c), pointDistanceMm(c, a)] as const
  const half = (sides[0] + sides[1] + sides[2]) / 2
  const square = half * (half - sides[0]) * (half - sides[1]) * (half - sides[2])
  return (2 * Math.sqrt(Math.max(0, square))) / Math.max(...sides)
}

/** How far a point is off the plane of three others, mm: their tetrahedron's height by its determinant. */
const heightOffMm = (p: PointMm, [a, b, c]: readonly [PointMm, PointMm, PointMm]): number => {
  const u = [b.xMm - a.xMm, b.yMm - a.yMm, b.zMm - a.zMm] as const
  const v = [c.xMm - a.xMm, c.yMm - a.yMm, c.zMm - a.zMm] as const
  const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const
  const volume = (p.xMm - a.xMm) * n[0] + (p.yMm - a.yMm) * n[1] + (p.zMm - a.zMm) * n[2]
  return Math.abs(volume) / Math.hypot(...n)
}

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

  it('name the tape that disagrees most', () => {
    const tapes = exactTapes([...corners.map(at), at([800, 300, 1200])], at([700, 350, 600]))
    const wrong = tapes.map((tape, index) =>
      index === 4 ? { ...tape, lengthsMm: tape.lengthsMm.map((mm) => mm + 12) } : tape,
    )
    const { residualOf, residualMm } = found(byTapes(wrong, 'normal'))
    expect(residualOf).toEqual({ kind: 'tape', index: 4, name: 'E' })
    expect(residualMm).toBeGreaterThan(3)
  })
})
