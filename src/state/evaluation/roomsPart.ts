import { orderedFindings } from '../../domain/layout/evaluate/evaluateLayout'
import type { Finding } from '../../domain/rules/finding'
import { quantityFamilies } from '../../domain/rules/quantityFamilies'
import type { Rule, RuleSet } from '../../domain/rules/rule'
import type { StrapFamily } from '../../domain/straps/strap'

/** Rules of one family of straps, all other rules, or every rule: how the rooms of a place are shared out among workers. */
export type RoomsPart = StrapFamily | 'others' | 'all'

/** Into how many parts one place is cut: what lasts longest first, as measured on the examples. */
export const SHARED_PARTS = ['lap', 'others', 'shoulder', 'sub'] as const satisfies readonly RoomsPart[]

const partOf = (rule: Rule): (typeof SHARED_PARTS)[number] => {
  if (rule.kind !== 'quantity') return 'others'
  if (rule.family !== null) return rule.family
  const [family, ...more] = quantityFamilies(rule.quantity)
  return family === undefined || more.length > 0 ? 'others' : family
}

export const isInPart =
  (part: RoomsPart) =>
  (rule: Rule): boolean =>
    part === 'all' || partOf(rule) === part

/** The findings of all parts of a place in the order in which one evaluation gives them. */
export const joinedParts = (
  { rules }: RuleSet,
  parts: readonly (readonly Finding[])[],
): readonly Finding[] => {
  const places = new Map(rules.map(({ id }, index) => [id, index]))
  const placeOf = ({ ruleId }: Finding): number => places.get(ruleId) ?? rules.length
  return orderedFindings(parts.flat().toSorted((a, b) => placeOf(a) - placeOf(b)))
}
