import { ruleApplies } from '../../rules/applies'
import type { Finding } from '../../rules/finding'
import type { Rule } from '../../rules/rule'
import type { Layout, Place } from '../document/layout'
import type { Sitting } from './evaluation'
import { ruleContext } from './ruleContexts'

/**
 * Whether a rule speaks about a subject, sitting by sitting. Of a sitting nothing but its recline decides that (`ruleContext`), and
 * there are few reclines however many people sit there: each is asked once.
 */
export const speaksIn = (
  layout: Layout,
  place: Place,
  rule: Pick<Rule, 'when'>,
  subject: Finding['subject'],
): ((sitting: Sitting) => boolean) => {
  const known = new Map<number, boolean>()
  return (sitting) => {
    const found = known.get(sitting.reclineDeg)
    if (found !== undefined) return found
    const speaks = ruleApplies(rule, ruleContext(layout, place, sitting, subject))
    known.set(sitting.reclineDeg, speaks)
    return speaks
  }
}
