import { type RuleContext, ruleApplies } from '../rules/applies'
import type { QuantityRule } from '../rules/rule'
import type { QuantityId, Subject } from '../straps/quantity'
import type { SolvedPlace } from '../straps/solve'
import { type StrapFamily, strapFamily, type StrapId, strapSide } from '../straps/strap'
import type { ZoneCase, ZoneScene } from './zone'

/** Quantities of a pair, and the family whose left and right strap make it. */
const PAIR_FAMILY: Readonly<Partial<Record<QuantityId, StrapFamily>>> = {
  'shoulder-spacing': 'shoulder',
  'spine-load-share': 'shoulder',
  'lap-spacing': 'lap',
  'lap-mirror': 'lap',
  'sub-spacing': 'sub',
}

const pairOf = (family: StrapFamily): Subject => `${family}-pair`

/**
 * What a rule speaks of when it is asked about the anchor of this strap: the strap, its pair, or null when it is no matter of
 * this anchor (another family, the head, the centre strap for a pair).
 */
export const ruleSubject = (rule: QuantityRule, strap: StrapId): Subject | null => {
  if (rule.quantity === 'helmet-clearance') return null
  const family = strapFamily(strap)
  if (rule.family !== null && rule.family !== family) return null
  const paired = PAIR_FAMILY[rule.quantity]
  if (paired === undefined) return strap
  return paired === family && strapSide(strap) !== 'centre' ? pairOf(family) : null
}

/** The context a rule is held against: a pair has no mount and is no strap. */
const subjectContext = (context: RuleContext, subject: Subject): RuleContext => {
  if (!subject.endsWith('-pair')) return context
  const { reclineDeg, belt, dusty, seatAdjustable } = context
  return { reclineDeg, belt, dusty, seatAdjustable, mount: null }
}

/** The sittings in which a rule speaks about this anchor. */
export const scenesOfRule = (rule: QuantityRule, zoneCase: ZoneCase): readonly ZoneScene[] => {
  const subject = ruleSubject(rule, zoneCase.anchor.strap)
  if (subject === null) return []
  return zoneCase.scenes.filter(({ context }) => ruleApplies(rule, subjectContext(context, subject)))
}

/** The value of a rule's quantity for a subject in a solved place; null while it has none. */
export const solvedValue = (solved: SolvedPlace, quantity: QuantityId, subject: Subject): number | null =>
  solved.quantities.find(({ id, subject: of }) => id === quantity && of === subject)?.value ?? null
