import { describe, expect, it } from 'vitest'
import { isWithin } from '../../../src/domain/rules/check'
import { type Rule, RULE_SET_GROUPS } from '../../../src/domain/rules/rule'
import { DEFAULT_RULE_SET_ID, RULE_SETS, ruleById, ruleSetById } from '../../../src/domain/rules/ruleSets'
import { PUBLISHED } from './publishedLimits'

const RULES = RULE_SETS.flatMap((set) => set.rules)
const limitsOf = (rule: Rule): readonly number[] =>
  rule.kind === 'stated' ? [] : [rule.min, rule.max].filter((limit) => limit !== null)
const numbersIn = (text: string): readonly number[] =>
  (text.replaceAll(/(\d),(\d{3})/g, '$1$2').match(/\d+(\.\d+)?/g) ?? []).map(Number)

describe('RULE_SETS', () => {
  it('has sets with unique ids, the default first, each group together and in the order of the groups', () => {
    expect(new Set(RULE_SETS.map((set) => set.id)).size).toBe(RULE_SETS.length)
    expect(RULE_SETS[0]?.id).toBe(DEFAULT_RULE_SET_ID)
    const places = RULE_SETS.map((set) => RULE_SET_GROUPS.indexOf(set.group))
    expect(places).toEqual(places.toSorted((a, b) => a - b))
    expect(RULE_SETS.map((set) => set.group)).not.toContain('Own')
  })

  it('counts a figure from memory as advice and one quoted second-hand as no must, until it is confirmed', () => {
    const ofStatus = (...statuses: readonly string[]) =>
      RULES.filter((rule) => statuses.includes(rule.source.status))
    expect(ofStatus('memory').every((rule) => rule.level === 'advice')).toBe(true)
    expect(ofStatus('second-hand').every((rule) => rule.level !== 'must')).toBe(true)
    // Only what a document orders more strongly has something to confirm.
    expect(
      ofStatus('read', 'common-practice', 'judgement').every((rule) => rule.confirmedLevel === undefined),
    ).toBe(true)
    expect(RULES.every((rule) => rule.confirmedLevel !== rule.level)).toBe(true)
    expect(RULES.filter((rule) => rule.source.status === 'memory').length).toBeGreaterThan(5)
  })

  it('has rule ids that are unique over all sets', () => {
    const ids = RULES.map((rule) => rule.id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(ids.every((id) => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(id))).toBe(true)
  })

  it('orders nothing as a must that was not read in the document', () => {
    const musts = RULES.filter((rule) => rule.level === 'must')
    expect(musts.length).toBeGreaterThan(0)
    expect(musts.filter((rule) => rule.source.status !== 'read').map((rule) => rule.id)).toEqual([])
  })

  it('orders nothing as a must in workshop practice', () => {
    expect(ruleSetById('workshop-practice')?.rules.filter((rule) => rule.level === 'must')).toEqual([])
  })

  it('claims no words for common practice, which has no source', () => {
    const trade = RULES.map(({ source }) => source).filter(({ status }) => status === 'common-practice')
    expect(trade.length).toBeGreaterThan(10)
    for (const source of trade) {
      expect(source.phrase).toBeNull()
      expect(source.edition).toBe('no source')
    }
  })

  it('says of every limit of ours that it is ours, and has none but in workshop practice', () => {
    const ours = RULES.filter(({ source }) => source.status === 'judgement')
    expect(ours.map(({ id }) => id)).toEqual([
      'workshop-clear-of-person',
      'workshop-tab-at-tube',
      'workshop-eye-at-tube',
      'workshop-shoulder-pair-alike',
      'workshop-lap-pair-alike',
      'workshop-sub-pair-alike',
    ])
    for (const { source, level } of ours) {
      expect(source).toMatchObject({ document: 'Our judgement', edition: 'no source', phrase: null })
      expect(level).not.toBe('must')
    }
  })

  it.each(RULES.filter((rule) => rule.source.phrase !== null && limitsOf(rule).length > 0))(
    'quotes words for $id that carry its numbers',
    (rule) => {
      const phrase = rule.source.phrase ?? ''
      // "4\" to 6\"" is in inches of exactly 25.4 mm; "vertical" is 90° from level.
      const quoted = [
        ...numbersIn(phrase),
        ...(phrase.includes('"') ? numbersIn(phrase).map((inches) => inches * 25.4) : []),
        ...(phrase.includes('vertical') ? [90] : []),
        // Where the words give an angle without its tolerance, the caveat says that the 5° are ours.
        ...(rule.caveat?.includes('The 5° is our tolerance') ? numbersIn(phrase).map((deg) => deg - 5) : []),
      ].map((number) => Number(number.toFixed(6)))
      const own = limitsOf(rule)
        .map(Math.abs)
        .filter((limit) => limit !== 0)
      // "approximately 100 mm" became 90…110: there the middle is what was quoted.
      const middle = limitsOf(rule).reduce((sum, limit) => sum + limit, 0) / limitsOf(rule).length
      expect(own.every((limit) => quoted.includes(limit)) || quoted.includes(middle)).toBe(true)
    },
  )

  it.each(RULES.filter((rule) => limitsOf(rule).length > 0))(
    'says the limits of $id in its sentence',
    (rule) => {
      const said = [...numbersIn(rule.says), ...numbersIn(rule.caveat ?? '')]
      const words = new Map([
        ['five', 5],
        ['six', 6],
        ['Six', 6],
        ['in line', 0],
        ['vertically', 0],
        ['below the', 0],
      ])
      for (const [word, number] of words) if (rule.says.includes(word)) said.push(number)
      for (const limit of limitsOf(rule)) expect(said).toContain(Math.abs(limit))
    },
  )

  it.each(RULES)('writes $id as plain sentences', (rule) => {
    const sentences = [rule.says, rule.why, rule.caveat].filter((text) => text !== null)
    for (const sentence of sentences) {
      expect(sentence).toMatch(/^[A-Z0-9]/)
      expect(sentence).toMatch(/\.$/)
      expect(sentence).not.toMatch(/undefined|NaN|null/)
    }
  })

  it('has a limit for every rule that is checked, the lower not above the upper', () => {
    for (const rule of RULES) {
      if (rule.kind === 'stated') continue
      const isWorded = rule.kind === 'property' && rule.wanted !== null
      expect(limitsOf(rule).length > 0).toBe(!isWorded)
      expect(rule.min ?? Number.NEGATIVE_INFINITY).toBeLessThan(rule.max ?? Number.POSITIVE_INFINITY)
    }
  })

  it('finds a set and a rule by id and nothing for an unknown one', () => {
    expect(ruleSetById('student-cars-2026')?.name).toBe('Student car rules 2026')
    expect(ruleSetById('no-such-set')).toBeNull()
    expect(ruleById('us-210-lap-spacing')?.source.section).toBe('S4.3.1.4')
    expect(ruleById('no-such-rule')).toBeNull()
  })
})

it('holds both sides of the limit of every numeric rule against its source', () => {
  const listed = new Set(PUBLISHED.map(({ id }) => id))
  expect(
    RULES.filter((rule) => limitsOf(rule).length > 0 && !listed.has(rule.id)).map(({ id }) => id),
  ).toEqual([])
})

describe.each(PUBLISHED)('the rule $id', ({ id, kept, broken }) => {
  const rule = ruleById(id)

  it('keeps values on its limits and breaks just beyond them', () => {
    if (rule === null || rule.kind === 'stated') throw new Error(`${id} is not checked`)
    for (const value of kept) expect(isWithin(value, rule)).toBe(true)
    for (const value of broken) expect(isWithin(value, rule)).toBe(false)
  })
})
