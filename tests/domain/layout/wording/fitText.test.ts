import { describe, expect, it } from 'vitest'
import { SURVEY_MEASURES, type PersonMeasure } from '../../../../src/domain/body/survey/surveyed'
import type { Separation } from '../../../../src/domain/layout/fit/separation'
import {
  beyondText,
  FIT_CAPTION,
  FIT_METHOD,
  fitLevelWords,
  limitingText,
  personMeasureName,
} from '../../../../src/domain/layout/wording/fitText'

const metric = { length: 'mm', force: 'N', mass: 'kg' } as const
const imperial = { length: 'in', force: 'lbf', mass: 'lb' } as const

const fit = (passing: number, limiting: Separation<PersonMeasure> | null) => ({
  tally: {
    female: { passing, broken: 600 - passing, unchecked: 0 },
    male: { passing: 0, broken: 600, unchecked: 0 },
  },
  limiting,
})

const separation = (change: Partial<Separation<PersonMeasure>>): Separation<PersonMeasure> => ({
  measure: 'midShoulderHeightMm',
  from: 570.9,
  to: null,
  passing: 400,
  passingInside: 380,
  notPassing: 800,
  notPassingInside: 12,
  strength: 0.935,
  ...change,
})

describe('words about who fits', () => {
  it('say that the survey is of soldiers and not of your customers', () => {
    expect(FIT_CAPTION).toContain('soldiers, not of your customers')
    expect(FIT_CAPTION).toContain('17 to 58 years')
    expect(FIT_CAPTION).toContain('weight standards')
  })

  it('never speak of a share of people', () => {
    const texts = [
      FIT_CAPTION,
      FIT_METHOD,
      limitingText(fit(400, separation({})), metric),
      limitingText(fit(400, separation({ strength: 0.2 })), metric),
      ...SURVEY_MEASURES.map(personMeasureName),
      ...(['must', 'should', 'advice'] as const).map(fitLevelWords),
    ]
    for (const text of texts) expect(text).not.toMatch(/%|per ?cent/i)
  })

  it('name what limits with its stretch and the counts inside, in the units shown', () => {
    expect(limitingText(fit(400, separation({})), metric)).toBe(
      'Limiting body measure: middle of the shoulder above the seat, 571 mm or more: ' +
        '380 of the 400 who pass lie there, and 12 of the 800 who do not.',
    )
    // 70 kg = 154.3 lb, 90.5 kg = 199.5 lb.
    expect(limitingText(fit(400, separation({ measure: 'massKg', from: 70, to: 90.5 })), imperial)).toContain(
      '154.3 lb to 199.5 lb',
    )
    expect(limitingText(fit(400, separation({ from: null, to: 640 })), metric)).toContain('up to 640 mm')
  })

  it('say when no measure tells well, and when all or none pass', () => {
    expect(limitingText(fit(400, separation({ strength: 0.49 })), metric)).toMatch(
      /^No single body measure tells well/,
    )
    expect(limitingText(fit(400, separation({ strength: 0.5 })), metric)).toMatch(/^Limiting body measure/)
    expect(limitingText(fit(0, null), metric)).toMatch(/^Nobody passes/)
    expect(limitingText(fit(3, null), metric)).toMatch(/^Too few/)
    const all = { passing: 600, broken: 0, unchecked: 0 }
    expect(limitingText({ tally: { female: all, male: all }, limiting: null }, metric)).toBe(
      'Everybody passes.',
    )
  })

  it('say who is beyond the survey', () => {
    expect(beyondText([], 'male', 600)).toBeNull()
    expect(beyondText(['taller', 'stouter'], 'male', 600)).toBe(
      'taller and stouter for the stature than any of the 600 men surveyed',
    )
  })
})
