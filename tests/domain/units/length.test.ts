import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  LARGEST_LENGTH_MM,
  lengthProblemText,
  lengthOnScaleMm,
  lengthText,
  lengthWithUnit,
  MM_PER_INCH,
  parsedLength,
  type LengthProblem,
  type LengthUnit,
} from '../../../src/domain/units/length'

const valueOf = (text: string, unit: LengthUnit): number | string => {
  const parsed = parsedLength(text, unit)
  return parsed.ok ? parsed.value : parsed.error.kind
}

/** `−12 5/16` as a number, added up here and not by the parser under test. */
const inchesShown = (text: string): number => {
  const parts = text.replace('−', '').split(' ')
  const size = parts.reduce((sum, part) => {
    const [top, bottom = 1] = part.split('/').map(Number)
    return sum + Number(top) / bottom
  }, 0)
  return text.startsWith('−') ? -size : size
}

describe('lengthText', () => {
  it.each([
    { lengthMm: 312.5, unit: 'mm' as const, text: '312.5' },
    { lengthMm: 312, unit: 'mm' as const, text: '312' },
    { lengthMm: 312.04, unit: 'mm' as const, text: '312' },
    { lengthMm: 312.05, unit: 'mm' as const, text: '312.1' }, // half away from zero
    { lengthMm: -312.05, unit: 'mm' as const, text: '−312.1' },
    { lengthMm: -0.04, unit: 'mm' as const, text: '0' },
    { lengthMm: -0, unit: 'mm' as const, text: '0' },
    // 12 5/16 in = 12.3125 × 25.4 = 312.7375 mm
    { lengthMm: 312.7375, unit: 'in' as const, text: '12 5/16' },
    { lengthMm: 314.325, unit: 'in' as const, text: '12 3/8' },
    { lengthMm: 317.5, unit: 'in' as const, text: '12 1/2' },
    { lengthMm: 304.8, unit: 'in' as const, text: '12' },
    { lengthMm: -114.3, unit: 'in' as const, text: '−4 1/2' },
    { lengthMm: 9.525, unit: 'in' as const, text: '3/8' },
    { lengthMm: -1.5875, unit: 'in' as const, text: '−1/16' },
    { lengthMm: 0.79, unit: 'in' as const, text: '0' }, // just under half a sixteenth, 0.79375 mm
    { lengthMm: 0.79375, unit: 'in' as const, text: '1/16' }, // exactly half: away from zero
    { lengthMm: -0.79, unit: 'in' as const, text: '0' },
    { lengthMm: 25.3, unit: 'in' as const, text: '1' }, // 15.94 sixteenths carry over to the inch
  ])('shows $lengthMm mm in $unit as $text', ({ lengthMm, unit, text }) => {
    expect(lengthText(lengthMm, unit)).toBe(text)
  })

  it('shows a dash for what is not a length', () => {
    expect(lengthText(NaN, 'mm')).toBe('–')
    expect(lengthText(Infinity, 'in')).toBe('–')
  })

  it('carries its unit on demand', () => {
    expect(lengthWithUnit(312.5, 'mm')).toBe('312.5 mm')
    expect(lengthWithUnit(312.7375, 'in')).toBe('12 5/16 in')
  })

  it('is never more than half a step away from the length', () => {
    fc.assert(
      fc.property(fc.double({ min: -5000, max: 5000, noNaN: true }), (lengthMm) => {
        const shownMm = Number(lengthText(lengthMm, 'mm').replace('−', '-'))
        expect(Math.abs(shownMm - lengthMm)).toBeLessThanOrEqual(0.05 + 1e-9)
        // A sixteenth of an inch is 1.5875 mm.
        const shownIn = inchesShown(lengthText(lengthMm, 'in'))
        expect(Math.abs(shownIn * 25.4 - lengthMm)).toBeLessThanOrEqual(1.5875 / 2 + 1e-9)
      }),
    )
  })
})

