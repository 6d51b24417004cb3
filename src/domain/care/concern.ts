import type { RuleSet } from '../rules/rule'
import type { BeltRecord } from './beltRecord'
import { beltCondition } from './condition'
import { beltAge } from './expiry'

/** Whether a belt that was not retired must not be worn on a day (`today`, ISO 8601): its age is over, or its history keeps it out of use. */
export const isOutOfUse = (belt: BeltRecord, ruleSet: Pick<RuleSet, 'rules'>, today: string): boolean => {
  const { kind } = beltCondition(belt)
  if (kind === 'retired') return false
  return kind === 'out-of-use' || beltAge(belt, ruleSet, today).verdict === 'expired'
}
