import { pointDistanceMm } from '../../geometry/point'
import { marginInside } from '../../rules/check'
import type { QuantityRule } from '../../rules/rule'
import { strapsOfPair } from '../../rules/subjects'
import { quantityUnit, type Subject } from '../../straps/quantity'
import { sinDeg } from '../../units/angle'
import { quantityIn, type SolvedSitting } from '../evaluate/solvedSittings'

/** The straight distance from a strap's anchor contact to the body, mm: the lever by which a move turns it. Null without a path. */
const leverMm = ({ solved }: SolvedSitting, subject: Subject): number | null => {
  const straps: readonly string[] = [subject, ...strapsOfPair(subject)]
  const levers = solved.paths.flatMap(({ strap, contacts, bodyContact }) => {
    const [anchor] = contacts
    return anchor !== undefined && straps.includes(strap) ? [pointDistanceMm(anchor.point, bodyContact)] : []
  })
  return levers.length === 0 ? null : Math.min(...levers)
}

/**
 * What is left to the nearer limit as a length, ± mm: degrees by the lever, mm as they are; null for shares, which have none. Only for
 * choosing where to measure and what first. Formula: chord = 2·lever·sin(angle/2); derived here, right to first order where the body
 * contact stays.
 */
export const byLeverMm = (
  solved: SolvedSitting,
  rule: Pick<QuantityRule, 'quantity' | 'min' | 'max'>,
  subject: Subject,
): number | null => {
  const value = quantityIn(solved, rule.quantity, subject)
  const lever = leverMm(solved, subject)
  if (value === null || lever === null) return null
  const margin = marginInside(value, rule)
  switch (quantityUnit(rule.quantity)) {
    case 'deg':
      return 2 * sinDeg(margin / 2) * lever
    case 'mm':
      return margin
    case 'ratio':
      return null
  }
}
