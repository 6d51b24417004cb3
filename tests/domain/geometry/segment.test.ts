import { Point, Segment } from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planeDistanceMm, planePoint, type PlanePointMm } from '../../../src/domain/geometry/plane'
import { directionLength, pointMm, type PointMm } from '../../../src/domain/geometry/point'
import {
  nearestOnPolyline,
  planeSegmentIntersection,
  pointToSegmentMm,
} from '../../../src/domain/geometry/segment'

const mm = fc.double({ min: -2000, max: 2000, noNaN: true })
const point = fc.record({ xMm: mm, yMm: mm, zMm: mm })
const gridMm = fc.integer({ min: -6, max: 6 })
const gridPoint = fc.record({ uMm: gridMm, vMm: gridMm })

/** Shortest of 2001 straight-line distances to points spread evenly from a to b. */
const sampledMm = (of: PointMm, a: PointMm, b: PointMm): number => {
  let shortest = Infinity
  for (let step = 0; step <= 2000; step += 1) {
    const t = step / 2000
    shortest = Math.min(
      shortest,
      Math.hypot(
        of.xMm - (a.xMm * (1 - t) + b.xMm * t),
        of.yMm - (a.yMm * (1 - t) + b.yMm * t),
        of.zMm - (a.zMm * (1 - t) + b.zMm * t),
      ),
    )
  }
  return shortest
}

describe('pointToSegmentMm', () => {
  it.each([
    { name: 'beside the middle', of: pointMm(5, 3, 4), expectedMm: 5 }, // 3-4-5 across the axis
    { name: 'beyond the end', of: pointMm(13, 0, 4), expectedMm: 5 },
    { name: 'before the start', of: pointMm(-3, 4, 0), expectedMm: 5 },
    { name: 'on it', of: pointMm(7, 0, 0), expectedMm: 0 },
  ])('$name is $expectedMm mm', ({ of, expectedMm }) => {
    expect(pointToSegmentMm(of, pointMm(0, 0, 0), pointMm(10, 0, 0))).toBeCloseTo(expectedMm, 12)
  })

  it('is the distance to the point when the piece has no length', () => {
    expect(pointToSegmentMm(pointMm(3, 4, 0), pointMm(0, 0, 0), pointMm(0, 0, 0))).toBe(5)
  })

  it('is what dense sampling finds', () => {
    fc.assert(
      fc.property(point, point, point, (of, a, b) => {
        const exactMm = pointToSegmentMm(of, a, b)
        const foundMm = sampledMm(of, a, b)
        const halfStepMm = Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm, a.zMm - b.zMm) / 4000
        expect(exactMm).toBeLessThanOrEqual(foundMm + 1e-9)
        expect(exactMm).toBeGreaterThanOrEqual(foundMm - halfStepMm - 1e-9)
      }),
    )
  })
})

