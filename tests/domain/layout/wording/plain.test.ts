import { describe, expect, it } from 'vitest'

import { layoutNumbers, evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { PLAIN_GROUPS, plainFindings, plainSource } from '../../../../src/domain/layout/wording/plainFinding'
import { plainPartName, plainParts } from '../../../../src/domain/layout/wording/plainNames'
import { plainProperty, plainPropertyFault } from '../../../../src/domain/layout/wording/plainProperties'
import { plainQuantity } from '../../../../src/domain/layout/wording/plainQuantities'
import { plainQuestions } from '../../../../src/domain/layout/wording/plainQuestions'
import { STATED_TOPICS, statedTopic } from '../../../../src/domain/layout/wording/plainStated'
import { PROPERTY_WORDS } from '../../../../src/domain/rules/propertyWords'
import {
  PROPERTY_IDS,
  type Rule,
  type RuleSource,
  type SourceStatus,
} from '../../../../src/domain/rules/rule'
import { RULE_SETS } from '../../../../src/domain/rules/ruleSets'
import { QUANTITY_IDS } from '../../../../src/domain/straps/quantity'
import { exampleIndex, exampleLayout } from '../../../support/exampleLayouts'

const rules: readonly Rule[] = RULE_SETS.flatMap((set) => set.rules)
const OWN_LIMIT = /workshop’s own limit/

/** Every sentence that a customer may read which is not from a rule book. */
const everySentence: readonly string[] = [
  ...QUANTITY_IDS.flatMap((id) => {
    const { topic, number, low, high, aim, limit } = plainQuantity(id)
    return [topic, number, low.fact, low.means, high.fact, high.means, aim, limit]
  }),
  ...PROPERTY_IDS.flatMap((id) => {
    const { topic, number, faults, aim, limit } = plainProperty(id)
    return [topic, number, aim, limit, ...Object.values(faults).flatMap(({ fact, means }) => [fact, means])]
  }),
  ...Object.values(STATED_TOPICS).flatMap(({ ask, means }) => [ask, means]),
]

describe('plain words over every rule set of the program', () => {
  it('have for every limit on a number what lies beyond it means for the person', () => {
    const without = rules.filter((rule) => {
      if (rule.kind === 'stated' || (rule.kind === 'property' && rule.wanted !== null)) return false
      const { low, high } =
        rule.kind === 'quantity'
          ? plainQuantity(rule.quantity)
          : {
              low: plainPropertyFault(rule.property, -Infinity, { ...rule, wanted: null }),
              high: plainPropertyFault(rule.property, Infinity, { ...rule, wanted: null }),
            }
      return (
        (rule.min !== null && OWN_LIMIT.test(low.fact)) || (rule.max !== null && OWN_LIMIT.test(high.fact))
      )
    })
    expect(without.map(({ id }) => id)).toEqual([])
  })

  it('have for every word that a rule does not want what it means for the person', () => {
    const without = rules.flatMap((rule) => {
      if (rule.kind !== 'property' || rule.wanted === null) return []
      const { wanted, property, id } = rule
      const unwanted = (PROPERTY_WORDS[property] ?? []).filter((word) => !wanted.includes(word))
      return unwanted
        .filter((word) => OWN_LIMIT.test(plainPropertyFault(property, word, rule).fact))
        .map((word) => `${id}: ${word}`)
    })
    expect(without).toEqual([])
  })

  it('have a question for every rule that no drawing can show, and for no other', () => {
    const stated = rules.filter(({ kind }) => kind === 'stated')
    expect(stated.length).toBeGreaterThan(90)
    expect(stated.filter(({ id }) => statedTopic(id) === null).map(({ id }) => id)).toEqual([])
    for (const { rules: own } of RULE_SETS) {
      const asked = plainQuestions(own).flatMap((question) => question.rules.map(({ ruleId }) => ruleId))
      expect([...asked].sort()).toEqual(
        own
          .filter(({ kind }) => kind === 'stated')
          .map(({ id }) => id)
          .sort(),
      )
    }
  })

  it('ask a rule of the workshop’s own in its own words', () => {
    const source: RuleSource = {
      document: 'Own rule',
      section: '',
      edition: '',
      status: 'own',
      phrase: null,
    }
    const own: Rule = {
      kind: 'stated',
      id: 'own-1',
      level: 'should',
      source,
      when: {},
      says: 'The tank is behind the wall.',
      why: 'Fuel burns.',
      caveat: null,
    }
    expect(plainQuestions([own])).toMatchObject([
      { ask: 'The tank is behind the wall.', means: 'Fuel burns.' },
    ])
  })

  it('use no word of the trade', () => {
    const JARGON =
      /torso|anti-sub|submarin|webbing|harness|\bshear\b|\bdatum\b|hip point|recline|effective|anchor|elevation|\bstraps?\b|clevis|lateral|sittings?\b|\bASIS\b|pelvi|ergonom|mm[²⁴]/i
    expect(
      everySentence.filter((sentence) => JARGON.test(sentence) && !/sitting still/.test(sentence)),
    ).toEqual([])
  })

  it('say of a number beyond its limit only that it is beyond what is asked for, because limits differ', () => {
    const BEYOND = /(than|less than|more than) asked for|than the workshop’s own limit/
    for (const id of QUANTITY_IDS) {
      const { low, high } = plainQuantity(id)
      expect(low.fact).toMatch(BEYOND)
      expect(high.fact).toMatch(BEYOND)
    }
    for (const id of PROPERTY_IDS) {
      const faults: Readonly<Record<string, { readonly fact: string }>> = plainProperty(id).faults
      for (const side of ['low', 'high']) expect(faults[side]?.fact ?? 'than asked for').toMatch(BEYOND)
    }
  })

  it('say of what is kept only that it is, whatever its limits are, and what the rule is for', () => {
    for (const { file } of exampleIndex) {
      for (const { id } of RULE_SETS) {
        const layout = { ...exampleLayout(file), ruleSetId: id }
        const findings = layoutNumbers(layout).places.flatMap((place) => place.findings)
        for (const { group, fact, means } of plainFindings(findings, layout)) {
          if (group !== 'within') continue
          expect(fact).toBe('Within what this rule asks for.')
          expect(means).toMatch(/^Such rules are there so that [a-z].*\.$/)
        }
      }
    }
  })

  it('promise no safety', () => {
    expect(
      everySentence.filter((sentence) => /\bsafe|protect|guarant|certif|surviv|secure you/i.test(sentence)),
    ).toEqual([])
  })

  it('are whole sentences, each with its stop', () => {
    for (const { ask, means } of Object.values(STATED_TOPICS)) {
      expect(ask).toMatch(/^[A-Z].*\?$/)
      expect(means).toMatch(/^[A-Z].*\.$/)
    }
    for (const id of QUANTITY_IDS) {
      const { number, low, high, aim, limit } = plainQuantity(id)
      for (const sentence of [number, low.fact, low.means, high.fact, high.means, limit])
        expect(sentence).toMatch(/^[A-Z].*\.$/)
      // It follows "so that".
      expect(aim).toMatch(/^[a-z].*[^.]$/)
    }
    for (const id of PROPERTY_IDS) expect(plainProperty(id).aim).toMatch(/^[a-z].*[^.]$/)
  })
})

describe('plainSource', () => {
  it('tells every way a figure can have reached us from every other', () => {
    const statuses: readonly SourceStatus[] = [
      'read',
      'second-hand',
      'memory',
      'common-practice',
      'judgement',
      'own',
    ]
    const words = statuses.map((status) =>
      plainSource({ document: 'Book', edition: '2026', section: '', status, phrase: null }),
    )
    expect(new Set(words).size).toBe(statuses.length)
    expect(words[0]).toBe('Read in the rule book itself: Book, 2026.')
    expect(words[3]).toBe('Workshop habit; no rule book is known that says it.')
  })
})

describe('plainFindings', () => {
  it('hold every finding of every example once, the heaviest first', () => {
    for (const { file } of exampleIndex) {
      const layout = exampleLayout(file)
      const { places } = layoutNumbers(layout)
      const findings = places.flatMap((place) => place.findings)
      const plain = plainFindings(findings, layout)
      const held = plain.flatMap(({ cases }) => cases.map(({ finding }) => finding.id))
      expect([...held].sort()).toEqual(findings.map(({ id }) => id).sort())
      const order = plain.map(({ group }) => PLAIN_GROUPS.indexOf(group))
      expect(order).toEqual([...order].sort((a, b) => a - b))
      for (const { cases, group } of plain) {
        for (const { finding, measured } of cases) {
          expect(finding.verdict === 'broken').toBe(group === 'outside')
          expect(finding.value === null || measured.includes('asked for: ')).toBe(true)
        }
      }
    }
  })

  it('say of a number below its limits what low means, and of one above what high means', () => {
    let low = 0
    let high = 0
    for (const { file } of exampleIndex) {
      const layout = exampleLayout(file)
      const findings = layoutNumbers(layout).places.flatMap((place) => place.findings)
      for (const { group, fact, means, cases } of plainFindings(findings, layout)) {
        for (const { finding } of group === 'outside' ? cases : []) {
          const { quantity, value, limit } = finding
          const id = QUANTITY_IDS.find((each) => each === quantity)
          if (id === undefined || typeof value !== 'number') continue
          const isLow = value < (limit.min ?? -Infinity)
          expect(isLow || value > (limit.max ?? Infinity)).toBe(true)
          expect({ fact, means }).toEqual(plainQuantity(id)[isLow ? 'low' : 'high'])
          if (isLow) low += 1
          else high += 1
        }
      }
    }
    expect(Math.min(low, high)).toBeGreaterThan(0)
  })

  it('say of a belt that is too flat what it does, with the number and for whom', () => {
    const layout = exampleLayout('everything-wrong.layout.json')
    const findings = evaluateLayout(layout).places.flatMap((place) => place.findings)
    const outside = plainFindings(findings, layout).filter(({ group }) => group === 'outside')
    const lap = outside.find(({ topic }) => topic === 'How the lap belt holds your hips')
    expect(lap?.fact).toMatch(/^The lap belt (lies flatter|stands steeper) than asked for\.$/)
    expect(lap?.cases[0]?.measured).toMatch(/^\d+(\.\d+)?° \(.+\); asked for: /)
  })
})

describe('plainParts', () => {
  it('name every anchor, slot and tube of every example, none twice', () => {
    for (const { file } of exampleIndex) {
      const layout = exampleLayout(file)
      const parts = plainParts(layout)
      const count =
        layout.tubes.length +
        layout.places.reduce((sum, { anchors, seat }) => sum + 1 + anchors.length + seat.slots.length, 0)
      expect(parts).toHaveLength(count)
      expect(new Set(parts.map(({ partId }) => partId)).size).toBe(count)
      for (const { partId, name } of parts) expect(plainPartName(partId, layout)).toBe(name)
    }
  })

  it('know the whole, and a part that is gone', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    expect(plainPartName('', layout)).toBe('the whole car')
    expect(plainPartName('anchor:driver:none', layout)).toBe('a part that is no longer drawn')
    expect(plainPartName('tube:none', layout)).toBe('a part that is no longer drawn')
  })
})
