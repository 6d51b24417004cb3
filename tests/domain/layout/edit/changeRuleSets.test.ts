import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import { parseRuleSetText, ruleSetText } from '../../../../src/domain/layout/document/ruleSetText'
import {
  withDocumentConfirmed,
  withoutRule,
  withoutRuleSet,
  withRuleAdded,
  withRuleReplaced,
  withRuleSet,
  withRuleSetAdded,
  withRuleSetCopied,
} from '../../../../src/domain/layout/edit/changeRuleSets'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { canBeMust, newOwnRule, withOwnLimits } from '../../../../src/domain/layout/wording/ownRuleText'
import { documentsToConfirm } from '../../../../src/domain/rules/confirmed'
import type { Rule, RuleSet } from '../../../../src/domain/rules/rule'
import { RULE_SETS, ruleSetById } from '../../../../src/domain/rules/ruleSets'
import { QUANTITY_IDS } from '../../../../src/domain/straps/quantity'
import { flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

const layout = flatLayout([flatPlace({ anchors: tabPair('lap', { xMm: 200, yMm: 200, zMm: -200 }) })])
const copied = withRuleSetCopied(layout, 'student-cars-2026')
const setOf = (changed: Layout): RuleSet => {
  const [set] = changed.ownRuleSets ?? []
  if (set === undefined) throw new Error('no own set')
  return set
}
const ruleOfSet = (changed: Layout, id: string): Exclude<Rule, { kind: 'stated' }> => {
  const rule = setOf(changed).rules.find((each) => each.id === id)
  if (rule === undefined || rule.kind === 'stated') throw new Error(`no checked rule ${id}`)
  return rule
}
const isSound = (changed: Layout): boolean => parseLayout(changed).ok

describe('own rule sets', () => {
  it('start as a copy with the same rules and sources, chosen at once', () => {
    expect(setOf(copied).rules).toEqual(ruleSetById('student-cars-2026')?.rules)
    expect(setOf(copied)).toMatchObject({ group: 'Own', name: 'Student car rules 2026, own copy' })
    expect(copied.ruleSetId).toBe(setOf(copied).id)
    expect(isSound(copied)).toBe(true)
  })

  it('can be copied from every set of the program, and twice', () => {
    for (const { id } of RULE_SETS) expect(isSound(withRuleSetCopied(copied, id))).toBe(true)
    const twice = withRuleSetCopied(copied, setOf(copied).id)
    expect(new Set(twice.ownRuleSets?.map(({ id }) => id)).size).toBe(2)
  })

  it('take a changed limit as the builder’s own, with what it was changed from, and check it', () => {
    const before = ruleOfSet(copied, 'student-lap-angle-upright')
    const rule = withOwnLimits(before, { min: 40 })
    expect(rule.source).toMatchObject({ status: 'own', phrase: null })
    expect(rule.source.section).toContain('Formula SAE Rules')
    expect(rule.says).toBe('Lap angle: 40° to 65°.')
    const changed = withRuleReplaced(copied, setOf(copied).id, rule)
    expect(isSound(changed)).toBe(true)
    // The lap strap stands at atan(200/200) = 45°: on the old limit, 5° inside the new one.
    const finding = evaluateLayout(changed).places[0]?.findings.find(({ ruleId }) => ruleId === rule.id)
    expect(finding).toMatchObject({ limit: { min: 40, max: 65 }, source: { status: 'own' } })
    expect(finding?.verdict).not.toBe('broken')
  })

  it('take a new rule on any quantity, and lose one again', () => {
    const { id } = setOf(copied)
    const all = QUANTITY_IDS.reduce(
      (old, quantity) => withRuleAdded(old, id, newOwnRule(quantity, 'Us')),
      copied,
    )
    expect(setOf(all).rules.length).toBe(setOf(copied).rules.length + QUANTITY_IDS.length)
    expect(isSound(all)).toBe(true)
    expect(setOf(withoutRule(all, id, 'student-shoulder-drop')).rules.length).toBe(
      setOf(all).rules.length - 1,
    )
  })

  it('leave the default set chosen when the chosen one is deleted, and no trace', () => {
    expect(withoutRuleSet(copied, setOf(copied).id)).toEqual(layout)
    expect(withoutRuleSet(copied, 'student-cars-2026')).toBe(copied)
  })

  it('do not change a set of the program', () => {
    expect(withRuleSet(copied, 'student-cars-2026', (set) => ({ ...set, name: 'Other' }))).toBe(copied)
  })

  it('do not let a remembered figure become a must by hand', () => {
    const [remembered] = ruleSetById('drag-nhra')?.rules ?? []
    if (remembered === undefined || remembered.kind === 'stated') throw new Error('no rule')
    expect(canBeMust(remembered)).toBe(false)
    expect(canBeMust(withOwnLimits(remembered, { max: 120 }))).toBe(true)
    expect(withOwnLimits(remembered, { max: 120 }).confirmedLevel).toBeUndefined()
  })
})

describe('confirmed documents', () => {
  it('are added once and taken back without a trace', () => {
    const [name = ''] = documentsToConfirm(ruleSetById('drag-nhra') ?? setOf(copied))
    const confirmed = withDocumentConfirmed(withDocumentConfirmed(layout, name, true), name, true)
    expect(confirmed.confirmedDocuments).toEqual([name])
    expect(isSound(confirmed)).toBe(true)
    expect(withDocumentConfirmed(confirmed, name, false)).toEqual(layout)
  })
})

describe('a rule set file', () => {
  it('gives the set back, with a new id once it is added', () => {
    const parsed = parseRuleSetText(ruleSetText(setOf(copied)))
    if (!parsed.ok) throw new Error(parsed.error.map(({ message }) => message).join(' '))
    const added = withRuleSetAdded(copied, parsed.value)
    expect(added.ownRuleSets?.map(({ rules }) => rules)).toEqual([setOf(copied).rules, setOf(copied).rules])
    expect(isSound(added)).toBe(true)
  })

  it.each([
    ['', /The file is empty/],
    ['{"ruleSetFile": 1,\n "ruleSet": {', /not readable as JSON from line 2/],
    ['[]', /not a rule set file/],
    ['{"version": 1}', /not a rule set file/],
    ['{"ruleSetFile": 2, "ruleSet": {}}', /says version 2; this program reads version 1/],
    ['{"ruleSetFile": 1, "ruleSet": null}', /found/],
    [ruleSetText({ ...setOf(copied), name: 7 as never }), /name: found 7/],
    [
      ruleSetText({ ...setOf(copied), rules: [{ ...ruleOfSet(copied, 'student-shoulder-drop'), min: 30 }] }),
      /the least, 30, is more than the most, 20/,
    ],
  ])('is refused with a reason: %#', (text, message) => {
    const parsed = parseRuleSetText(text)
    expect(parsed.ok ? [] : parsed.error.map((problem) => problem.message).join(' ')).toMatch(message)
  })
})
