import fc from 'fast-check'
import { Temporal } from 'temporal-polyfill'
import { describe, expect, it } from 'vitest'

import { AGE_RULES, ageRulesOf, ruleOfAge } from '../../../src/domain/care/ageRules'
import { BELT_STANDARDS, type BeltFacts } from '../../../src/domain/care/beltRecord'
import { beltAge, SOON_DAYS } from '../../../src/domain/care/expiry'
import { RULE_SETS, ruleSetById } from '../../../src/domain/rules/ruleSets'
import { facts } from './belts'

const set = (id: string) => {
  const found = ruleSetById(id)
  if (found === null) throw new Error(id)
  return found
}

const TODAY = '2026-06-01'

const lastDay = (ruleSetId: string, change: Partial<BeltFacts>): string | null =>
  beltAge(facts(change), set(ruleSetId), TODAY).lastDay

describe('last day of use', () => {
  it.each<{ source: string; ruleSet: string; belt: Partial<BeltFacts>; expected: string }>([
    // SFI Foundation presentation: webbing's useful life "shall not exceed two years"; the day of exactly two years is the last.
    {
      source: 'SFI',
      ruleSet: 'belt-standards',
      belt: { manufactured: '2025-03-15' },
      expected: '2027-03-15',
    },
    // Only the month: the 1st is the earliest day it may mean. Only the year: 1 January.
    { source: 'SFI', ruleSet: 'belt-standards', belt: { manufactured: '2024-03' }, expected: '2026-03-01' },
    { source: 'SFI', ruleSet: 'belt-standards', belt: { manufactured: '2024' }, expected: '2026-01-01' },
    // 29 February and two years: the last day of February. Source: Regulation 1182/71, Article 3(2)(c).
    {
      source: 'SFI',
      ruleSet: 'belt-standards',
      belt: { manufactured: '2024-02-29' },
      expected: '2026-02-28',
    },
    // FIA 8853/98 as quoted: valid to the year on its label.
    {
      source: 'FIA label',
      ruleSet: 'belt-standards',
      belt: { standard: 'fia-8853-98', labelYear: 2027, manufactured: '' },
      expected: '2027-12-31',
    },
    // European student rules T5.2.2: after 31 December of the second year after manufacture (SFI), of the label year (FIA).
    {
      source: 'FS, SFI',
      ruleSet: 'student-derivative-2025',
      belt: { standard: 'sfi-16.5', manufactured: '2024-11' },
      expected: '2026-12-31',
    },
    {
      source: 'FS, SFI, 1 January',
      ruleSet: 'student-derivative-2025',
      belt: { standard: 'sfi-16.1', manufactured: '2024-01-01' },
      expected: '2026-12-31',
    },
    {
      source: 'FS, FIA',
      ruleSet: 'student-derivative-2025',
      belt: { standard: 'fia-8853-2016', labelYear: 2029, manufactured: '2024' },
      expected: '2029-12-31',
    },
    // Formula SAE 2026 T.2.2: in or before the year on the label; 31 December of that year is allowed.
    {
      source: 'FSAE',
      ruleSet: 'student-cars-2026',
      belt: { standard: 'sfi-16.1', labelYear: 2026 },
      expected: '2026-12-31',
    },
    // NZ Speedway 2010 (aa): webbing renewed 5 years after manufacture, whatever the standard.
    {
      source: 'NZ',
      ruleSet: 'speedway-nz-2010',
      belt: { standard: 'other', manufactured: '2024-06-30' },
      expected: '2029-06-30',
    },
    // USAC quarter midgets 724-K 2009: at most 4 years.
    {
      source: 'USAC',
      ruleSet: 'usac-quarter-midget-2009',
      belt: { standard: 'sfi-16.6', manufactured: '2023-10-31' },
      expected: '2027-10-31',
    },
    // Marque club: every 5 years.
    {
      source: 'marque club',
      ruleSet: 'marque-club-track-days',
      belt: { standard: 'fmvss-209', manufactured: '2020-02-29' },
      expected: '2025-02-28',
    },
    // IHRA 2019: every 2 years where SFI 16.1 is required.
    {
      source: 'IHRA',
      ruleSet: 'drag-ihra-2019',
      belt: { standard: 'sfi-16.1', manufactured: '2025-01-31' },
      expected: '2027-01-31',
    },
  ])('by $source for $belt is $expected', ({ ruleSet, belt, expected }) => {
    expect(lastDay(ruleSet, belt)).toBe(expected)
  })

  it('is the earlier of the rule set and the year on the label', () => {
    // Five years from 2025 end in 2030, the label says 2028.
    expect(lastDay('speedway-nz-2010', { manufactured: '2025-06-30', labelYear: 2028 })).toBe('2028-12-31')
    expect(lastDay('speedway-nz-2010', { manufactured: '2022-06-30', labelYear: 2028 })).toBe('2027-06-30')
  })

  it('names what the latest day of a month would give beside the earliest that counts', () => {
    const { chosen } = beltAge(facts({ manufactured: '2024-02' }), set('belt-standards'), TODAY)
    expect(chosen[0]?.outcome).toEqual({
      kind: 'last-day',
      lastDay: '2026-02-01',
      latestReading: '2026-02-28',
    })
    // To the end of a calendar year the day and month of manufacture do not matter.
    const { chosen: student } = beltAge(
      facts({ manufactured: '2024' }),
      set('student-derivative-2025'),
      TODAY,
    )
    expect(student[0]?.outcome).toMatchObject({ lastDay: '2026-12-31', latestReading: null })
  })

  it('is never later than the years count from any day that the label may mean, by Temporal', () => {
    const part = (least: number, most: number) => fc.integer({ min: least, max: most })
    fc.assert(
      fc.property(part(2000, 2025), part(1, 12), part(1, 28), part(1, 3), (year, month, day, parts) => {
        const made = Temporal.PlainDate.from({ year, month, day })
        const manufactured = made.toString().slice(0, [4, 7, 10][parts - 1])
        const found = lastDay('belt-standards', { manufactured })
        expect(found).not.toBeNull()
        expect((found ?? '') <= made.add({ years: 2 }).toString()).toBe(true)
        // And not needlessly early: of a known day exactly the anniversary.
        const earliest = made.with({ month: parts > 1 ? month : 1, day: parts > 2 ? day : 1 })
        expect(found).toBe(earliest.add({ years: 2 }).toString())
      }),
    )
  })
})

