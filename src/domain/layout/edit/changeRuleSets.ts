import { documentName } from '../../rules/confirmed'
import type { QuantityRule, Rule, RuleSet } from '../../rules/rule'
import { DEFAULT_RULE_SET_ID, RULE_SETS, ruleSetById } from '../../rules/ruleSets'
import type { QuantityId } from '../../straps/quantity'
import type { Layout } from '../document/layout'
import { COUNTS } from '../document/limits'
import { ruleSetsOf } from '../document/ruleSetOf'
import { freshId } from './change'

/** The layout with these own sets; without the field when there are none, and without documents that no rule comes from any more. */
const withOwnSets = (layout: Layout, ownRuleSets: readonly RuleSet[]): Layout => {
  const { ownRuleSets: _before, confirmedDocuments: _confirmed, ...rest } = layout
  const changed: Layout = ownRuleSets.length === 0 ? rest : { ...rest, ownRuleSets }
  return withDocuments(changed, layout.confirmedDocuments ?? [])
}

const withDocuments = (layout: Layout, documents: readonly string[]): Layout => {
  const known = new Set(
    ruleSetsOf({ ...layout, confirmedDocuments: [] }).flatMap(({ rules }) =>
      rules.map(({ source }) => documentName(source)),
    ),
  )
  const kept = documents.filter((name) => known.has(name))
  const { confirmedDocuments: _before, ...rest } = layout
  return kept.length === 0 ? rest : { ...rest, confirmedDocuments: kept }
}

/** One more own set, chosen at once; the layout as it was when it holds as many as it can. Its id is made new. */
export const withRuleSetAdded = (layout: Layout, set: RuleSet): Layout => {
  const own = layout.ownRuleSets ?? []
  if (own.length >= COUNTS.ownRuleSets.max) return layout
  const id = freshId('own-rules', own)
  return { ...withOwnSets(layout, [...own, { ...set, id, group: 'Own' }]), ruleSetId: id }
}

/** A copy of a set as one's own, with the same rules and sources, chosen at once. */
export const withRuleSetCopied = (layout: Layout, setId: string): Layout => {
  // The set as it is, not with its levels raised by confirmed documents: those stay the layout's to say.
  const set = [...RULE_SETS, ...(layout.ownRuleSets ?? [])].find(({ id }) => id === setId)
  if (set === undefined) return layout
  return withRuleSetAdded(layout, { ...set, name: `${set.name}, own copy` })
}

/** Without an own set; when it was the chosen one, the default set is. */
export const withoutRuleSet = (layout: Layout, setId: string): Layout => {
  const own = layout.ownRuleSets ?? []
  if (!own.some(({ id }) => id === setId)) return layout
  const ruleSetId = layout.ruleSetId === setId ? DEFAULT_RULE_SET_ID : layout.ruleSetId
  return withOwnSets(
    { ...layout, ruleSetId },
    own.filter(({ id }) => id !== setId),
  )
}

/** An own set with other words or rules; the layout as it was for a set of the program. */
export const withRuleSet = (layout: Layout, setId: string, change: (set: RuleSet) => RuleSet): Layout => {
  const own = layout.ownRuleSets ?? []
  if (ruleSetById(setId) !== null || !own.some(({ id }) => id === setId)) return layout
  return withOwnSets(
    layout,
    own.map((set) => (set.id === setId ? change(set) : set)),
  )
}

export const withoutRule = (layout: Layout, setId: string, ruleId: string): Layout =>
  withRuleSet(layout, setId, (set) => ({ ...set, rules: set.rules.filter(({ id }) => id !== ruleId) }))

export const withRuleReplaced = (layout: Layout, setId: string, rule: Rule): Layout =>
  withRuleSet(layout, setId, (set) => ({
    ...set,
    rules: set.rules.map((each) => (each.id === rule.id ? rule : each)),
  }))

/** One more rule at the end of an own set; its id is made new from the quantity's. */
export const withRuleAdded = (
  layout: Layout,
  setId: string,
  rule: Omit<QuantityRule, 'id'> & { readonly quantity: QuantityId },
): Layout =>
  withRuleSet(layout, setId, (set) =>
    set.rules.length >= COUNTS.rules.max
      ? set
      : { ...set, rules: [...set.rules, { ...rule, id: freshId(`own-${rule.quantity}`, set.rules) }] },
  )

/** Says that the builder has a document, or takes that back. */
export const withDocumentConfirmed = (layout: Layout, name: string, isConfirmed: boolean): Layout => {
  const others = (layout.confirmedDocuments ?? []).filter((each) => each !== name)
  return withDocuments(layout, isConfirmed ? [...others, name] : others)
}