describe('parsedLength', () => {
  it.each([
    // 12.375 × 25.4 = 314.325; 0.375 × 25.4 = 9.525; 12.5 × 25.4 = 317.5; 4.5 × 25.4 = 114.3
    { text: '12 3/8', unit: 'in' as const, expected: 314.325 },
    { text: '12-3/8', unit: 'in' as const, expected: 314.325 },
    { text: '12 - 3/8', unit: 'in' as const, expected: 314.325 },
    { text: '3/8', unit: 'in' as const, expected: 9.525 },
    { text: '9/8', unit: 'in' as const, expected: 28.575 },
    { text: '12.5', unit: 'in' as const, expected: 317.5 },
    { text: '12,5', unit: 'in' as const, expected: 317.5 },
    { text: '12 3/8"', unit: 'mm' as const, expected: 314.325 },
    { text: '12 3/8 ″', unit: 'mm' as const, expected: 314.325 },
    { text: '300 mm', unit: 'in' as const, expected: 300 },
    { text: '300mm', unit: 'in' as const, expected: 300 },
    { text: '30 cm', unit: 'in' as const, expected: 300 },
    { text: '12 in', unit: 'mm' as const, expected: 304.8 },
    { text: '12 Inches', unit: 'mm' as const, expected: 304.8 },
    { text: '-4 1/2', unit: 'in' as const, expected: -114.3 },
    { text: '−4 1/2', unit: 'in' as const, expected: -114.3 },
    { text: '12½', unit: 'in' as const, expected: 317.5 },
    { text: '⅜', unit: 'in' as const, expected: 9.525 },
    { text: '12 1/2 mm', unit: 'in' as const, expected: 12.5 },
    { text: '  300  ', unit: 'mm' as const, expected: 300 },
    { text: '+300', unit: 'mm' as const, expected: 300 },
    { text: '.5', unit: 'mm' as const, expected: 0.5 },
    { text: '0,125', unit: 'in' as const, expected: 3.175 },
  ])('takes $text in $unit as $expected mm', ({ text, unit, expected }) => {
    expect(valueOf(text, unit)).toBeCloseTo(Number(expected), 10)
  })

  it.each([
    { text: '', unit: 'mm' as const, kind: 'empty' },
    { text: '   ', unit: 'in' as const, kind: 'empty' },
    { text: 'abc', unit: 'mm' as const, kind: 'not-a-number' },
    { text: '12 3', unit: 'mm' as const, kind: 'not-a-number' },
    { text: '1 2 3/8', unit: 'in' as const, kind: 'not-a-number' },
    { text: '1.2.3', unit: 'mm' as const, kind: 'not-a-number' },
    { text: '1e3', unit: 'mm' as const, kind: 'not-a-number' },
    { text: '--4', unit: 'mm' as const, kind: 'not-a-number' },
    { text: 'NaN', unit: 'mm' as const, kind: 'not-a-number' },
    { text: 'Infinity', unit: 'mm' as const, kind: 'not-a-number' },
    { text: '1,234', unit: 'mm' as const, kind: 'ambiguous-comma' },
    { text: '1,234.5', unit: 'mm' as const, kind: 'ambiguous-comma' },
    { text: '3/0', unit: 'in' as const, kind: 'zero-denominator' },
    { text: '12 9/8', unit: 'in' as const, kind: 'improper-fraction' },
    { text: '12 8/8', unit: 'in' as const, kind: 'improper-fraction' },
    { text: '12 3/8', unit: 'mm' as const, kind: 'fraction-without-unit' },
    { text: '12 ft', unit: 'in' as const, kind: 'unknown-unit' },
    { text: "12'", unit: 'in' as const, kind: 'unknown-unit' },
    { text: '100001', unit: 'mm' as const, kind: 'too-large' },
    { text: '9'.repeat(400), unit: 'mm' as const, kind: 'too-large' },
  ])('refuses $text in $unit: $kind', ({ text, unit, kind }) => {
    expect(valueOf(text, unit)).toBe(kind)
  })

  it('takes the largest length and nothing beyond it', () => {
    expect(valueOf('100000', 'mm')).toBe(LARGEST_LENGTH_MM)
    expect(valueOf('-100000', 'mm')).toBe(-LARGEST_LENGTH_MM)
    expect(valueOf('100000.1', 'mm')).toBe('too-large')
    expect(valueOf('-100000.1', 'mm')).toBe('too-large')
  })

  it('never gives a minus zero', () => {
    expect(Object.is(valueOf('-0', 'mm'), 0)).toBe(true)
  })

  it('uses the exact inch', () => {
    // 1 in = 25.4 mm exactly since the international yard of 1959.
    expect(MM_PER_INCH).toBe(25.4)
    expect(valueOf('1', 'in')).toBe(25.4)
  })

  it('what was typed in sixteenths is shown again as typed after a look in mm, and the other way round', () => {
    const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b))
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 1, max: 15 }), (whole, sixteenths) => {
        const divisor = gcd(sixteenths, 16)
        const fraction = `${sixteenths / divisor}/${16 / divisor}`
        const typed = whole === 0 ? fraction : `${whole} ${fraction}`
        const lengthMm = Number(valueOf(typed, 'in'))
        lengthText(lengthMm, 'mm') // looking at it changes nothing: the stored length is mm
        expect(lengthText(lengthMm, 'in')).toBe(typed)
      }),
    )
    fc.assert(
      fc.property(fc.integer({ min: -99_999, max: 99_999 }), (tenths) => {
        const typed = String(tenths / 10)
        const lengthMm = Number(valueOf(typed, 'mm'))
        lengthText(lengthMm, 'in')
        expect(lengthText(lengthMm, 'mm')).toBe(typed.replace('-', '−'))
      }),
    )
  })

  it('takes everything that it shows', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -90_000, max: 90_000, noNaN: true }),
        fc.constantFrom<LengthUnit>('mm', 'in'),
        (lengthMm, unit) => {
          const shown = lengthWithUnit(lengthMm, unit)
          const again = valueOf(shown, 'mm')
          expect(typeof again).toBe('number')
          expect(lengthWithUnit(Number(again), unit)).toBe(shown)
        },
      ),
    )
  })

  it('never throws and never gives a number that is not finite, whatever is typed', () => {
    const keys = fc.string({
      unit: fc.constantFrom(...Array.from('0123456789 -+.,/"½⅜−inmcft')),
      maxLength: 14,
    })
    fc.assert(
      fc.property(fc.oneof(keys, fc.string()), fc.constantFrom<LengthUnit>('mm', 'in'), (text, unit) => {
        const parsed = parsedLength(text, unit)
        const shown = parsed.ok ? String(parsed.value) : lengthProblemText(parsed.error)
        expect(shown).not.toMatch(/^(NaN|-?Infinity|)$/)
      }),
    )
  })
})

