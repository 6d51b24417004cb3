import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isWanted, isWithin, LIMIT_TOLERANCE, marginInside } from '../../../src/domain/rules/check'

describe('isWithin', () => {
  it.each([
    { value: 45, min: 45, max: 65, expected: true },
    { value: 65, min: 45, max: 65, expected: true },
    { value: 44.999, min: 45, max: 65, expected: false },
    { value: 65.001, min: 45, max: 65, expected: false },
    { value: 45 - LIMIT_TOLERANCE / 2, min: 45, max: 65, expected: true },
    { value: 45 - LIMIT_TOLERANCE * 2, min: 45, max: 65, expected: false },
    { value: -1000, min: null, max: 3, expected: true },
    { value: 3.001, min: null, max: 3, expected: false },
    { value: 1000, min: 85, max: null, expected: true },
    { value: 84.999, min: 85, max: null, expected: false },
  ])('$value in [$min, $max] is $expected', ({ value, min, max, expected }) => {
    expect(isWithin(value, { min, max })).toBe(expected)
  })

  it('never turns from inside to outside when a limit is widened', () => {
    const degree = fc.double({ min: -180, max: 180, noNaN: true })
    fc.assert(
      fc.property(degree, degree, degree, fc.double({ min: 0, max: 50, noNaN: true }), (value, a, b, by) => {
        const narrow = { min: Math.min(a, b), max: Math.max(a, b) }
        fc.pre(isWithin(value, narrow))
        expect(isWithin(value, { min: narrow.min - by, max: narrow.max + by })).toBe(true)
      }),
    )
  })
})

describe('marginInside', () => {
  it('is the distance to the nearer limit, negative outside', () => {
    expect(marginInside(50, { min: 45, max: 65 })).toBe(5)
    expect(marginInside(64, { min: 45, max: 65 })).toBe(1)
    expect(marginInside(70, { min: 45, max: 65 })).toBe(-5)
    expect(marginInside(40, { min: 45, max: null })).toBe(-5)
    expect(marginInside(2, { min: null, max: 3 })).toBe(1)
  })

  it('refuses an interval without limits and a value that is not finite', () => {
    expect(() => marginInside(1, { min: null, max: null })).toThrow('without limits')
    expect(() => marginInside(Number.NaN, { min: 0, max: 1 })).toThrow('NaN')
  })
})

describe('isWanted', () => {
  it('takes any of the wanted words and no other', () => {
    expect(isWanted('double', ['double'])).toBe(true)
    expect(isWanted('single', ['double'])).toBe(false)
    expect(isWanted('single', [])).toBe(false)
  })
})
