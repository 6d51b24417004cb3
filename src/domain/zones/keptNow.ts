import { isWithin, marginInside } from '../rules/check'
import type { QuantityRule } from '../rules/rule'
import type { Subject } from '../straps/quantity'
import { solvedValue } from './subject'
import type { ZoneScene } from './zone'

/** Whether a rule is kept in a sitting as drawn. */
export const isKeptNow = (rule: QuantityRule, subject: Subject, { solved }: ZoneScene): boolean => {
  const value = solvedValue(solved, rule.quantity, subject)
  return value !== null && isWithin(value, rule)
}

/** How far inside its limits a rule's number is as drawn, in its own unit; −Infinity without a number. */
export const marginNow = (rule: QuantityRule, subject: Subject, { solved }: ZoneScene): number => {
  const value = solvedValue(solved, rule.quantity, subject)
  return value === null ? -Infinity : marginInside(value, rule)
}
