import { documentName } from '../../rules/confirmed'
import { quantityFamilies } from '../../rules/quantityFamilies'
import type { Rule, RuleSet } from '../../rules/rule'
import { RULE_SETS } from '../../rules/ruleSets'
import { PROPERTY_WORDS } from '../../rules/propertyWords'
import type { Contradiction } from './contradiction'
import type { Layout } from './layout'
import type { FieldPath } from './problem'
import { ruleSetOf, ruleSetsOf } from './ruleSetOf'

/** Where the chosen set, the own sets and the confirmed documents of a layout do not agree. */
export const ruleSetContradictions = (layout: Layout): readonly Contradiction[] => [
  ...chosenContradictions(layout),
  ...(layout.ownRuleSets ?? []).flatMap((set, index, all) => [
    ...setIdContradictions(all, set, index),
    ...set.rules.flatMap((rule, ruleIndex) =>
      ruleContradictions(set, rule, ['ownRuleSets', index, 'rules', ruleIndex]),
    ),
  ]),
  ...documentContradictions(layout),
]

const chosenContradictions = (layout: Layout): readonly Contradiction[] => {
  if (ruleSetOf(layout) !== null) return []
  const says = `there is no rule set "${layout.ruleSetId}"`
  const ids = ruleSetsOf(layout).map(({ id }) => id)
  return [
    {
      path: ['ruleSetId'],
      received: layout.ruleSetId,
      says,
      remedy: `Name one of these: ${ids.join(', ')}.`,
    },
  ]
}

const setIdContradictions = (
  all: readonly RuleSet[],
  set: RuleSet,
  index: number,
): readonly Contradiction[] => {
  const remedy = 'Give each rule set its own id.'
  const at = { path: ['ownRuleSets', index, 'id'], received: set.id, remedy }
  if (RULE_SETS.some(({ id }) => id === set.id))
    return [{ ...at, says: `the id "${set.id}" belongs to a rule set of the program` }]
  const first = all.findIndex(({ id }) => id === set.id)
  return first === index
    ? []
    : [{ ...at, says: `the id "${set.id}" is already used by own rule set ${first + 1}` }]
}

const ruleContradictions = (set: RuleSet, rule: Rule, path: FieldPath): readonly Contradiction[] => {
  const found: Contradiction[] = []
  const index = set.rules.indexOf(rule)
  const first = set.rules.findIndex(({ id }) => id === rule.id)
  if (first !== index) {
    const says = `the id "${rule.id}" is already used by rule ${first + 1} of this rule set`
    found.push({ path: [...path, 'id'], received: rule.id, says, remedy: 'Give each rule its own id.' })
  }
  if (rule.level === 'must' && rule.source.status === 'memory') {
    found.push({
      path: [...path, 'level'],
      received: rule.level,
      says: 'a figure from memory cannot be a must',
      remedy: 'Look the figure up and put the status "read", or take the level "advice".',
    })
  }
  return [...found, ...limitContradictions(rule, path)]
}

const limitContradictions = (rule: Rule, path: FieldPath): readonly Contradiction[] => {
  if (rule.kind === 'stated') return []
  const { min, max } = rule
  if (min !== null && max !== null && min > max) {
    const says = `the least, ${min}, is more than the most, ${max}`
    return [{ path: [...path, 'min'], received: min, says, remedy: 'Swap them or correct one of them.' }]
  }
  if (rule.kind === 'quantity') {
    const families = quantityFamilies(rule.quantity)
    if (rule.family !== null && !families.includes(rule.family)) {
      const says = `${rule.quantity} is not measured on ${rule.family} straps, so this rule would never speak`
      const wanted = ['null', ...families.map((family) => `"${family}"`)].join(' or ')
      return [{ path: [...path, 'family'], received: rule.family, says, remedy: `Put ${wanted} there.` }]
    }
  }
  const words = rule.kind === 'property' ? PROPERTY_WORDS[rule.property] : null
  return words === null ? withoutLimits(rule, path) : wordContradictions(rule, words, path)
}

const withoutLimits = (
  rule: Exclude<Rule, { kind: 'stated' }>,
  path: FieldPath,
): readonly Contradiction[] => {
  if (rule.kind === 'property' && rule.wanted !== null) {
    const says = `${rule.property} is a number and has no wanted words`
    const remedy = 'Give limits instead and put null here.'
    return [{ path: [...path, 'wanted'], received: rule.wanted, says, remedy }]
  }
  if (rule.min !== null || rule.max !== null) return []
  const remedy = 'Give the least, the most or both.'
  return [{ path: [...path, 'min'], received: null, says: 'the rule has no limit', remedy }]
}

const wordContradictions = (
  rule: Exclude<Rule, { kind: 'stated' }>,
  words: readonly string[],
  path: FieldPath,
): readonly Contradiction[] => {
  const wanted = rule.kind === 'property' ? rule.wanted : null
  const strange = wanted?.find((word) => !words.includes(word))
  if (wanted !== null && strange === undefined) return []
  const says =
    strange === undefined ? 'the rule names no word that would do' : `"${strange}" is no word for it`
  const remedy = `Name some of these: ${words.join(', ')}.`
  return [{ path: [...path, 'wanted'], received: wanted, says, remedy }]
}

const documentContradictions = (layout: Layout): readonly Contradiction[] => {
  const confirmed = layout.confirmedDocuments ?? []
  const known = new Set(
    ruleSetsOf(layout).flatMap(({ rules }) => rules.map(({ source }) => documentName(source))),
  )
  return confirmed.flatMap((name, index) => {
    const at = { path: ['confirmedDocuments', index], received: name }
    if (confirmed.indexOf(name) !== index)
      return [{ ...at, says: 'it is named twice', remedy: 'Name each document once.' }]
    if (known.has(name)) return []
    const remedy = 'Write "document, edition" as the rules give them, or take it out.'
    return [{ ...at, says: `no rule comes from "${name}"`, remedy }]
  })
}
