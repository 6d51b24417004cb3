import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayout, parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import { ruleOf, ruleSetOf, ruleSetsOf } from '../../../../src/domain/layout/document/ruleSetOf'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { findingSentence } from '../../../../src/domain/layout/wording/findingSentence'
import { documentsToConfirm } from '../../../../src/domain/rules/confirmed'
import type { QuantityRule, Rule, RuleSet } from '../../../../src/domain/rules/rule'
import { RULE_SETS, ruleSetById } from '../../../../src/domain/rules/ruleSets'
import { flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

const lapRule: QuantityRule = {
  kind: 'quantity',
  id: 'steep-lap',
  level: 'must',
  source: { document: 'House rule', section: '', edition: '', status: 'own', phrase: null },
  when: {},
  says: 'Lap angle 50° to 60°.',
  why: 'The customer asked for it.',
  caveat: null,
  quantity: 'lap-angle',
  family: null,
  min: 50,
  max: 60,
}
const ownSet = (rules: readonly Rule[], id = 'house'): RuleSet => ({
  id,
  name: 'House rules',
  edition: '',
  group: 'Own',
  about: '',
  rules,
})
/** A shell that ends above the hips, so that no lap strap needs a slot. */
const openSeat = {
  ...flatPlace().seat,
  sideOutline: [
    { xMm: 120, zMm: 150 },
    { xMm: 120, zMm: 480 },
    { xMm: 100, zMm: 480 },
  ],
}
const house = (rules: readonly Rule[]): Layout =>
  flatLayout([flatPlace({ seat: openSeat, anchors: tabPair('lap', { xMm: 200, yMm: 230, zMm: -200 }) })], {
    ruleSetId: 'house',
    ownRuleSets: [ownSet(rules)],
  })

/** Messages of the problems of a layout that should not be read. */
const problemsOf = (input: unknown): readonly string[] => {
  const parsed = parseLayout(input)
  return parsed.ok ? [] : parsed.error.map(({ path, message, remedy }) => `${path}: ${message} ${remedy}`)
}

describe('own rule sets', () => {
  it('are chosen by the layout and used by the evaluation', () => {
    const layout = house([lapRule])
    // atan(200/200) = 45°, which is below 50°.
    const finding = evaluateLayout(layout).places[0]?.findings[0]
    expect(finding).toMatchObject({ ruleId: 'steep-lap', verdict: 'broken', level: 'must' })
    expect(finding?.value).toBeCloseTo(45, 9)
    if (finding === undefined) throw new Error('nothing found')
    expect(findingSentence(finding, layout)).toMatchObject({
      why: 'The customer asked for it.',
      source: 'House rule (a limit of your own)',
    })
  })

  it('come back from a file as they were, and every set of the program would too as a copy', () => {
    for (const set of RULE_SETS) {
      const layout: Layout = { ...house([lapRule]), ownRuleSets: [{ ...set, id: 'house', group: 'Own' }] }
      const parsed = parseLayoutText(layoutText(layout))
      expect(parsed).toEqual({ ok: true, value: layout })
    }
  })

  it('take a changed copy of a rule before the original of the same id', () => {
    const original = ruleSetById('workshop-practice')?.rules[0]
    if (original === undefined) throw new Error('no rule')
    expect(ruleOf(house([{ ...original, says: 'Changed.' }]), original.id)?.says).toBe('Changed.')
    expect(ruleOf(house([lapRule]), original.id)?.says).toBe(original.says)
  })

  it.each([
    ['a must from memory', { source: { ...lapRule.source, status: 'memory' as const } }, /cannot be a must/],
    ['limits the wrong way round', { min: 60, max: 50 }, /least, 60, is more than the most, 50/],
    ['no limits', { min: null, max: null }, /the rule has no limit/],
    ['a family that has no such quantity', { family: 'sub' as const }, /not measured on sub straps/],
    ['an unknown quantity', { quantity: 'lap-angel' as never }, /found "lap-angel"/],
    ['a limit that is not a number', { min: 'steep' as never }, /found "steep"/],
  ])('refuse %s, and say where', (_what, change, message) => {
    const problems = problemsOf(house([{ ...lapRule, ...change }]))
    expect(problems).toHaveLength(1)
    expect(problems[0]).toMatch(/^ownRuleSets\[0\]\.rules\[0\]/)
    expect(problems[0]).toMatch(message)
  })

  it('refuse words that a property does not have, and numbers for words', () => {
    const property = {
      ...lapRule,
      kind: 'property' as const,
      property: 'belt-buckle' as const,
      min: null,
      max: null,
    }
    const { quantity: _quantity, ...plain } = property
    expect(problemsOf(house([{ ...plain, wanted: ['velcro'] }]))[0]).toMatch(/"velcro" is no word for it/)
    expect(problemsOf(house([{ ...plain, wanted: null }]))[0]).toMatch(/names no word/)
    expect(problemsOf(house([{ ...plain, property: 'webbing-width', wanted: ['75'] }]))[0]).toMatch(
      /is a number/,
    )
    expect(problemsOf(house([{ ...plain, wanted: ['rotary-cam'] }]))).toEqual([])
  })

  it('refuse ids that are taken', () => {
    expect(problemsOf(house([lapRule, lapRule]))[0]).toMatch(/already used by rule 1/)
    const twice = { ...house([lapRule]), ownRuleSets: [ownSet([lapRule]), ownSet([lapRule])] }
    expect(problemsOf(twice)[0]).toMatch(/already used by own rule set 1/)
    const taken = { ...house([lapRule]), ruleSetId: 'house', ownRuleSets: [ownSet([], 'workshop-practice')] }
    expect(problemsOf(taken).join(' ')).toMatch(/belongs to a rule set of the program/)
  })
})

describe('confirmed documents', () => {
  const withDocuments = (confirmedDocuments: readonly string[]): Layout =>
    flatLayout([flatPlace()], { ruleSetId: 'drag-nhra', confirmedDocuments })

  it('give a remembered figure the level of its document, and nothing else', () => {
    const [name = ''] = documentsToConfirm(ruleSetOf(withDocuments([])) ?? ownSet([]))
    expect(ruleSetOf(withDocuments([]))?.rules[0]?.level).toBe('advice')
    const confirmed = withDocuments([name])
    expect(ruleSetOf(confirmed)?.rules[0]?.level).toBe('must')
    expect(evaluateLayout(confirmed).places[0]?.findings.map(({ level }) => level)).toEqual(['must', 'must'])
    const others = (layout: Layout) => ruleSetsOf(layout).filter(({ id }) => id !== 'drag-nhra')
    expect(others(confirmed)).toEqual(others(withDocuments([])))
    expect(problemsOf(confirmed)).toEqual([])
  })

  it('are refused when no rule comes from them or one is named twice', () => {
    expect(problemsOf(withDocuments(['Nobody’s rules, 1999']))[0]).toMatch(
      /no rule comes from "Nobody’s rules, 1999"/,
    )
    const [name = ''] = documentsToConfirm(ruleSetOf(withDocuments([])) ?? ownSet([]))
    expect(problemsOf(withDocuments([name, name]))[0]).toMatch(/named twice/)
  })
})
