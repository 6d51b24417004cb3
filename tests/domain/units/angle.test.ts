import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  acosDeg,
  angleText,
  asinDeg,
  atan2Deg,
  cosDeg,
  degreesText,
  sinDeg,
  tanDeg,
  wrappedDeg,
} from '../../../src/domain/units/angle'

describe('sinDeg, cosDeg, tanDeg and their inverses', () => {
  it.each([
    // Exact values of the half-square and the half-equilateral triangle.
    { angleDeg: 30, sin: 1 / 2, cos: Math.sqrt(3) / 2, tan: 1 / Math.sqrt(3) },
    { angleDeg: 45, sin: Math.SQRT1_2, cos: Math.SQRT1_2, tan: 1 },
    { angleDeg: 60, sin: Math.sqrt(3) / 2, cos: 1 / 2, tan: Math.sqrt(3) },
  ])('at $angleDeg°', ({ angleDeg, sin, cos, tan }) => {
    expect(sinDeg(angleDeg)).toBeCloseTo(sin, 12)
    expect(cosDeg(angleDeg)).toBeCloseTo(cos, 12)
    expect(tanDeg(angleDeg)).toBeCloseTo(tan, 12)
    expect(asinDeg(sin)).toBeCloseTo(angleDeg, 12)
    expect(acosDeg(cos)).toBeCloseTo(angleDeg, 12)
    expect(atan2Deg(sin, cos)).toBeCloseTo(angleDeg, 12)
  })

  it('holds ratios a rounding error beyond 1 at the end of the range', () => {
    expect(asinDeg(1 + 1e-15)).toBe(90)
    expect(asinDeg(-1 - 1e-15)).toBe(-90)
    expect(acosDeg(1 + 1e-15)).toBe(0)
    expect(acosDeg(-1 - 1e-15)).toBe(180)
  })

  it('gives 180° and never −180°, and 0° for no direction', () => {
    expect(atan2Deg(0, -1)).toBe(180)
    expect(atan2Deg(-0, -1)).toBe(180)
    expect(atan2Deg(0, 0)).toBe(0)
    expect(atan2Deg(-1, 0)).toBe(-90)
  })
})

describe('wrappedDeg', () => {
  it.each([
    { from: 180, to: 180 },
    { from: -180, to: 180 },
    { from: 181, to: -179 },
    { from: 540, to: 180 },
    { from: -540, to: 180 },
    { from: 360, to: 0 },
    { from: -90, to: -90 },
  ])('turns $from° into $to°', ({ from, to }) => {
    expect(wrappedDeg(from)).toBe(to)
  })

  it('stays in (−180°, 180°] and keeps the direction', () => {
    fc.assert(
      fc.property(fc.double({ min: -5000, max: 5000, noNaN: true }), (angleDeg) => {
        const wrapped = wrappedDeg(angleDeg)
        expect(wrapped).toBeGreaterThan(-180)
        expect(wrapped).toBeLessThanOrEqual(180)
        expect(Math.cos((wrapped * Math.PI) / 180)).toBeCloseTo(Math.cos((angleDeg * Math.PI) / 180), 9)
        expect(Math.sin((wrapped * Math.PI) / 180)).toBeCloseTo(Math.sin((angleDeg * Math.PI) / 180), 9)
      }),
    )
  })
})

describe('angleText and degreesText', () => {
  it.each([
    { angleDeg: 12.5, text: '12.5' },
    { angleDeg: 10, text: '10' },
    { angleDeg: 12.25, text: '12.3' },
    { angleDeg: -12.25, text: '−12.3' },
    { angleDeg: 12.249, text: '12.2' },
    { angleDeg: -0.04, text: '0' },
    { angleDeg: 89.96, text: '90' },
  ])('shows $angleDeg° as $text', ({ angleDeg, text }) => {
    expect(degreesText(angleDeg)).toBe(text)
    expect(angleText(angleDeg)).toBe(`${text}°`)
  })

  it('shows a dash for what is not an angle', () => {
    expect(angleText(NaN)).toBe('–')
    expect(degreesText(Infinity)).toBe('–')
  })
})
