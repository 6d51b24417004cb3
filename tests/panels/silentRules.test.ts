import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../src/domain/layout/document/empty'
import type { Layout } from '../../src/domain/layout/document/layout'
import { addAnchor, asWrap, withAnchor } from '../../src/domain/layout/edit/changeAnchors'
import { addTube } from '../../src/domain/layout/edit/changeTubes'
import { layoutNumbers } from '../../src/domain/layout/evaluate/evaluateLayout'
import type { RuleSource } from '../../src/domain/rules/rule'
import type { Rule, RuleSet } from '../../src/domain/rules/rule'
import { silentRules } from '../../src/panels/silentRules'

const source: RuleSource = { document: '', section: '', edition: '', status: 'own', phrase: null }
const base = { level: 'should', source, when: {}, says: '', why: '', caveat: null } as const
const quantity = (id: string, change: Partial<Extract<Rule, { kind: 'quantity' }>>): Rule => ({
  ...base,
  id,
  kind: 'quantity',
  quantity: 'lap-angle',
  family: null,
  min: 0,
  max: 90,
  ...change,
})

/** About a lap strap, a wrap, a belt that is not worn here, a property of wraps, and what nobody can compute. */
const set: RuleSet = {
  id: 'test',
  name: 'Test',
  edition: '',
  group: 'Own',
  about: '',
  rules: [
    quantity('lap', {}),
    quantity('wrap', { quantity: 'wrap-square' }),
    quantity('three-point', { when: { arrangements: [3] } }),
    {
      ...base,
      id: 'hoops',
      kind: 'property',
      property: 'wrap-guide-hoops',
      family: null,
      min: null,
      max: null,
      wanted: ['yes'],
    },
    { ...base, id: 'stated', kind: 'stated' },
  ],
}

const silentIn = (layout: Layout) => {
  const [place] = layout.places
  if (place === undefined) throw new Error('no place')
  const own = { ...layout, ownRuleSets: [set], ruleSetId: set.id }
  const silent = silentRules(set, layoutNumbers(own).places[0]?.findings ?? [], own, place)
  const ids = (rules: readonly Rule[]) => rules.map(({ id }) => id)
  return {
    withoutPart: ids(silent.withoutPart),
    otherCase: ids(silent.otherCase),
    statedOnly: ids(silent.statedOnly),
  }
}

describe('silentRules', () => {
  it('names the rules whose part is missing apart from those for another case and those that nobody checks', () => {
    expect(silentIn(emptyLayout())).toEqual({
      withoutPart: ['wrap', 'hoops'],
      otherCase: ['three-point'],
      statedOnly: ['stated'],
    })
  })

  it('leaves out a rule as soon as its part is there', () => {
    const barred = addAnchor(addTube(emptyLayout(), 'harness-bar'), 'place-1', 'shoulder-left')
    const anchor = barred.places[0]?.anchors[0]
    const bar = barred.tubes[0]
    if (anchor === undefined || bar === undefined) throw new Error('no anchor or no bar')
    const wrapped = withAnchor(barred, 'place-1', anchor.id, asWrap(anchor, bar.id))
    expect(silentIn(wrapped)).toEqual({
      withoutPart: [],
      otherCase: ['three-point'],
      statedOnly: ['stated'],
    })
  })
})
