import { bodyOf } from '../../body/body'
import { isLapFleshUnknown } from '../../body/lapFlesh'
import type { Body, Occupant } from '../../body/occupant'
import type { SeatPose } from '../../body/pose'
import { strappedBody } from '../../body/posed'
import { isWithin } from '../../rules/check'
import type { QuantityRule } from '../../rules/rule'
import { solvePlace } from '../../straps/solve'
import { type FitCase, KEY_COUNT, quantityKey } from './fitRules'

/**
 * How one person stands to a rule: `broken` when any number is outside the limits; else `unchecked` when any number is missing,
 * which is never the same as passing; else `passing`.
 */
export type Outcome = 'passing' | 'broken' | 'unchecked'

/** One person's outcome for each rule of the case, over all poses of the seat and in each of them. */
export interface PersonVerdicts {
  readonly overall: readonly Outcome[]
  /** By rule, then by pose, those of the seat positions first; null where the rule does not speak. */
  readonly byPosition: readonly (readonly (Outcome | null)[])[]
}

/** Outlines are for drawings; nobody draws the surveyed. */
const NO_OUTLINES = { side: [], top: [] } as const

/** All numbers of one person in one seat position by key; NaN where there is none. Used inside this file only. */
const fillNumbers = (numbers: Float64Array, fit: FitCase, own: Body, pose: SeatPose): void => {
  const { place, layout } = fit
  const body = { ...strappedBody(own, pose, place.seat.hipHeightMm), outlines: NO_OUTLINES }
  const { seat, belt, anchors } = place
  numbers.fill(Number.NaN)
  for (const { id, subject, value } of solvePlace({ seat, pose, body, belt, anchors, tubes: layout.tubes })
    .quantities) {
    numbers[quantityKey(id, subject)] = value
  }
}

const outcomeAt = (
  rule: QuantityRule,
  keys: readonly number[],
  numbers: Float64Array,
  isUnsure: boolean,
): Outcome | null => {
  if (keys.length === 0) return null
  let outcome: Outcome = isUnsure ? 'unchecked' : 'passing'
  for (const key of keys) {
    const value = numbers[key] ?? Number.NaN
    if (Number.isNaN(value)) outcome = 'unchecked'
    else if (!isWithin(value, rule)) return 'broken'
  }
  return outcome
}

/** The worst of several outcomes, those that are null left out: broken before unchecked before passing. */
export const worstOutcome = (outcomes: readonly (Outcome | null)[]): Outcome => {
  let worst: Outcome = 'passing'
  for (const outcome of outcomes) {
    if (outcome === 'broken') return 'broken'
    if (outcome === 'unchecked') worst = 'unchecked'
  }
  return worst
}

/**
 * What every rule of a case says about one person. The same numbers and limits as the findings of a layout with that occupant, but
 * for what is worst between two positions of the lattice; room, zones and remedies are left out, which is what makes 1 200 people quick.
 */
export const personVerdicts = (fit: FitCase, person: Occupant): PersonVerdicts => {
  const numbers = new Float64Array(KEY_COUNT)
  const body = bodyOf(person)
  const isUnsure = isLapFleshUnknown(person)
  const byRule: (Outcome | null)[][] = fit.rules.map(() => [])
  for (const [index, pose] of fit.poses.entries()) {
    fillNumbers(numbers, fit, body, pose)
    for (const [ruleIndex, { rule, keysAt }] of fit.rules.entries()) {
      const unsure = isUnsure && rule.quantity === 'lap-over-asis'
      byRule[ruleIndex]?.push(outcomeAt(rule, keysAt[index] ?? [], numbers, unsure))
    }
  }
  return { overall: byRule.map(worstOutcome), byPosition: byRule }
}
