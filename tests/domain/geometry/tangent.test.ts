import { Circle, Line, Point, point as flattenPoint } from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CircleMm } from '../../../src/domain/geometry/circle'
import { planeDistanceMm, planePoint, type PlanePointMm } from '../../../src/domain/geometry/plane'
import { commonTangent, tangentPoint, type Side } from '../../../src/domain/geometry/tangent'

const coordinateMm = fc.double({ min: -3000, max: 3000, noNaN: true })
const planePointMm = fc.record({ uMm: coordinateMm, vMm: coordinateMm })
const side = fc.constantFrom<Side>('left', 'right')
const circleMm = fc.record({
  centre: planePointMm,
  radiusMm: fc.oneof(fc.constant(0), fc.double({ min: 1, max: 400, noNaN: true })),
})

const circle = (uMm: number, vMm: number, radiusMm: number): CircleMm => ({
  centre: planePoint(uMm, vMm),
  radiusMm,
})

/** Stands for a missing point: far from everything, so that every comparison with it fails. */
const FAR = planePoint(1e9, -1e9)

/** Left of the walk from → to is positive; the hand rule of the cross product. */
const leftness = (from: PlanePointMm, to: PlanePointMm, of: PlanePointMm): number =>
  (to.uMm - from.uMm) * (of.vMm - from.vMm) - (to.vMm - from.vMm) * (of.uMm - from.uMm)

/** How far the infinite line through two points is from a point, by the general library @flatten-js/core. */
const lineDistanceMm = (from: PlanePointMm, to: PlanePointMm, of: PlanePointMm): number => {
  const line = new Line(new Point(from.uMm, from.vMm), new Point(to.uMm, to.vMm))
  return new Point(of.uMm, of.vMm).distanceTo(line)[0]
}

describe('tangentPoint', () => {
  // 3-4-5 triangle: from 5 away, radius 3, the tangent is 4 long; the foot is 9/5 toward the point and 12/5 to the side.
  it.each([
    { centreSide: 'left' as const, uMm: 3.2, vMm: -2.4 },
    { centreSide: 'right' as const, uMm: 3.2, vMm: 2.4 },
  ])('touches a 3-4-5 circle with the centre on the $centreSide', ({ centreSide, uMm, vMm }) => {
    const touch = tangentPoint(circle(5, 0, 3), planePoint(0, 0), centreSide)
    expect(touch?.uMm).toBeCloseTo(uMm, 12)
    expect(touch?.vMm).toBeCloseTo(vMm, 12)
  })

  it('is null inside, the point itself on the circle and the centre when the radius is 0', () => {
    expect(tangentPoint(circle(0, 0, 10), planePoint(9.999, 0), 'left')).toBeNull()
    expect(tangentPoint(circle(0, 0, 10), planePoint(10, 0), 'left')).toEqual(planePoint(10, 0))
    expect(tangentPoint(circle(0, 0, 10), planePoint(10.001, 0), 'left')).not.toBeNull()
    expect(tangentPoint(circle(7, 8, 0), planePoint(1, 2), 'right')).toEqual(planePoint(7, 8))
    expect(tangentPoint(circle(7, 8, 0), planePoint(7, 8), 'right')).toEqual(planePoint(7, 8))
  })

  it('lies on the circle, square to the radius, with the centre on the asked side', () => {
    fc.assert(
      fc.property(circleMm, planePointMm, side, (round, from, centreSide) => {
        fc.pre(round.radiusMm > 0 && planeDistanceMm(from, round.centre) > round.radiusMm + 0.5)
        const touch = tangentPoint(round, from, centreSide)
        expect(touch).not.toBeNull()
        if (touch === null) return
        expect(planeDistanceMm(touch, round.centre)).toBeCloseTo(round.radiusMm, 7)
        expect(lineDistanceMm(from, touch, round.centre)).toBeCloseTo(round.radiusMm, 6)
        expect(Math.sign(leftness(from, touch, round.centre))).toBe(centreSide === 'left' ? 1 : -1)
      }),
    )
  })

  it('agrees with the two tangents of the general library', () => {
    fc.assert(
      fc.property(circleMm, planePointMm, (round, from) => {
        fc.pre(round.radiusMm > 0 && planeDistanceMm(from, round.centre) > round.radiusMm + 1)
        // Thales: both touching points are on the circle whose diameter runs from the point to the centre.
        const middle = flattenPoint((from.uMm + round.centre.uMm) / 2, (from.vMm + round.centre.vMm) / 2)
        const thales = new Circle(middle, planeDistanceMm(from, round.centre) / 2)
        const expected = new Circle(
          flattenPoint(round.centre.uMm, round.centre.vMm),
          round.radiusMm,
        ).intersect(thales)
        expect(expected).toHaveLength(2)
        for (const centreSide of ['left', 'right'] as const) {
          const touch = tangentPoint(round, from, centreSide)
          const missMm = Math.min(
            ...expected.map((p) => Math.hypot(p.x - (touch?.uMm ?? NaN), p.y - (touch?.vMm ?? NaN))),
          )
          expect(missMm).toBeLessThan(1e-4)
        }
      }),
    )
  })

  it('changes hands when the drawing is mirrored', () => {
    fc.assert(
      fc.property(circleMm, planePointMm, (round, from) => {
        const mirror = (p: PlanePointMm): PlanePointMm => planePoint(p.uMm, -p.vMm)
        const touch = tangentPoint(round, from, 'left')
        const mirrored = tangentPoint({ ...round, centre: mirror(round.centre) }, mirror(from), 'right')
        fc.pre(touch !== null)
        expect(planeDistanceMm(mirror(touch ?? FAR), mirrored ?? FAR)).toBeLessThan(1e-9)
      }),
    )
  })
})

