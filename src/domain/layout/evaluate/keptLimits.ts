import { isWithin } from '../../rules/check'
import type { BrokenLimit, Finding } from '../../rules/finding'
import type { QuantityRule } from '../../rules/rule'
import { ruleSubjects } from '../../rules/subjects'
import type { Subject } from '../../straps/quantity'
import type { Layout, Place } from '../document/layout'
import { valuesOf } from './placeNumbers'
import type { SolvedSitting } from './solvedSittings'
import { speaksIn } from './speaking'

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
  const isKept = (rule: QuantityRule, subject: Subject): boolean => {
    const values = valuesOf(sittings, rule.quantity, subject)
    const speaks = speaksIn(layout, place, rule, subject)
    let hasSpoken = false
    for (const [index, { sitting }] of sittings.entries()) {
      if (!speaks(sitting)) continue
      const value = values[index] ?? null
      if (value === null || !isWithin(value, rule)) return false
      hasSpoken = true
    }
    return hasSpoken
  }
  return rules.flatMap((rule) =>
    ruleSubjects(rule, scene)
      .filter((subject) => isKept(rule, subject))
      .map((subject) => ({ placeId: place.id, ruleId: rule.id, quantity: rule.quantity, subject })),
  )
}
