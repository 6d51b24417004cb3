import type { Tube } from '../geometry/tube'
import type { Mount } from '../straps/anchor'
import { type Belt, diagonalShoulder, type StrapId, thighStraps } from '../straps/strap'
import type { Rule, RuleCondition } from './rule'

/** The facts of one sitting and one strap that decide whether a rule speaks. */
export interface RuleContext {
  /** Torso line from vertical in this sitting, + rearward. */
  readonly reclineDeg: number
  /** The back reclines on from here, so that what holds just past this recline has to hold here too. */
  readonly reclinesFurther: boolean
  readonly belt: Belt
  /** The layout is marked as used in dust or mud. */
  readonly dusty: boolean
  /** The seat slides or its back reclines. */
  readonly seatAdjustable: boolean
  /** How the strap in question is anchored; null for what is not one strap, or while its anchor is missing. */
  readonly mount: Mount['kind'] | null
  /** The kind of tube that the anchor in question is on; left out where it is on none. */
  readonly tube?: Tube['role']
  /** The strap in question; left out for pairs, the head, the belt and tubes. */
  readonly strap?: StrapId
}

/** Whether the belt's straps run as the condition says: thigh straps of 6 and 7 points, the diagonal of 3. */
const runsSo = (when: RuleCondition, belt: Belt): boolean =>
  (when.thighStraps === undefined || thighStraps(belt) === when.thighStraps) &&
  (when.diagonal === undefined || (belt.arrangement === 3 && diagonalShoulder(belt) === when.diagonal))

/**
 * Whether a rule speaks in this context: every condition that it gives holds. A recline exactly on a rule's limit belongs to
 * the "at most" side; to the other side too where the back reclines on from there, because the angle just past the limit is as
 * good as this one. A condition on the mount, its tube or the strap does not hold where the context has none.
 */
export const ruleApplies = (rule: Pick<Rule, 'when'>, context: RuleContext): boolean => {
  const { when } = rule
  const { belt, reclineDeg } = context
  return (
    (when.reclineAtMostDeg === undefined || reclineDeg <= when.reclineAtMostDeg) &&
    (when.reclineAboveDeg === undefined ||
      reclineDeg > when.reclineAboveDeg ||
      (context.reclinesFurther && reclineDeg === when.reclineAboveDeg)) &&
    (when.headAndNeckRestraint === undefined || belt.headAndNeckRestraint === when.headAndNeckRestraint) &&
    (when.arrangements === undefined || when.arrangements.includes(belt.arrangement)) &&
    runsSo(when, belt) &&
    (when.seatAdjustable === undefined || context.seatAdjustable === when.seatAdjustable) &&
    (when.mount === undefined || context.mount === when.mount) &&
    (when.tube === undefined || context.tube === when.tube) &&
    (when.straps === undefined || (context.strap !== undefined && when.straps.includes(context.strap))) &&
    (when.dusty === undefined || context.dusty === when.dusty)
  )
}
