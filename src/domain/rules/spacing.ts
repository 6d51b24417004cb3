import type { QuantityRule, Rule, RuleSet } from './rule'

/** Spacings that are minus when left and right are exchanged. */
const isSignedSpacing = ({ quantity }: QuantityRule): boolean =>
  quantity === 'lap-spacing' || quantity === 'sub-spacing'

/** A limit on how far apart two anchors are at most says nothing against anchors that are exchanged; at least 0 mm says it. */
const withLeast = (rule: Rule): Rule =>
  rule.kind === 'quantity' && isSignedSpacing(rule) && rule.min === null ? { ...rule, min: 0 } : rule

/** A rule set under which no spacing of exchanged anchors is kept. Our reading of what "apart" means in a limit of the builder's own. */
export const withLeastSpacing = (set: RuleSet): RuleSet => {
  const rules = set.rules.map(withLeast)
  return rules.every((rule, index) => rule === set.rules[index]) ? set : { ...set, rules }
}
