import type { Rule, RuleSet, RuleSource } from './rule'

/** A document with its edition, as one line: what a builder confirms having. */
export const documentName = ({ document, edition }: Pick<RuleSource, 'document' | 'edition'>): string =>
  `${document}, ${edition}`

/** The documents of a set whose figures count for less until somebody confirms having them, in the order of the rules. */
export const documentsToConfirm = ({ rules }: RuleSet): readonly string[] => [
  ...new Set(
    rules.filter((rule) => rule.confirmedLevel !== undefined).map(({ source }) => documentName(source)),
  ),
]

const withOwnLevel = (rule: Rule, confirmed: ReadonlySet<string>): Rule =>
  rule.confirmedLevel === undefined || !confirmed.has(documentName(rule.source))
    ? rule
    : { ...rule, level: rule.confirmedLevel }

/** A set with the rules of confirmed documents at the level that the document gives them. The same set when none is confirmed. */
export const withConfirmed = (set: RuleSet, confirmedDocuments: readonly string[]): RuleSet => {
  if (confirmedDocuments.length === 0) return set
  const confirmed = new Set(confirmedDocuments)
  return { ...set, rules: set.rules.map((rule) => withOwnLevel(rule, confirmed)) }
}
