import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { ruleSetsOf } from '../../../src/domain/layout/document/ruleSetOf'
import { layoutNumbers } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { findingSentence } from '../../../src/domain/layout/wording/findingSentence'
import type { RuleSet } from '../../../src/domain/rules/rule'
import { RULE_SETS } from '../../../src/domain/rules/ruleSets'
import { withLeastSpacing } from '../../../src/domain/rules/spacing'
import { flatLayout, flatPlace, tabAt } from '../../support/flatLayout'
import { quantityRule } from '../zones/zoneCases'

/** Lap tabs so far to the left and to the right of the seat's middle. */
const lapAt = (leftMm: number, rightMm: number, change: Partial<Layout>): Layout =>
  flatLayout(
    [
      flatPlace({
        anchors: [
          tabAt('lap-left', { xMm: 150, yMm: -leftMm, zMm: -190 }),
          tabAt('lap-right', { xMm: 150, yMm: rightMm, zMm: -190 }),
        ],
      }),
    ],
    change,
  )

const findingOf = (layout: Layout, ruleId: string) => {
  const found = layoutNumbers(layout).places[0]?.findings.find((each) => each.ruleId === ruleId)
  if (found === undefined) throw new Error(`no finding ${ruleId}`)
  return found
}

describe('the spacing of exchanged anchors', () => {
  // 49 CFR 571.210 S4.3.1.4 (read): “at least 165 mm apart laterally”; school-bus seats 330 mm. 500 mm would do, exchanged too.
  it.each([
    ['us-school-bus-210', 'us-school-bus-lap-spacing'],
    ['us-road-anchorages-571-210', 'us-210-lap-spacing'],
    ['workshop-practice', 'workshop-lap-spacing'],
  ])('is never clear under %s', (ruleSetId, ruleId) => {
    expect(findingOf(lapAt(250, 250, { ruleSetId }), ruleId)).toMatchObject({ value: 500, verdict: 'kept' })
    const exchanged = lapAt(-250, -250, { ruleSetId })
    const finding = findingOf(exchanged, ruleId)
    expect(finding).toMatchObject({ value: -500, verdict: 'broken' })
    expect(findingSentence(finding, exchanged).what).toContain('or left and right are exchanged')
  })

  it('is not kept by a limit of the builder’s own that has no lower end', () => {
    const [any] = RULE_SETS
    if (any === undefined) throw new Error('no rule set')
    const own: RuleSet = {
      ...any,
      id: 'own',
      rules: [quantityRule('lap-spacing', null, 600, { id: 'close' })],
    }
    const change = { ruleSetId: 'own', ownRuleSets: [own] }
    expect(findingOf(lapAt(250, 250, change), 'close').verdict).toBe('kept')
    expect(findingOf(lapAt(-250, -250, change), 'close')).toMatchObject({
      verdict: 'broken',
      limit: { min: 0, max: 600 },
    })
  })
})

describe('withLeastSpacing', () => {
  it('changes no set of the program: each of its spacings has a lower end', () => {
    for (const set of RULE_SETS) expect(withLeastSpacing(set)).toBe(set)
  })

  it('leaves lower ends and other limits as they are', () => {
    const [any] = RULE_SETS
    if (any === undefined) throw new Error('no rule set')
    const rules = [
      quantityRule('lap-spacing', -20, 5),
      quantityRule('shoulder-spacing', null, 150),
      quantityRule('sub-spacing', null, 110),
    ]
    expect(withLeastSpacing({ ...any, rules }).rules).toEqual([rules[0], rules[1], { ...rules[2], min: 0 }])
    const unchanged = { ...any, id: 'own', rules: rules.slice(0, 2) }
    const found = ruleSetsOf({ ruleSetId: 'own', ownRuleSets: [unchanged] }).at(-1)
    expect(found?.rules).toEqual(unchanged.rules)
  })
})