describe('verdict', () => {
  const verdict = (today: string, change: Partial<BeltFacts> = {}, ruleSet = 'belt-standards') =>
    beltAge(facts(change), set(ruleSet), today).verdict

  it('counts the last day in and the next day out', () => {
    // Made 2025-03-15, two years: 2027-03-15.
    expect(verdict('2027-03-15')).toBe('soon')
    expect(verdict('2027-03-16')).toBe('expired')
    expect(beltAge(facts(), set('belt-standards'), '2027-03-15').daysLeft).toBe(0)
    expect(beltAge(facts(), set('belt-standards'), '2027-03-16').daysLeft).toBe(-1)
  })

  it(`calls the last ${SOON_DAYS} days soon`, () => {
    // 30 days before 15 March 2027 is 13 February.
    expect(verdict('2027-02-13')).toBe('soon')
    expect(verdict('2027-02-12')).toBe('fine')
  })

  it('is not known, and never fine, when what the rule counts from is missing', () => {
    const { chosen } = beltAge(facts({ manufactured: '' }), set('belt-standards'), TODAY)
    expect(chosen[0]?.outcome).toEqual({ kind: 'missing', fact: 'manufactured' })
    expect(verdict(TODAY, { manufactured: '' })).toBe('not-known')
    expect(verdict(TODAY, { manufactured: '', labelYear: 2030 })).toBe('not-known')
    expect(verdict(TODAY, { standard: 'unreadable' })).toBe('not-known')
    expect(verdict(TODAY, { standard: 'fia-8853-98' })).toBe('not-known')
  })

  it('is expired when the label says so, whatever else is not known', () => {
    expect(verdict(TODAY, { manufactured: '', labelYear: 2025 })).toBe('expired')
    expect(
      verdict(TODAY, { standard: 'other', manufactured: '', labelYear: 2025 }, 'workshop-practice'),
    ).toBe('expired')
  })

  it('is no rule where the set is silent, with every other rule for orientation', () => {
    const age = beltAge(facts(), set('workshop-practice'), TODAY)
    expect(age).toMatchObject({ verdict: 'no-rule', lastDay: null, daysLeft: null, chosen: [] })
    // All that speak of SFI 16.1: not the two that are of FIA belts only.
    expect(age.others).toHaveLength(AGE_RULES.length - 2)
    // SFI 16.1 is not what the quoted label rule of 8853/98 or the drag rule for 16.1 speak of.
    expect(verdict(TODAY, { standard: 'fia-8853-2016' })).toBe('no-rule')
    expect(verdict(TODAY, { standard: 'sfi-16.5' }, 'drag-ihra-2019')).toBe('no-rule')
  })

  it.each<[string, Partial<BeltFacts>, string]>([
    ['made in the future', { manufactured: '2026-06-02' }, 'made-in-future'],
    ['made in a month to come', { manufactured: '2026-07' }, 'made-in-future'],
    ['fitted before it was made', { manufactured: '2025-03', fitted: '2025-02-28' }, 'fitted-before-made'],
    ['out of date before it was made', { manufactured: '2025', labelYear: 2024 }, 'label-year-before-made'],
  ])('counts nothing for a belt %s', (_what, change, kind) => {
    const age = beltAge(facts(change), set('belt-standards'), TODAY)
    expect(age.chosen[0]?.outcome).toMatchObject({ kind: 'in-doubt', problem: { kind } })
    expect(age.verdict).toBe('not-known')
  })

  it.each<[string, Partial<BeltFacts>, string]>([
    ['made in the future', { manufactured: '2030-01-01', labelYear: 2031 }, 'made-in-future'],
    ['valid for more than ten years', { manufactured: '2020-12', labelYear: 2031 }, 'label-year-too-late'],
    [
      'valid for more than ten years from today',
      { manufactured: '', labelYear: 2037 },
      'label-year-too-late',
    ],
  ])('believes no label of a belt %s', (_what, change, kind) => {
    const age = beltAge(facts({ ...change, standard: 'other' }), set('workshop-practice'), TODAY)
    expect(age).toMatchObject({
      verdict: 'not-known',
      lastDay: null,
      label: { kind: 'in-doubt', problem: { kind } },
    })
  })

  it('believes a label of ten years, from manufacture or from today', () => {
    for (const change of [
      { manufactured: '2020-12', labelYear: 2030 },
      { manufactured: '', labelYear: 2036 },
    ])
      expect(verdict(TODAY, { ...change, standard: 'other' }, 'workshop-practice')).toBe('fine')
  })

  it('counts for a belt made this month or fitted in the month it was made', () => {
    expect(verdict(TODAY, { manufactured: '2026-06' })).toBe('fine')
    expect(verdict(TODAY, { manufactured: '2025-03', fitted: '2025-03-01' })).toBe('fine')
  })

  it('agrees with counting by hand in Temporal over all standards and sets', () => {
    const day = fc
      .record({ year: fc.integer({ min: 2015, max: 2035 }), month: fc.integer({ min: 1, max: 12 }) })
      .chain(({ year, month }) =>
        fc.integer({ min: 1, max: 31 }).map((each) => Temporal.PlainDate.from({ year, month, day: each })),
      )
    fc.assert(
      fc.property(
        day,
        day,
        fc.constantFrom(...BELT_STANDARDS),
        fc.constantFrom(...RULE_SETS),
        (made, today, standard, ruleSet) => {
          fc.pre(Temporal.PlainDate.compare(made, today) <= 0)
          const age = beltAge(facts({ standard, manufactured: made.toString() }), ruleSet, today.toString())
          const last = age.lastDay === null ? null : Temporal.PlainDate.from(age.lastDay)
          const left = last === null ? null : today.until(last, { largestUnit: 'day' }).days
          expect(age.daysLeft).toBe(left)
          const known = age.chosen.every(({ outcome }) => outcome.kind === 'last-day')
          const expected =
            left === null
              ? known
                ? 'no-rule'
                : 'not-known'
              : left < 0
                ? 'expired'
                : known
                  ? left <= 30
                    ? 'soon'
                    : 'fine'
                  : 'not-known'
          expect(age.verdict).toBe(expected)
        },
      ),
    )
  })
})

describe('ageRulesOf', () => {
  it('names only rules that exist, each with words and a source', () => {
    for (const rule of AGE_RULES) expect(ruleOfAge(rule).says).not.toBe('')
  })

  it('goes with the rule into an own copy of a set, and away with it', () => {
    const { rules } = set('speedway-nz-2010')
    expect(ageRulesOf({ rules }).map(({ ruleId }) => ruleId)).toEqual(['speedway-age'])
    expect(ageRulesOf({ rules: rules.filter(({ id }) => id !== 'speedway-age') })).toEqual([])
  })

  it.each([
    ['belt-standards', 2],
    ['student-derivative-2025', 2],
    ['student-cars-2026', 1],
    ['speedway-nz-2010', 1],
    ['usac-quarter-midget-2009', 1],
    ['marque-club-track-days', 1],
    ['drag-ihra-2019', 1],
    ['workshop-practice', 0],
    ['desert-score', 0],
    ['rally-circuit-253', 0],
  ])('%s has %i', (id, count) => {
    expect(ageRulesOf(set(id))).toHaveLength(count)
  })
})
