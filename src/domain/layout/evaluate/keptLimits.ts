import { ruleApplies } from '../../rules/applies'
import { isWithin } from '../../rules/check'
import type { BrokenLimit, Finding } from '../../rules/finding'
import type { QuantityRule } from '../../rules/rule'
import { ruleSubjects } from '../../rules/subjects'
import type { Layout, Place } from '../document/layout'
import { ruleContext } from './ruleContexts'
import { quantityIn, type SolvedSitting } from './solvedSittings'

/** One limit of one place by name: the id of its finding. */
export const limitKey = ({
  placeId,
  ruleId,
  subject,
}: Pick<Finding, 'placeId' | 'ruleId' | 'subject'>): string => `${placeId}/${ruleId}/${subject}`

/** What is kept in every sitting in which its rule speaks, with a number in each. */
export const keptLimits = (
  layout: Layout,
  place: Place,
  rules: readonly QuantityRule[],
  sittings: readonly SolvedSitting[],
): readonly BrokenLimit[] => {
  const scene = { belt: place.belt, anchors: place.anchors, tubes: layout.tubes, seat: place.seat }
  return rules.flatMap((rule) =>
    ruleSubjects(rule, scene)
      .filter((subject) => {
        const values = sittings
          .filter(({ sitting }) => ruleApplies(rule, ruleContext(layout, place, sitting, subject)))
          .map((solved) => quantityIn(solved, rule.quantity, subject))
        return values.length > 0 && values.every((value) => value !== null && isWithin(value, rule))
      })
      .map((subject) => ({ placeId: place.id, ruleId: rule.id, quantity: rule.quantity, subject })),
  )
}
