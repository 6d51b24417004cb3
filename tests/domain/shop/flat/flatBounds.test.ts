import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { flatBounds, sweepDeg } from '../../../../src/domain/shop/flat/flatBounds'
import type { FlatShape } from '../../../../src/domain/shop/flat/flatFigure'

const at = (xMm: number, yMm: number) => ({ xMm, yMm })

const arc = (fromDeg: number, toDeg: number): FlatShape => ({
  kind: 'arc',
  layer: 'CUT',
  centre: at(0, 0),
  radiusMm: 10,
  fromDeg,
  toDeg,
})

describe('sweepDeg', () => {
  it.each([
    [0, 90, 90],
    [90, 0, 270],
    [-90, 45, 135],
    [350, 10, 20],
    [30, 30, 0],
    [0, 360, 360],
    [-180, 180, 360],
  ])('from %d° anticlockwise to %d° is %d°', (fromDeg, toDeg, wantedDeg) => {
    expect(sweepDeg(fromDeg, toDeg)).toBe(wantedDeg)
  })
})

describe('flatBounds', () => {
  it('of a quarter of a circle is a square of its radius', () => {
    // The arc from 0° to 90° of radius 10 runs from (10, 0) to (0, 10) and bulges beyond neither.
    const { min, max } = flatBounds([arc(0, 90)])
    expect(min.xMm).toBeCloseTo(0, 9)
    expect(min.yMm).toBeCloseTo(0, 9)
    expect(max).toEqual(at(10, 10))
  })

  it('of the other three quarters is the square about the whole circle', () => {
    const { min, max } = flatBounds([arc(90, 0)])
    expect([min.xMm, min.yMm, max.xMm, max.yMm].map((mm) => Math.round(mm * 1e9) / 1e9)).toEqual([
      -10, -10, 10, 10,
    ])
  })

  it('of nothing is a point at the origin', () => {
    expect(flatBounds([])).toEqual({ min: at(0, 0), max: at(0, 0) })
  })

  it('always holds every point of an arc, and touches it on all four sides', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -720, max: 720 }),
        fc.integer({ min: 1, max: 359 }),
        (fromDeg, turnDeg) => {
          const { min, max } = flatBounds([arc(fromDeg, fromDeg + turnDeg)])
          const points = Array.from({ length: turnDeg + 1 }, (_, index) => {
            const rad = ((fromDeg + index) * Math.PI) / 180
            return at(10 * Math.cos(rad), 10 * Math.sin(rad))
          })
          const xs = points.map(({ xMm }) => xMm)
          const ys = points.map(({ yMm }) => yMm)
          // Whole degrees include every place where the circle runs level or plumb.
          expect(min.xMm).toBeCloseTo(Math.min(...xs), 9)
          expect(max.xMm).toBeCloseTo(Math.max(...xs), 9)
          expect(min.yMm).toBeCloseTo(Math.min(...ys), 9)
          expect(max.yMm).toBeCloseTo(Math.max(...ys), 9)
        },
      ),
    )
  })

  it('keeps room for lettering on the side where it stands', () => {
    const text = (align: 'left' | 'centre' | 'right', turnDeg: number): FlatShape => ({
      kind: 'text',
      layer: 'TEXT',
      at: at(0, 0),
      text: 'LAP TAB',
      heightMm: 5,
      align,
      turnDeg,
    })
    const left = flatBounds([text('left', 0)])
    expect(left.min.xMm).toBe(0)
    expect(left.max.xMm).toBeGreaterThan(7 * 5 * 0.5)
    expect(flatBounds([text('right', 0)]).max.xMm).toBe(0)
    const centred = flatBounds([text('centre', 0)])
    expect(centred.min.xMm).toBeCloseTo(-centred.max.xMm, 9)
    // Turned to read upward it grows upward.
    const upward = flatBounds([text('left', 90)])
    expect(upward.max.yMm).toBeCloseTo(left.max.xMm, 9)
    expect(upward.min.yMm).toBeCloseTo(0, 9)
  })
})
