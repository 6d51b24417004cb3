import { type RuleContext, ruleApplies } from '../rules/applies'
import type { QuantityRule } from '../rules/rule'
import { ruleSubjects, strapsOfPair } from '../rules/subjects'
import type { QuantityId, Subject } from '../straps/quantity'
import type { SolvedPlace } from '../straps/solve'
import type { ZoneCase, ZoneScene } from './zone'

/**
 * What a rule speaks of when it is asked about an anchor: its strap, its pair, or null when it is no matter of this anchor
 * (another family, the head, the centre strap for a pair, a wrap for a rule on tabs).
 */
export const ruleSubject = (rule: QuantityRule, { scenes, anchor }: ZoneCase): Subject | null => {
  const scene = scenes[0]?.scene
  if (scene === undefined) return null
  return (
    ruleSubjects(rule, scene).find(
      (subject) => subject === anchor.strap || strapsOfPair(subject).includes(anchor.strap),
    ) ?? null
  )
}

/** The context a rule is held against: a pair has no mount and is no strap. */
const subjectContext = (context: RuleContext, subject: Subject): RuleContext => {
  if (!subject.endsWith('-pair')) return context
  const { strap: _strap, tube: _tube, ...facts } = context
  return { ...facts, mount: null }
}

/** The sittings in which a rule speaks about this anchor. */
export const scenesOfRule = (rule: QuantityRule, zoneCase: ZoneCase): readonly ZoneScene[] => {
  const subject = ruleSubject(rule, zoneCase)
  if (subject === null) return []
  return zoneCase.scenes.filter(({ context }) => ruleApplies(rule, subjectContext(context, subject)))
}

/** The value of a rule's quantity for a subject in a solved place; null while it has none. */
export const solvedValue = (solved: SolvedPlace, quantity: QuantityId, subject: Subject): number | null =>
  solved.quantities.find(({ id, subject: of }) => id === quantity && of === subject)?.value ?? null
