import fc from 'fast-check'
import polygonClipping, { type MultiPolygon } from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import { halfPlaneLeftOf, halfPlaneRightOf } from '../../../src/domain/geometry/halfPlane'
import { planePoint } from '../../../src/domain/geometry/plane'
import type { ConvexPolygon, Region } from '../../../src/domain/geometry/polygon'
import {
  boxRegion,
  regionArea,
  regionClipped,
  regionContains,
  regionDifference,
  regionDistanceMm,
  regionIntersection,
  regionUnion,
} from '../../../src/domain/geometry/region'

/** Whole-mm corners make touching, collinear and identical edges common. */
const gridMm = fc.integer({ min: -40, max: 40 })
const realMm = fc.double({ min: -400, max: 400, noNaN: true })
/** Thousandths of a mm: far finer than any drawing, and coarse enough for the general library, which fails on corners 1e-8 mm apart. */
const fineMm = fc.integer({ min: -400_000, max: 400_000 }).map((micrometres) => micrometres / 1000)

/** Convex hull by Andrew's monotone chain: turns any points into a valid input. */
const hull = (points: readonly (readonly [number, number])[]): ConvexPolygon => {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (order: readonly (readonly [number, number])[]): (readonly [number, number])[] => {
    const chain: (readonly [number, number])[] = []
    for (const p of order) {
      for (;;) {
        const a = chain.at(-2)
        const b = chain.at(-1)
        if (a === undefined || b === undefined) break
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 1e-6) break
        chain.pop()
      }
      chain.push(p)
    }
    return chain.slice(0, -1)
  }
  const corners = [...half(sorted), ...half(sorted.toReversed())]
  return corners.length < 3 ? [] : corners.map(([uMm, vMm]) => planePoint(uMm, vMm))
}

const convexOf = (coordinate: fc.Arbitrary<number>): fc.Arbitrary<ConvexPolygon> =>
  fc
    .array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 9 })
    .map(hull)
    .filter((polygon) => polygon.length >= 3)

/** Up to three convex pieces that may overlap. */
const piecesOf = (coordinate: fc.Arbitrary<number>): fc.Arbitrary<readonly ConvexPolygon[]> =>
  fc.array(convexOf(coordinate), { minLength: 0, maxLength: 3 })

/** The same pieces as one region whose polygons do not overlap. */
const regionFrom = (pieces: readonly ConvexPolygon[]): Region =>
  pieces.reduce<Region>((region, piece) => regionUnion(region, [piece]), [])

const regionOf = (coordinate: fc.Arbitrary<number>): fc.Arbitrary<Region> =>
  piecesOf(coordinate).map(regionFrom)

/** The same pieces for polygon-clipping, joined by that library and not by ours. */
const multiFrom = (pieces: readonly ConvexPolygon[]): MultiPolygon =>
  polygonClipping.union(
    [],
    ...pieces.map((polygon) => [[polygon.map((p): [number, number] => [p.uMm, p.vMm])]] as MultiPolygon),
  )

const ringArea = (ring: readonly (readonly [number, number])[]): number =>
  ring.reduce((sum, [u, v], index) => {
    const [un, vn] = ring[(index + 1) % ring.length] ?? [u, v]
    return sum + (u * vn - un * v) / 2
  }, 0)

const multiArea = (multi: MultiPolygon): number =>
  multi.reduce(
    (sum, rings) =>
      sum +
      rings.reduce((inner, ring, index) => inner + (index === 0 ? 1 : -1) * Math.abs(ringArea(ring)), 0),
    0,
  )

const square = (uMm: number, vMm: number, sizeMm: number): Region =>
  boxRegion(planePoint(uMm, vMm), planePoint(uMm + sizeMm, vMm + sizeMm))

describe('boxRegion', () => {
  it('has the area of its sides, and is empty without a width or a height', () => {
    expect(regionArea(boxRegion(planePoint(-100, 20), planePoint(300, 70)))).toBe(400 * 50)
    expect(boxRegion(planePoint(0, 0), planePoint(0, 10))).toEqual([])
    expect(boxRegion(planePoint(0, 0), planePoint(10, -1))).toEqual([])
  })
})

describe('regionClipped', () => {
  it('keeps a wedge between two lines through one point', () => {
    // Between 0° and 45° of a 100 square from its corner: half the square.
    const wedge = regionClipped(square(0, 0, 100), [
      halfPlaneLeftOf(planePoint(0, 0), 0),
      halfPlaneRightOf(planePoint(0, 0), 45),
    ])
    expect(regionArea(wedge)).toBeCloseTo(5000, 8)
  })

  it('is empty when only an edge, less than a millionth of a mm² or less than a nanometre is left', () => {
    const above = (vMm: number): Region =>
      regionClipped(square(0, 0, 10), [halfPlaneLeftOf(planePoint(0, vMm), 0)])
    expect(above(10)).toEqual([])
    expect(above(10 - 0.5e-6)).toEqual([])
    expect(above(10 - 1.5e-6)).toHaveLength(1)
    expect(square(0, 0, 0.000_9)).toEqual([])
    expect(square(0, 0, 0.001_1)).toHaveLength(1)
    expect(regionClipped([], [halfPlaneLeftOf(planePoint(0, 0), 0)])).toEqual([])
  })

  it('is left as it is by no half-planes', () => {
    expect(regionClipped(square(0, 0, 10), [])).toEqual(square(0, 0, 10))
  })
})