describe('commonTangent', () => {
  it('runs along the top of two equal circles that lie side by side', () => {
    // Walking right with both centres on the right hand, the line is above them: v = +10.
    const line = commonTangent(circle(0, 0, 10), circle(100, 0, 10), 'right', 'right')
    expect(line?.onA.uMm).toBeCloseTo(0, 12)
    expect(line?.onA.vMm).toBeCloseTo(10, 12)
    expect(line?.onB.uMm).toBeCloseTo(100, 12)
    expect(line?.onB.vMm).toBeCloseTo(10, 12)
  })

  it('crosses between two equal circles at the half of the distance', () => {
    // Inner tangent of radius 30 circles 100 apart: sin = 60/100 (3-4-5), so the tangent piece is 80 long.
    const line = commonTangent(circle(0, 0, 30), circle(100, 0, 30), 'right', 'left')
    expect(line).not.toBeNull()
    if (line === null) return
    expect(planeDistanceMm(line.onA, line.onB)).toBeCloseTo(80, 10)
    expect(line.onA.vMm).toBeCloseTo(24, 10) // 30·cos(asin 0.6) above the first centre
    expect(line.onB.vMm).toBeCloseTo(-24, 10)
  })

  it('exists up to touching and not beyond', () => {
    expect(commonTangent(circle(0, 0, 30), circle(60, 0, 30), 'left', 'right')).not.toBeNull()
    expect(commonTangent(circle(0, 0, 30), circle(59.999, 0, 30), 'left', 'right')).toBeNull()
    expect(commonTangent(circle(0, 0, 30), circle(20, 0, 10), 'left', 'left')).not.toBeNull()
    expect(commonTangent(circle(0, 0, 30), circle(19.999, 0, 10), 'left', 'left')).toBeNull()
    expect(commonTangent(circle(5, 5, 0), circle(5, 5, 0), 'left', 'left')).toBeNull()
  })

  it('touches both circles with the centres on the asked sides', () => {
    fc.assert(
      fc.property(circleMm, circleMm, side, side, (a, b, aSide, bSide) => {
        fc.pre(planeDistanceMm(a.centre, b.centre) > a.radiusMm + b.radiusMm + 1)
        const line = commonTangent(a, b, aSide, bSide)
        expect(line).not.toBeNull()
        if (line === null) return
        for (const [round, on, hand] of [
          [a, line.onA, aSide],
          [b, line.onB, bSide],
        ] as const) {
          expect(planeDistanceMm(on, round.centre)).toBeCloseTo(round.radiusMm, 7)
          // The library's line is unsigned; the side comes from the cross product.
          expect(lineDistanceMm(line.onA, line.onB, round.centre)).toBeCloseTo(round.radiusMm, 5)
          const left = leftness(line.onA, line.onB, round.centre)
          // Left of the line counts + and right −; a circle without a radius lies on it.
          expect(round.radiusMm === 0 || left > 0 === (hand === 'left')).toBe(true)
        }
      }),
    )
  })

  it('is the tangent from a point when the first circle has no radius', () => {
    fc.assert(
      fc.property(circleMm, planePointMm, side, (b, from, bSide) => {
        fc.pre(planeDistanceMm(b.centre, from) > b.radiusMm + 1)
        const line = commonTangent({ centre: from, radiusMm: 0 }, b, 'left', bSide)
        const touch = tangentPoint(b, from, bSide)
        expect(planeDistanceMm(line?.onA ?? FAR, from)).toBe(0)
        expect(planeDistanceMm(line?.onB ?? FAR, touch ?? FAR)).toBeLessThan(1e-8)
      }),
    )
  })
})
