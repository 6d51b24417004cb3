import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  circleEllipseTangent,
  ellipseArcMm,
  type EllipseMm,
  ellipseParameter,
  ellipseTangentPoint,
  isEllipseCut,
} from '../../../src/domain/geometry/ellipse'
import { planePoint, type PlanePointMm } from '../../../src/domain/geometry/plane'
import { commonTangent } from '../../../src/domain/geometry/tangent'

const mm = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true })

const turned = (centre: PlanePointMm, aMm: number, bMm: number, deg: number): EllipseMm => {
  const rad = (deg * Math.PI) / 180
  return { centre, aMm, bMm, cos: Math.cos(rad), sin: Math.sin(rad) }
}

describe('ellipseArcMm', () => {
  it('of a quarter is the complete elliptic integral of the second kind', () => {
    // Half-axes 2 and 1: 2·E(m = 0.75); modular angle 60°: E = 1.21105 603. Source: Abramowitz and Stegun, table 17.1 (from memory).
    expect(ellipseArcMm(1, 2, Math.PI / 2)).toBeCloseTo(2 * 1.211_056_03, 7)
    expect(ellipseArcMm(2, 1, Math.PI / 2)).toBeCloseTo(2 * 1.211_056_03, 7)
    expect(ellipseArcMm(1, 2, 2 * Math.PI)).toBeCloseTo(8 * 1.211_056_03, 6)
  })

  it('of a circle is radius times angle, of a flat ellipse its projection', () => {
    expect(ellipseArcMm(70, 70, 2.5)).toBeCloseTo(175, 9)
    expect(ellipseArcMm(70, 0, Math.PI)).toBeCloseTo(140, 9)
    expect(ellipseArcMm(70, 1e-7, Math.PI)).toBeCloseTo(140, 6)
  })

  it('is the length of many short chords', () => {
    fc.assert(
      fc.property(mm(5, 200), mm(5, 200), mm(0, 2 * Math.PI), (a, b, to) => {
        let chordsMm = 0
        const steps = 4000
        for (let i = 0; i < steps; i += 1) {
          const [from, next] = [(i * to) / steps, ((i + 1) * to) / steps]
          chordsMm += Math.hypot(a * (Math.cos(next) - Math.cos(from)), b * (Math.sin(next) - Math.sin(from)))
        }
        // Chords fall short by at most a few parts in 10^6 where the ellipse is ten times as long as broad and more.
        expect(Math.abs(ellipseArcMm(a, b, to) - chordsMm)).toBeLessThan(1e-3)
      }),
      { numRuns: 50 },
    )
  })
})

describe('ellipseTangentPoint', () => {
  it('touches the ellipse where the line to it has the whole ellipse on the asked side', () => {
    fc.assert(
      fc.property(mm(-90, 90), mm(10, 90), mm(10, 90), mm(100, 400), mm(0, 360), (deg, a, b, away, at) => {
        const ellipse = turned(planePoint(10, -20), a, b, deg)
        const from = planePoint(
          10 + away * Math.cos((at * Math.PI) / 180),
          -20 + away * Math.sin((at * Math.PI) / 180),
        )
        const touch = ellipseTangentPoint(ellipse, from, 'left')
        if (touch === null) throw new Error('inside')
        for (let i = 0; i < 360; i += 1) {
          const rad = (i * Math.PI) / 180
          const u = a * Math.cos(rad) * ellipse.cos - b * Math.sin(rad) * ellipse.sin + 10
          const v = a * Math.cos(rad) * ellipse.sin + b * Math.sin(rad) * ellipse.cos - 20
          const left = (touch.uMm - from.uMm) * (v - from.vMm) - (touch.vMm - from.vMm) * (u - from.uMm)
          expect(left).toBeGreaterThan(-1e-6)
        }
        const on = ellipseParameter(ellipse, touch)
        expect(Number.isFinite(on)).toBe(true)
      }),
      { numRuns: 40 },
    )
  })

  it('is null from inside', () => {
    expect(ellipseTangentPoint(turned(planePoint(0, 0), 50, 20, 0), planePoint(0, 19), 'left')).toBeNull()
  })
})

describe('isEllipseCut', () => {
  it('is the case beyond touching, and never of a flat one', () => {
    const ellipse = turned(planePoint(0, 0), 50, 20, 0)
    expect(isEllipseCut(ellipse, planePoint(-100, 20), planePoint(100, 20))).toBe(false)
    expect(isEllipseCut(ellipse, planePoint(-100, 19.99), planePoint(100, 19.99))).toBe(true)
    expect(isEllipseCut(ellipse, planePoint(60, 0), planePoint(100, 0))).toBe(false)
    expect(isEllipseCut({ ...ellipse, bMm: 0 }, planePoint(0, -1), planePoint(0, 1))).toBe(false)
  })
})

describe('circleEllipseTangent', () => {
  it('is the common tangent where the ellipse is a circle', () => {
    fc.assert(
      fc.property(mm(10, 90), mm(10, 90), mm(200, 400), mm(200, 300), (r1, r2, away, deg) => {
        const rad = (deg * Math.PI) / 180
        const circle = { centre: planePoint(5, 7), radiusMm: r1 }
        const centre = planePoint(5 + away * Math.cos(rad), 7 + away * Math.sin(rad))
        // Off it further round than half a turn from where the piece comes in is out of the question: straight on from the middles' line.
        const off = planePoint(centre.uMm + r2 * Math.cos(rad), centre.vMm + r2 * Math.sin(rad))
        const found = circleEllipseTangent(circle, turned(centre, r2, r2, 33), off)
        const known = commonTangent(circle, { centre, radiusMm: r2 }, 'left', 'left')
        expect(found?.onCircle.uMm).toBeCloseTo(known?.onA.uMm ?? NaN, 7)
        expect(found?.onCircle.vMm).toBeCloseTo(known?.onA.vMm ?? NaN, 7)
        expect(found?.onEllipse.uMm).toBeCloseTo(known?.onB.uMm ?? NaN, 7)
      }),
    )
  })

  it('is null where the ellipse reaches further out all the way', () => {
    const circle = { centre: planePoint(0, 0), radiusMm: 10 }
    expect(circleEllipseTangent(circle, turned(planePoint(0, 0), 50, 60, 0), planePoint(50, 0))).toBeNull()
  })
})
