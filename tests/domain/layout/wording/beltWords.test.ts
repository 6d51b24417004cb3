import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'

import { BELT_FACTS, BELT_STANDARDS, type BeltFacts } from '../../../../src/domain/care/beltRecord'
import { beltCondition } from '../../../../src/domain/care/condition'
import { beltAge } from '../../../../src/domain/care/expiry'
import {
  ageSentence,
  orientationText,
  silentSetText,
} from '../../../../src/domain/layout/wording/beltAgeText'
import { beltCalendar, beltEvents } from '../../../../src/domain/layout/wording/beltCalendar'
import { conditionText, historyLine } from '../../../../src/domain/layout/wording/beltHistoryText'
import { factHelp, factName, standardName } from '../../../../src/domain/layout/wording/careWords'
import { ruleSetById } from '../../../../src/domain/rules/ruleSets'
import { belt, entry, facts, inspection } from '../../care/belts'
import { flatLayout, flatPlace } from '../../../support/flatLayout'

const said = (ruleSetId: string, change: Partial<BeltFacts>, today: string) => {
  const ruleSet = ruleSetById(ruleSetId)
  if (ruleSet === null) throw new Error(ruleSetId)
  const belted = facts(change)
  const age = beltAge(belted, ruleSet, today)
  return { age, belted, ruleSet, sentence: ageSentence(age, belted, ruleSet) }
}

describe('ageSentence', () => {
  it.each<[string, Partial<BeltFacts>, string, string]>([
    [
      'belt-standards',
      {},
      '2027-03-16',
      'Expired: the last day of use was 2027-03-15, 1 day ago. Take it out of use.',
    ],
    ['belt-standards', {}, '2027-03-15', 'Expires soon: today, 2027-03-15, is the last day of use.'],
    ['belt-standards', {}, '2027-03-13', 'Expires soon: the last day of use is 2027-03-15, in 2 days.'],
    ['belt-standards', {}, '2026-03-15', 'Not expired: the last day of use is 2027-03-15, in 365 days.'],
    [
      'belt-standards',
      { manufactured: '' },
      '2026-03-15',
      'Age not known: the date of manufacture is missing. Treat it as expired until that is settled.',
    ],
    [
      'belt-standards',
      { manufactured: '2026-04' },
      '2026-03-15',
      'Age not known: The date of manufacture, 2026-04, is still to come. Read the label again and correct it. Treat it as expired until that is settled.',
    ],
    [
      'workshop-practice',
      {},
      '2026-03-15',
      'No age rule: the rule set Workshop practice says nothing of the age of a belt with SFI 16.1 on its label, and its label states no year. The belt maker’s instructions decide.',
    ],
  ])('by %s of %o on %s', (ruleSetId, change, today, sentence) => {
    expect(said(ruleSetId, change, today).sentence).toBe(sentence)
  })

  it('says when only the label speaks', () => {
    const { age, belted, ruleSet } = said('workshop-practice', { labelYear: 2030 }, '2026-03-15')
    expect(silentSetText(age, belted, ruleSet)).toBe(
      'The rule set Workshop practice says nothing of the age of a belt with SFI 16.1 on its label; the year on its own label counts.',
    )
  })

  it('gives the span of the other rules, for orientation', () => {
    // SFI 16.1 made 2025-03-15: two years by SFI and IHRA, to the end of 2027 by the European student rules, four by USAC, five by NZ.
    const { age } = said('workshop-practice', {}, '2026-03-15')
    expect(orientationText(age, '2026-03-15')).toBe(
      'For orientation: other rules that speak of such a belt give last days from 2027-03-15 to 2030-03-15; none is past.',
    )
    expect(orientationText(age, '2028-01-01')).toContain('; the strictest is past.')
    expect(orientationText(age, '2031-01-01')).toContain('; all past.')
  })
})

describe('history', () => {
  it('names faults, what was left out, and what was corrected from and to', () => {
    const corrected = { kind: 'corrected', fact: 'standard', from: 'unreadable', to: 'sfi-16.1' } as const
    const entries = [
      entry('a', { kind: 'inspection', results: { cuts: 'fault', labels: 'sound' } }),
      entry('b', corrected),
      entry('c', inspection()),
    ]
    const [first, second, third] = entries.map((each) => historyLine(belt({ entries }), each).what)
    expect(first).toMatch(
      /^Inspected, FAULT: cuts, holes, burns\. Not looked at: fuzz and wear; .*bolts, tabs and bar\.$/,
    )
    expect(second).toBe('Standard corrected from label not readable to SFI 16.1.')
    expect(third).toBe('Inspected, no fault found. All 11 looked at.')
  })

  it('says who may put a belt back into use', () => {
    const crash = beltCondition(belt({ entries: [entry('a', { kind: 'crash' })] }))
    expect(conditionText(crash)).toBe(
      'Out of use. Crash of 2026-04-01: only the belt’s maker can put it back into use.',
    )
    const fault = beltCondition(belt({ entries: [entry('a', inspection('stitching'))] }))
    expect(conditionText(fault)).toBe(
      'Out of use. Fault found on 2026-04-01 (stitching): until the maker or a licensed person has looked at it.',
    )
  })
})

describe('names', () => {
  it('are there for every standard and fact', () => {
    expect(new Set(BELT_STANDARDS.map(standardName)).size).toBe(BELT_STANDARDS.length)
    expect(new Set(BELT_FACTS.map(factName)).size).toBe(BELT_FACTS.length)
    for (const fact of BELT_FACTS) expect(factHelp(fact)).not.toBe('')
  })
})

describe('beltCalendar', () => {
  const layout = {
    ...flatLayout([flatPlace()], { ruleSetId: 'belt-standards' }),
    belts: [
      belt({ id: 'belt-a', name: 'Left; right, both', inspectEveryMonths: 6, fitted: '2026-01-10' }),
      belt({ id: 'belt-b', manufactured: '' }),
    ],
  }

  it('reminds of the last day, thirty days before, and the next inspection, under names that stay', () => {
    expect(beltEvents(layout, '2026-06-01').map(({ uid, date }) => [uid, date])).toEqual([
      ['belt-a-last-day-ahead@tabwright.invalid', '2027-02-13'],
      ['belt-a-last-day@tabwright.invalid', '2027-03-15'],
      ['belt-a-inspection@tabwright.invalid', '2026-07-10'],
    ])
    const later = beltEvents(layout, '2026-06-20')
    expect(later.map(({ uid }) => uid)).toEqual(beltEvents(layout, '2026-06-01').map(({ uid }) => uid))
  })

  it('is read by an independent reader', () => {
    const text = beltCalendar(layout, '2026-06-01', Date.UTC(2026, 5, 1)) ?? ''
    const events = new ICAL.Component(ICAL.parse(text) as never).getAllSubcomponents('vevent')
    expect(events.map((each) => new ICAL.Event(each).summary)).toEqual([
      'Order a new belt: Left; right, both may be used to 2027-03-15',
      'Last day of use: Left; right, both',
      'Inspect Left; right, both',
    ])
  })

  it('is nothing where there is nothing to remind of', () => {
    expect(beltCalendar(flatLayout([flatPlace()]), '2026-06-01', 0)).toBeNull()
    expect(beltCalendar({ ...layout, belts: [belt({ manufactured: '' })] }, '2026-06-01', 0)).toBeNull()
  })
})
