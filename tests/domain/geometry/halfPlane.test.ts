import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  clippedConvex,
  halfPlaneLeftOf,
  halfPlaneRightOf,
  oppositeHalfPlane,
  outsideMm,
} from '../../../src/domain/geometry/halfPlane'
import { planePoint } from '../../../src/domain/geometry/plane'

const square = [planePoint(0, 0), planePoint(10, 0), planePoint(10, 10), planePoint(0, 10)]

describe('halfPlaneLeftOf and halfPlaneRightOf', () => {
  it.each([
    // Walking right (0°) the left hand is up the drawing; walking up (90°) it is to the left of the drawing.
    { directionDeg: 0, uMm: 0, vMm: 1, isLeft: true },
    { directionDeg: 0, uMm: 0, vMm: -1, isLeft: false },
    { directionDeg: 90, uMm: -1, vMm: 0, isLeft: true },
    { directionDeg: 90, uMm: 1, vMm: 0, isLeft: false },
    { directionDeg: 180, uMm: 0, vMm: -1, isLeft: true },
    { directionDeg: -90, uMm: 1, vMm: 0, isLeft: true },
  ])('at $directionDeg° ($uMm, $vMm) on the left: $isLeft', ({ directionDeg, uMm, vMm, isLeft }) => {
    const origin = planePoint(0, 0)
    const point = planePoint(uMm, vMm)
    expect(outsideMm(halfPlaneLeftOf(origin, directionDeg), point)).toBeCloseTo(isLeft ? -1 : 1, 12)
    expect(outsideMm(halfPlaneRightOf(origin, directionDeg), point)).toBeCloseTo(isLeft ? 1 : -1, 12)
  })

  it('keeps its own line on both sides', () => {
    const fraction = fc.double({ min: -2000, max: 2000, noNaN: true })
    const turn = fc.double({ min: -360, max: 360, noNaN: true })
    fc.assert(
      fc.property(fraction, fraction, turn, fraction, (uMm, vMm, directionDeg, alongMm) => {
        const rad = (directionDeg * Math.PI) / 180
        const onLine = planePoint(uMm + alongMm * Math.cos(rad), vMm + alongMm * Math.sin(rad))
        const left = halfPlaneLeftOf(planePoint(uMm, vMm), directionDeg)
        expect(outsideMm(left, onLine)).toBeCloseTo(0, 8)
        expect(outsideMm(oppositeHalfPlane(left), onLine)).toBeCloseTo(0, 8)
      }),
    )
  })
})

describe('clippedConvex', () => {
  it('cuts a square in half', () => {
    const half = clippedConvex(square, halfPlaneRightOf(planePoint(5, 0), 90))
    expect(half).toHaveLength(4)
    expect(Math.min(...half.map((p) => p.uMm))).toBeCloseTo(5, 12)
    expect(Math.max(...half.map((p) => p.uMm))).toBe(10)
  })

  it('keeps everything, nothing, or nothing but an edge: an edge alone is nothing', () => {
    expect(clippedConvex(square, halfPlaneLeftOf(planePoint(0, 0), 0))).toEqual(square)
    expect(clippedConvex(square, halfPlaneLeftOf(planePoint(0, 20), 0))).toEqual([])
    expect(clippedConvex(square, halfPlaneLeftOf(planePoint(0, 10), 0))).toEqual([])
    expect(clippedConvex([], halfPlaneLeftOf(planePoint(0, 10), 0))).toEqual([])
  })
})
