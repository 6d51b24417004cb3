import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  KG_PER_LB,
  massProblemText,
  massText,
  massWithUnit,
  parsedMass,
  type MassProblem,
  type MassUnit,
} from '../../../src/domain/units/mass'

const valueOf = (text: string, unit: MassUnit): number | string => {
  const parsed = parsedMass(text, unit)
  return parsed.ok ? parsed.value : parsed.error.kind
}

describe('massText and massWithUnit', () => {
  it.each([
    { massKg: 84.6, unit: 'kg' as const, text: '84.6' },
    { massKg: 84, unit: 'kg' as const, text: '84' },
    { massKg: 45.359237, unit: 'lb' as const, text: '100' },
    // 170 lb test dummy of 14 CFR 25.562 = 77.1 kg as printed in the rule's metric equivalents
    { massKg: 77.1107, unit: 'lb' as const, text: '170' },
  ])('shows $massKg kg as $text $unit', ({ massKg, unit, text }) => {
    expect(massText(massKg, unit)).toBe(text)
    expect(massWithUnit(massKg, unit)).toBe(`${text} ${unit}`)
  })

  it('shows a dash for what is not a mass', () => {
    expect(massText(NaN, 'kg')).toBe('–')
  })
})

describe('parsedMass', () => {
  it('uses the exact pound', () => {
    // 1 lb = 0.453 592 37 kg exactly; 49 CFR 571.3 prints 104 lb for the small woman, 47.2 kg.
    expect(KG_PER_LB).toBe(0.45359237)
    expect(valueOf('104', 'lb')).toBeCloseTo(47.2, 1)
    expect(valueOf('187 lbs', 'kg')).toBeCloseTo(84.821773, 6)
    expect(valueOf('84,6 kg', 'lb')).toBe(84.6)
  })

  it.each([
    { text: '-1', unit: 'kg' as const, kind: 'negative' },
    { text: '80 st', unit: 'kg' as const, kind: 'unknown-unit' },
    { text: '', unit: 'kg' as const, kind: 'empty' },
    { text: '10001', unit: 'kg' as const, kind: 'too-large' },
    { text: 'heavy', unit: 'lb' as const, kind: 'not-a-number' },
  ])('refuses $text in $unit: $kind', ({ text, unit, kind }) => {
    expect(valueOf(text, unit)).toBe(kind)
  })

  it('takes nothing and the largest mass, and nothing beyond', () => {
    expect(valueOf('0', 'kg')).toBe(0)
    expect(valueOf('10000', 'kg')).toBe(10_000)
    expect(valueOf('10000.1', 'kg')).toBe('too-large')
  })

  it('shows a tenth of a pound or a kilogram again as it was typed', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 9_999 }),
        fc.constantFrom<MassUnit>('kg', 'lb'),
        (tenths, unit) => {
          const typed = String(tenths / 10)
          expect(massText(Number(valueOf(typed, unit)), unit)).toBe(typed)
        },
      ),
    )
  })
})

describe('massProblemText', () => {
  it.each<MassProblem>([
    { kind: 'not-a-number', received: 'x1' },
    { kind: 'unknown-unit', received: '3 st', unitText: 'st' },
    { kind: 'negative', received: '-3' },
    { kind: 'too-large', received: '999999', limitKg: 10_000 },
  ])('says what was typed and how to mend it: $kind', (problem) => {
    const text = massProblemText(problem)
    expect(text).toContain('received' in problem ? problem.received : 'Nothing')
    expect(text).toMatch(/\. [A-Z].*\.$/)
  })
})
