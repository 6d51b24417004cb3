import { withConfirmed } from '../../rules/confirmed'
import type { Rule, RuleSet } from '../../rules/rule'
import { DEFAULT_RULE_SET_ID, RULE_SETS, ruleById } from '../../rules/ruleSets'
import { withLeastSpacing } from '../../rules/spacing'
import type { Layout } from './layout'

type RuleChoice = Pick<Layout, 'ruleSetId' | 'ownRuleSets' | 'confirmedDocuments'>

/** Every rule set that a layout can choose: those of the program, then its own; levels as its confirmed documents give them. */
export const ruleSetsOf = ({ ownRuleSets = [], confirmedDocuments = [] }: RuleChoice): readonly RuleSet[] =>
  [...RULE_SETS, ...ownRuleSets.map(withLeastSpacing)].map((set) => withConfirmed(set, confirmedDocuments))

/** The rule set that a layout is checked against, or null when it names one that does not exist. */
export const ruleSetOf = ({
  ruleSetId,
  ownRuleSets = [],
  confirmedDocuments = [],
}: RuleChoice): RuleSet | null => {
  const set = [...RULE_SETS, ...ownRuleSets].find(({ id }) => id === ruleSetId)
  return set === undefined ? null : withConfirmed(withLeastSpacing(set), confirmedDocuments)
}

/** The same; throws for a rule set that does not exist: reading a layout file refuses it before. */
export const chosenRuleSet = (layout: RuleChoice): RuleSet => {
  const ruleSet = ruleSetOf(layout)
  if (ruleSet === null) {
    throw new Error(`no rule set "${layout.ruleSetId}"; the default is "${DEFAULT_RULE_SET_ID}"`)
  }
  return ruleSet
}

/** A rule by its id: that of the chosen set, which may be a changed copy, before one of the program's. Null when there is none. */
export const ruleOf = (layout: RuleChoice, ruleId: string): Rule | null =>
  ruleSetOf(layout)?.rules.find(({ id }) => id === ruleId) ?? ruleById(ruleId)
