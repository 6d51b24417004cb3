import { describe, expect, it } from 'vitest'
import { isWithin } from '../../../src/domain/rules/check'
import type { Rule } from '../../../src/domain/rules/rule'
import { DEFAULT_RULE_SET_ID, RULE_SETS, ruleById, ruleSetById } from '../../../src/domain/rules/ruleSets'

const RULES = RULE_SETS.flatMap((set) => set.rules)
const limitsOf = (rule: Rule): readonly number[] =>
  rule.kind === 'stated' ? [] : [rule.min, rule.max].filter((limit) => limit !== null)
const numbersIn = (text: string): readonly number[] =>
  (text.replaceAll(/(\d),(\d{3})/g, '$1$2').match(/\d+(\.\d+)?/g) ?? []).map(Number)

describe('RULE_SETS', () => {
  it('has three sets with unique ids, the default first', () => {
    expect(RULE_SETS.map((set) => set.id)).toEqual([
      'workshop-practice',
      'student-cars-2026',
      'us-road-anchorages-571-210',
    ])
    expect(RULE_SETS[0]?.id).toBe(DEFAULT_RULE_SET_ID)
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

  it.each(RULES.filter((rule) => rule.source.phrase !== null && limitsOf(rule).length > 0))(
    'quotes words for $id that carry its numbers',
    (rule) => {
      const quoted = numbersIn(rule.source.phrase ?? '')
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

/** Both sides of each published limit; the numbers are of the documents named, as read. */
const PUBLISHED = [
  // 49 CFR 571.210 S4.3.1.1: "not less than 30 degrees and not more than 75 degrees".
  { id: 'us-210-lap-fixed-seat', kept: [30, 75], broken: [29.99, 75.01] },
  { id: 'us-210-lap-adjustable-seat', kept: [30, 75], broken: [29.99, 75.01] },
  // 49 CFR 571.210 S4.3.1.4: "at least 165 mm apart laterally".
  { id: 'us-210-lap-spacing', kept: [165, 400], broken: [164.9] },
  // 49 CFR 571.209 S4.2(a): webbing width ≥ 46 mm.
  { id: 'us-209-webbing-width', kept: [46, 75], broken: [45.9] },
  // Formula SAE Rules 2026 V1 T.2.6: "between 10° above the horizontal and 20° below".
  { id: 'student-shoulder-drop', kept: [-10, 20], broken: [-10.01, 20.01] },
  // T.2.6: "between 175 mm and 235 mm".
  { id: 'student-shoulder-spacing', kept: [175, 235], broken: [174.9, 235.1] },
  // T.2.5: "between 45° and 65° to the horizontal"; "between 60° and 80°".
  { id: 'student-lap-angle-upright', kept: [45, 65], broken: [44.99, 65.01] },
  { id: 'student-lap-angle-reclined', kept: [60, 80], broken: [59.99, 80.01] },
  // T.2.7: "no more than 20°" forward of the chest line; "up to 20° rearwards"; "approximately 100 mm apart".
  { id: 'student-sub-five-point', kept: [-20, 0], broken: [-20.01, 0.01] },
  { id: 'student-sub-six-point', kept: [0, 20], broken: [-0.01, 20.01] },
  { id: 'student-sub-spacing', kept: [100], broken: [80, 120] },
  // T.2.4 tab thickness ≥ 1.6 mm; F.3 size B: ≥ 25 mm, ≥ 1.2 mm, ≥ 114 mm², ≥ 8 509 mm⁴.
  { id: 'student-tab-thickness', kept: [1.6], broken: [1.59] },
  { id: 'student-bar-diameter', kept: [25], broken: [24.99] },
  { id: 'student-bar-wall', kept: [1.2], broken: [1.19] },
  { id: 'student-bar-area', kept: [114], broken: [113.9] },
  // The document's own example 25.4 × 1.6 mm has π/64·(25.4⁴ − 22.2⁴) = 8 508.8 mm⁴ and must pass.
  {
    id: 'student-bar-second-moment',
    kept: [8509, (Math.PI / 64) * (25.4 ** 4 - 22.2 ** 4)],
    broken: [8508.4],
  },
  // Common practice, no source: lap wedge 45–60°, square ± our 5°, about 10° ± our 5° with a restraint, 90° − our 5°.
  { id: 'workshop-lap-angle', kept: [45, 60], broken: [44.99, 60.01] },
  { id: 'workshop-shoulder-square', kept: [-5, 0, 5], broken: [-5.01, 5.01] },
  { id: 'workshop-shoulder-with-restraint', kept: [5, 10, 15], broken: [4.99, 15.01] },
  { id: 'workshop-wrap-square', kept: [85, 90], broken: [84.99] },
  { id: 'workshop-lap-below-hip-bones', kept: [-20, 0], broken: [0.01] },
  { id: 'workshop-five-points', kept: [5, 7], broken: [4] },
]

describe.each(PUBLISHED)('the rule $id', ({ id, kept, broken }) => {
  const rule = ruleById(id)

  it('keeps values on its limits and breaks just beyond them', () => {
    if (rule === null || rule.kind === 'stated') throw new Error(`${id} is not checked`)
    for (const value of kept) expect(isWithin(value, rule)).toBe(true)
    for (const value of broken) expect(isWithin(value, rule)).toBe(false)
  })
})