describe('regionIntersection, regionDifference and regionUnion', () => {
  it.each([
    { name: 'overlapping', other: square(5, 5, 10), both: 25 },
    { name: 'identical', other: square(0, 0, 10), both: 100 },
    { name: 'touching along an edge', other: square(10, 0, 10), both: 0 },
    { name: 'touching at a corner', other: square(10, 10, 10), both: 0 },
    { name: 'apart', other: square(20, 20, 10), both: 0 },
    { name: 'nested', other: square(2, 2, 4), both: 16 },
    { name: 'nested with collinear edges', other: square(0, 0, 4), both: 16 },
    { name: 'empty', other: [], both: 0 },
  ])('of a 10 mm square and one that is $name', ({ other, both }) => {
    const here = square(0, 0, 10)
    const otherArea = regionArea(other)
    expect(regionArea(regionIntersection(here, other))).toBeCloseTo(both, 9)
    expect(regionArea(regionIntersection(other, here))).toBeCloseTo(both, 9)
    expect(regionArea(regionDifference(here, other))).toBeCloseTo(100 - both, 9)
    expect(regionArea(regionDifference(other, here))).toBeCloseTo(otherArea - both, 9)
    expect(regionArea(regionUnion(here, other))).toBeCloseTo(100 + otherArea - both, 9)
  })

  it('takes a polygon without an area for nothing, not for everything', () => {
    const here = square(0, 0, 10)
    expect(regionIntersection(here, [[]])).toEqual([])
    expect(regionIntersection(here, [[planePoint(1, 1), planePoint(2, 2)]])).toEqual([])
    expect(regionArea(regionDifference(here, [[planePoint(1, 1), planePoint(2, 2)]]))).toBe(100)
  })

  it('leaves a region in its own pieces when nothing is taken away', () => {
    expect(regionDifference(square(0, 0, 10), square(10, 0, 10))).toEqual(square(0, 0, 10))
  })

  it.each([
    { name: 'whole mm', coordinate: gridMm },
    { name: 'thousandth-mm', coordinate: fineMm },
  ])('has the areas of polygon-clipping on $name coordinates', ({ coordinate }) => {
    fc.assert(
      fc.property(piecesOf(coordinate), piecesOf(coordinate), (aPieces, bPieces) => {
        const [a, b] = [regionFrom(aPieces), regionFrom(bPieces)]
        const [ma, mb] = [multiFrom(aPieces), multiFrom(bPieces)]
        const expectArea = (region: Region, multi: MultiPolygon): void => {
          expect(Math.abs(regionArea(region) - multiArea(multi))).toBeLessThan(0.01)
        }
        expectArea(regionIntersection(a, b), polygonClipping.intersection(ma, mb))
        expectArea(regionDifference(a, b), polygonClipping.difference(ma, mb))
        expectArea(regionUnion(a, b), polygonClipping.union(ma, mb))
      }),
    )
  })

  it('never makes pieces that overlap each other or turn clockwise', () => {
    fc.assert(
      fc.property(regionOf(gridMm), regionOf(gridMm), (a, b) => {
        for (const region of [regionUnion(a, b), regionDifference(a, b), regionIntersection(a, b)]) {
          for (const [index, piece] of region.entries()) {
            expect(ringArea(piece.map((p) => [p.uMm, p.vMm] as const))).toBeGreaterThan(0)
            for (const later of region.slice(index + 1)) {
              expect(regionArea(regionIntersection([piece], [later]))).toBeLessThan(1e-4)
            }
          }
        }
      }),
    )
  })
})

describe('regionDistanceMm and regionContains', () => {
  const two = regionUnion(square(0, 0, 10), square(30, 0, 10))

  it.each([
    { uMm: 5, vMm: 5, distanceMm: 0 },
    { uMm: 10, vMm: 5, distanceMm: 0 },
    { uMm: 13, vMm: 14, distanceMm: 5 }, // 3-4-5 from the corner (10, 10)
    { uMm: 28, vMm: 5, distanceMm: 2 },
    { uMm: -7, vMm: 5, distanceMm: 7 },
  ])('is $distanceMm mm from ($uMm, $vMm)', ({ uMm, vMm, distanceMm }) => {
    expect(regionDistanceMm(two, planePoint(uMm, vMm))).toBeCloseTo(distanceMm, 12)
    expect(regionContains(two, planePoint(uMm, vMm))).toBe(distanceMm === 0)
    expect(regionContains(two, planePoint(uMm, vMm), distanceMm + 1e-9)).toBe(true)
    expect(regionContains(two, planePoint(uMm, vMm), distanceMm * 0.999)).toBe(distanceMm === 0)
  })

  it('is infinitely far from nothing', () => {
    expect(regionDistanceMm([], planePoint(0, 0))).toBe(Infinity)
    expect(regionContains([], planePoint(0, 0), 1e6)).toBe(false)
  })

  it('is never more than the distance to any corner, and 0 at the middle of every piece', () => {
    fc.assert(
      fc.property(regionOf(realMm), realMm, realMm, (region, uMm, vMm) => {
        const point = planePoint(uMm, vMm)
        const distanceMm = regionDistanceMm(region, point)
        for (const polygon of region) {
          const middle = planePoint(
            polygon.reduce((sum, p) => sum + p.uMm, 0) / polygon.length,
            polygon.reduce((sum, p) => sum + p.vMm, 0) / polygon.length,
          )
          expect(regionDistanceMm(region, middle)).toBeLessThan(1e-6)
          for (const corner of polygon) {
            expect(distanceMm).toBeLessThanOrEqual(Math.hypot(corner.uMm - uMm, corner.vMm - vMm) + 1e-9)
          }
        }
      }),
    )
  })
})