describe('nearestOnPolyline', () => {
  // A harness bar with one bend: 400 across, then 300 forward and down.
  const bar = [pointMm(300, -200, 500), pointMm(300, 200, 500), pointMm(60, 200, 320)]

  it('finds the piece, the share, the place and the axis', () => {
    const nearest = nearestOnPolyline(bar, pointMm(303, 100, 504))
    expect(nearest.segmentIndex).toBe(0)
    expect(nearest.share).toBeCloseTo(0.75, 12)
    expect(nearest.point).toEqual(pointMm(300, 100, 500))
    expect(nearest.distanceMm).toBeCloseTo(5, 12)
    expect(nearest.axis).toEqual({ x: 0, y: 1, z: 0 })
  })

  it('takes the axis of the second piece beyond the bend: 240 forward and 180 down in 300', () => {
    const nearest = nearestOnPolyline(bar, pointMm(60, 230, 320))
    expect(nearest.segmentIndex).toBe(1)
    expect(nearest.share).toBe(1)
    expect(nearest.distanceMm).toBe(30)
    expect(nearest.axis.x).toBeCloseTo(-0.8, 12)
    expect(nearest.axis.z).toBeCloseTo(-0.6, 12)
  })

  it('belongs to the earlier piece at a joint', () => {
    expect(nearestOnPolyline(bar, pointMm(300, 200, 500)).segmentIndex).toBe(0)
  })

  it('gives a straight-across axis for a piece without a length, and refuses fewer than two points', () => {
    const stub = nearestOnPolyline([pointMm(1, 2, 3), pointMm(1, 2, 3)], pointMm(1, 2, 8))
    expect(stub).toEqual({
      point: pointMm(1, 2, 3),
      segmentIndex: 0,
      share: 0,
      distanceMm: 5,
      axis: { x: 0, y: 1, z: 0 },
    })
    expect(() => nearestOnPolyline([pointMm(0, 0, 0)], pointMm(0, 0, 0))).toThrow('at least 2 points')
  })

  it('is as near as the nearest of its pieces, on the polyline, with an axis of length 1', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 5 }), point, (points, of) => {
        const nearest = nearestOnPolyline(points, of)
        const sampled = points.slice(1).map((end, index) => {
          const start = points[index] ?? end
          return { foundMm: sampledMm(of, start, end), start, end }
        })
        expect(nearest.distanceMm).toBeLessThanOrEqual(Math.min(...sampled.map((s) => s.foundMm)) + 1e-9)
        expect(directionLength(nearest.axis)).toBeCloseTo(1, 12)
        const piece = sampled[nearest.segmentIndex]
        const [start, end] = [piece?.start ?? of, piece?.end ?? of]
        expect(piece).toBeDefined()
        expect(pointToSegmentMm(nearest.point, start, end)).toBeLessThan(1e-9)
      }),
    )
  })
})

/** How far two crossings are apart; two that are both missing agree. */
const missMm = (a: PlanePointMm | null, b: PlanePointMm | null): number =>
  a === null || b === null ? 0 : planeDistanceMm(a, b)

describe('planeSegmentIntersection', () => {
  it.each([
    { name: 'crossing', c: planePoint(0, 4), d: planePoint(4, 0), expected: planePoint(2, 2) },
    { name: 'ending on it', c: planePoint(0, 6), d: planePoint(3, 3), expected: planePoint(3, 3) },
    { name: 'sharing an end', c: planePoint(4, 4), d: planePoint(9, 0), expected: planePoint(4, 4) },
    { name: 'ending short of it', c: planePoint(0, 6), d: planePoint(2.999, 3.001), expected: null },
    { name: 'passing beyond its end', c: planePoint(0, 9), d: planePoint(9, 0), expected: null },
    { name: 'parallel', c: planePoint(0, 1), d: planePoint(4, 5), expected: null },
    { name: 'overlapping in line', c: planePoint(1, 1), d: planePoint(3, 3), expected: null },
    { name: 'without a length', c: planePoint(2, 2), d: planePoint(2, 2), expected: null },
  ])('with one $name', ({ c, d, expected }) => {
    const met = planeSegmentIntersection(planePoint(0, 0), planePoint(4, 4), c, d)
    expect(met === null).toBe(expected === null)
    expect(missMm(met, expected)).toBeLessThan(1e-9)
  })

  it('agrees with the general library on whole-mm segments, which often touch', () => {
    fc.assert(
      fc.property(gridPoint, gridPoint, gridPoint, gridPoint, (a, b, c, d) => {
        const cross = (b.uMm - a.uMm) * (d.vMm - c.vMm) - (b.vMm - a.vMm) * (d.uMm - c.uMm)
        fc.pre(cross !== 0)
        const met = planeSegmentIntersection(a, b, c, d)
        const [expected] = new Segment(new Point(a.uMm, a.vMm), new Point(b.uMm, b.vMm)).intersect(
          new Segment(new Point(c.uMm, c.vMm), new Point(d.uMm, d.vMm)),
        )
        const other = expected === undefined ? null : planePoint(expected.x, expected.y)
        expect(met === null).toBe(other === null)
        expect(missMm(met, other)).toBeLessThan(1e-6)
      }),
      { numRuns: 1000 },
    )
  })
})
