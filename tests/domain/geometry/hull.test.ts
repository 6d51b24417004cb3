import fc from 'fast-check'
import { point, Polygon } from '@flatten-js/core'
import { describe, expect, it } from 'vitest'
import { convexHull } from '../../../src/domain/geometry/hull'
import { type PlanePointMm, planePoint } from '../../../src/domain/geometry/plane'

/** In hundredths of a millimetre: the library that looks on compares with a tolerance of its own. */
const coordinate = fc.integer({ min: -100_000, max: 100_000 }).map((hundredths) => hundredths / 100)
const somePoint = fc.tuple(coordinate, coordinate).map(([u, v]) => planePoint(u, v))

/** Twice the area of the triangle, + when it turns left. */
const turn = (a: PlanePointMm, b: PlanePointMm, c: PlanePointMm): number =>
  (b.uMm - a.uMm) * (c.vMm - a.vMm) - (b.vMm - a.vMm) * (c.uMm - a.uMm)

describe('convexHull', () => {
  it('is the square of a square with points inside and on its edges', () => {
    const corners = [planePoint(0, 0), planePoint(4, 0), planePoint(4, 4), planePoint(0, 4)]
    const inside = [planePoint(2, 2), planePoint(1, 3), planePoint(2, 0), planePoint(4, 1)]
    expect(convexHull([...inside, ...corners])).toEqual(corners)
  })

  it('turns left at every corner and leaves no point outside, as a general geometry library sees it', () => {
    fc.assert(
      fc.property(fc.array(somePoint, { minLength: 3, maxLength: 40 }), (points) => {
        const hull = convexHull(points)
        fc.pre(hull.length >= 3)
        hull.forEach((corner, index) => {
          const next = hull[(index + 1) % hull.length] ?? corner
          expect(turn(corner, next, hull[(index + 2) % hull.length] ?? corner)).toBeGreaterThan(0)
        })
        const polygon = new Polygon(hull.map(({ uMm, vMm }) => point(uMm, vMm)))
        for (const each of points)
          expect(
            polygon.distanceTo(point(each.uMm, each.vMm))[0] < 1e-6 ||
              polygon.contains(point(each.uMm, each.vMm)),
          ).toBe(true)
        for (const corner of hull) expect(points).toContainEqual(corner)
      }),
    )
  })

  it('gives the ends of a line, one point of one point, and nothing of nothing', () => {
    const ends = [planePoint(0, 0), planePoint(3, 3)]
    expect(convexHull([planePoint(1, 1), ...ends])).toEqual(ends)
    expect(convexHull([planePoint(1, 1)])).toEqual([planePoint(1, 1)])
    expect(convexHull([])).toEqual([])
  })
})