describe('lengthOnScaleMm', () => {
  it('never goes the unsafe way, by less than one step of the scale, and shows what it says', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -9000, max: 9000, noNaN: true }),
        fc.constantFrom<LengthUnit>('mm', 'in'),
        (lengthMm, unit) => {
          const stepMm = unit === 'mm' ? 0.1 : 25.4 / 16
          const up = lengthOnScaleMm(lengthMm, unit, 'up')
          const down = lengthOnScaleMm(lengthMm, unit, 'down')
          expect(up).toBeGreaterThanOrEqual(lengthMm - 1e-8)
          expect(down).toBeLessThanOrEqual(lengthMm + 1e-8)
          expect(up - down).toBeLessThan(stepMm + 1e-6)
        },
      ),
    )
  })

  it('leaves what the scale has', () => {
    expect(lengthText(lengthOnScaleMm(25.4, 'in', 'up'), 'in')).toBe('1')
    expect(lengthText(lengthOnScaleMm(0.3, 'mm', 'down'), 'mm')).toBe('0.3')
    // 1 mm is 0.63 of a sixteenth.
    expect(lengthText(lengthOnScaleMm(1, 'in', 'down'), 'in')).toBe('0')
    expect(lengthText(lengthOnScaleMm(1, 'in', 'up'), 'in')).toBe('1/16')
  })
})

describe('a length shown in inches', () => {
  // Read back as a welder reads it: whole inches and a fraction. Half of 1/16 in is 0.79375 mm.
  it('is never more than 1/32 in from the length', () => {
    fc.assert(
      fc.property(fc.double({ min: -9000, max: 9000, noNaN: true }), (lengthMm) => {
        const parts = lengthText(lengthMm, 'in').replace('−', '').split(' ')
        const inches = parts.reduce((sum, part) => {
          const [top, bottom = '1'] = part.split('/')
          return sum + Number(top) / Number(bottom)
        }, 0)
        expect(Math.abs(Math.abs(lengthMm) - inches * 25.4)).toBeLessThanOrEqual(0.793_75 + 1e-6)
      }),
    )
  })
})

describe('lengthProblemText', () => {
  it.each<LengthProblem>([
    { kind: 'empty' },
    { kind: 'not-a-number', received: 'x1' },
    { kind: 'ambiguous-comma', received: '1,234' },
    { kind: 'zero-denominator', received: '3/0' },
    { kind: 'improper-fraction', received: '12 9/8' },
    { kind: 'unknown-unit', received: '3 ft', unitText: 'ft' },
    { kind: 'fraction-without-unit', received: '3/8' },
    { kind: 'too-large', received: '999999', limitMm: 100_000 },
  ])('says what was typed and how to mend it: $kind', (problem) => {
    const text = lengthProblemText(problem)
    expect(text).toContain('received' in problem ? problem.received : 'Nothing')
    // Two sentences: what is wrong, then what to do.
    expect(text).toMatch(/\. [A-Z].*\.$/)
  })
})
