import fc from 'fast-check'
import { Matrix, solve } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import {
  inverted,
  joined,
  mappedPair,
  type Pair,
  squareToQuad,
  stretchAt,
} from '../../../../src/domain/measure/photo/homography'

const SQUARE: readonly Pair[] = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
]

type Quad = readonly [Pair, Pair, Pair, Pair]

/** A square of side 1000 with each corner up to a fifth of it astray: always convex. */
const quad: fc.Arbitrary<Quad> = fc
  .array(fc.double({ min: -200, max: 200, noNaN: true }), { minLength: 8, maxLength: 8 })
  .map((by) => {
    const corner = (index: number): Pair => [
      500 + 1000 * (SQUARE[index]?.[0] ?? 0) + (by[2 * index] ?? 0),
      300 + 1000 * (SQUARE[index]?.[1] ?? 0) + (by[2 * index + 1] ?? 0),
    ]
    return [corner(0), corner(1), corner(2), corner(3)] as const
  })

const inside = fc.tuple(
  fc.double({ min: 0, max: 1, noNaN: true }),
  fc.double({ min: 0, max: 1, noNaN: true }),
)

/**
 * Outside: the eight equations of four point pairs with the last number set to 1, solved by a general library (ml-matrix). Source of the equations:
 * Hartley & Zisserman, Multiple View Geometry, 2nd ed., section 4.1.2, inhomogeneous solution (from memory).
 */
const solvedBy = (from: readonly Pair[], to: readonly Pair[]): ((point: Pair) => Pair) => {
  const rows: number[][] = []
  const right: number[][] = []
  from.forEach(([x, y], index) => {
    const [u, v] = to[index] ?? [NaN, NaN]
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y])
    right.push([u], [v])
  })
  const h = solve(new Matrix(rows), new Matrix(right)).to1DArray()
  const at = (index: number): number => h[index] ?? NaN
  return ([x, y]) => {
    const w = at(6) * x + at(7) * y + 1
    return [(at(0) * x + at(1) * y + at(2)) / w, (at(3) * x + at(4) * y + at(5)) / w]
  }
}

const miss = (actual: Pair | null, expected: Pair): number =>
  Math.hypot((actual?.[0] ?? NaN) - expected[0], (actual?.[1] ?? NaN) - expected[1])

describe('squareToQuad', () => {
  it('agrees with a general solver of the eight equations, inside and at the corners', () => {
    fc.assert(
      fc.property(quad, inside, (corners, point) => {
        const map = squareToQuad(corners)
        if (map === null) throw new Error('no map')
        const reference = solvedBy(SQUARE, corners)
        for (const at of [...SQUARE, point])
          expect(miss(mappedPair(map, at), reference(at))).toBeLessThan(1e-5)
        corners.forEach((corner, index) =>
          expect(miss(mappedPair(map, SQUARE[index] ?? [NaN, NaN]), corner)).toBeLessThan(1e-7),
        )
      }),
    )
  })

  it('is affine for a parallelogram: its middle stays the middle', () => {
    const map = squareToQuad([
      [10, 10],
      [110, 30],
      [130, 90],
      [30, 70],
    ])
    expect(map?.slice(6).map(Math.abs)).toEqual([0, 0, 1])
    expect(miss(map === null ? null : mappedPair(map, [0.5, 0.5]), [70, 50])).toBeLessThan(1e-9)
  })

  it('has none when the last three corners lie in line', () => {
    expect(
      squareToQuad([
        [0, 0],
        [10, 0],
        [20, 10],
        [30, 20],
      ]),
    ).toBeNull()
  })
})

describe('inverted and joined', () => {
  it('lead back to where they came from', () => {
    fc.assert(
      fc.property(quad, inside, (corners, point) => {
        const map = squareToQuad(corners)
        const back = map === null ? null : inverted(map)
        if (map === null || back === null) throw new Error('no map')
        expect(miss(mappedPair(joined(back, map), point), point)).toBeLessThan(1e-8)
        expect(miss(mappedPair(back, mappedPair(map, point) ?? [NaN, NaN]), point)).toBeLessThan(1e-8)
      }),
    )
  })

  it('have no way back from a plane laid on a line', () => {
    expect(inverted([1, 1, 0, 1, 1, 0, 0, 0, 1])).toBeNull()
  })
})

describe('stretchAt', () => {
  it.each([
    { what: 'a scale of 2', map: [2, 0, 5, 0, 2, 7, 0, 0, 1], expected: 2 },
    { what: 'a turn', map: [0, -1, 0, 1, 0, 0, 0, 0, 1], expected: 1 },
    { what: 'three along one way, a half along the other', map: [3, 0, 0, 0, 0.5, 0, 0, 0, 1], expected: 3 },
    // Shear by 1: singular values are the golden ratio and its inverse (from memory).
    { what: 'a shear by 1', map: [1, 1, 0, 0, 1, 0, 0, 0, 1], expected: (1 + Math.sqrt(5)) / 2 },
  ] as const)('is $expected for $what', ({ map, expected }) => {
    expect(stretchAt(map, [3, 4])).toBeCloseTo(expected, 10)
  })

  it('is the longest way that a small step goes', () => {
    fc.assert(
      fc.property(quad, inside, (corners, [x, y]) => {
        const map = squareToQuad(corners)
        if (map === null) throw new Error('no map')
        const stepsDeg = Array.from({ length: 180 }, (_, deg) => deg)
        const step = 1e-5
        const longest = Math.max(
          ...stepsDeg.map((deg) => {
            const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)]
            const before = mappedPair(map, [x - step * c, y - step * s]) ?? [NaN, NaN]
            const after = mappedPair(map, [x + step * c, y + step * s]) ?? [NaN, NaN]
            return Math.hypot(after[0] - before[0], after[1] - before[1]) / (2 * step)
          }),
        )
        const stretch = stretchAt(map, [x, y]) ?? NaN
        // Half a degree beside the worst way loses less than 0.01 %.
        expect(longest / stretch).toBeGreaterThan(0.9998)
        expect(longest / stretch).toBeLessThan(1.0001)
      }),
    )
  })
})
