import type { RuleSet } from '../rules/rule'
import { daysBetween, plusYears } from '../units/calendarDate'
import { AGE_RULES, type AgeLimit, type AgeRule, ageRulesOf } from './ageRules'
import type { BeltFacts } from './beltRecord'
import { labelYearDoubt, manufactureDoubt, type LabelProblem } from './labelProblems'
import { type ManufactureSpan, manufactureSpan } from './manufacture'

/** What one age rule gives for one belt. */
export type AgeOutcome =
  | {
      readonly kind: 'last-day'
      /** ISO 8601 date of the last day of use, that day included. */
      readonly lastDay: string
      /**
       * What the same rule would give if the belt was made on the latest day that its label may mean; null when the label leaves no
       * choice. For orientation: what counts is `lastDay`, from the earliest.
       */
      readonly latestReading: string | null
    }
  /** It cannot be told: this is missing on the label. */
  | { readonly kind: 'missing'; readonly fact: 'standard' | 'manufactured' | 'labelYear' }
  /** It cannot be told: the facts do not agree. */
  | { readonly kind: 'in-doubt'; readonly problem: LabelProblem }
  /** The rule speaks of belts of other standards. */
  | { readonly kind: 'other-standards' }

export interface AgeReading {
  readonly rule: AgeRule
  readonly outcome: AgeOutcome
}

/**
 * `expired`: the last day is over. `soon`: it is at most SOON_DAYS away. `not-known`: a rule speaks of the belt but cannot be counted.
 * `no-rule`: neither the rule set nor the label says when this belt has to go.
 */
export type AgeVerdict = 'expired' | 'not-known' | 'soon' | 'fine' | 'no-rule'

export interface BeltAge {
  readonly verdict: AgeVerdict
  /** The earliest last day by the chosen rule set and the label's own year; null when neither gives one. */
  readonly lastDay: string | null
  /** From today to the last day: 0 on it, negative after it. */
  readonly daysLeft: number | null
  /** By the last year of use that the label states; null when it states none. It counts whatever the rule set says. */
  readonly label: AgeOutcome | null
  /** The age rules of the chosen set that speak of a belt of this standard. Empty: the set is silent about it. */
  readonly chosen: readonly AgeReading[]
  /** Every other age rule that speaks of a belt of this standard, for orientation. */
  readonly others: readonly AgeReading[]
}

/** How long before the last day a belt counts as soon to go. Our judgement: time to order and fit another. */
export const SOON_DAYS = 30

/**
 * Age of a belt by a rule set on a day (`today`, ISO 8601). Where the label gives only the month or the year of manufacture, the
 * earliest day it may mean counts: never a day too many. Our judgement: a belt may be older than its label shows, not younger.
 */
export const beltAge = (facts: BeltFacts, ruleSet: Pick<RuleSet, 'rules'>, today: string): BeltAge => {
  const inSet = ageRulesOf(ruleSet)
  const chosen = readings(facts, inSet, today)
  const label = facts.labelYear === null ? null : labelYearOutcome(facts, today)
  const outcomes = [...chosen.map(({ outcome }) => outcome), ...(label === null ? [] : [label])]
  const lastDays = outcomes.flatMap((outcome) => (outcome.kind === 'last-day' ? [outcome.lastDay] : []))
  const lastDay = lastDays.toSorted()[0] ?? null
  const daysLeft = lastDay === null ? null : daysBetween(today, lastDay)
  return {
    verdict: verdictOf(outcomes, daysLeft),
    lastDay,
    daysLeft,
    label,
    chosen,
    others: readings(
      facts,
      AGE_RULES.filter((rule) => !inSet.includes(rule)),
      today,
    ),
  }
}

/** What the rules give that speak of such a belt. */
const readings = (facts: BeltFacts, rules: readonly AgeRule[], today: string): readonly AgeReading[] =>
  rules
    .map((rule) => ({ rule, outcome: ageOutcome(facts, rule, today) }))
    .filter(({ outcome }) => outcome.kind !== 'other-standards')

/** An expired belt is expired whatever else is not known; what is not known is never called fine. */
const verdictOf = (outcomes: readonly AgeOutcome[], daysLeft: number | null): AgeVerdict => {
  if (daysLeft !== null && daysLeft < 0) return 'expired'
  if (outcomes.some(({ kind }) => kind === 'missing' || kind === 'in-doubt')) return 'not-known'
  if (daysLeft === null) return 'no-rule'
  return daysLeft <= SOON_DAYS ? 'soon' : 'fine'
}

/** The last day of use of a belt by one age rule, or why there is none. */
const ageOutcome = (facts: BeltFacts, rule: AgeRule, today: string): AgeOutcome => {
  const { standards, limit } = rule
  if (standards !== 'any') {
    if (facts.standard === 'unreadable') return { kind: 'missing', fact: 'standard' }
    if (!standards.includes(facts.standard)) return { kind: 'other-standards' }
  }
  if (limit.kind === 'label-year') return labelYearOutcome(facts, today)
  const span = manufactureSpan(facts.manufactured)
  if (span === null) return { kind: 'missing', fact: 'manufactured' }
  const problem = manufactureDoubt(facts, today)
  return problem === null ? counted(span, limit) : { kind: 'in-doubt', problem }
}

const labelYearOutcome = (facts: BeltFacts, today: string): AgeOutcome => {
  if (facts.labelYear === null) return { kind: 'missing', fact: 'labelYear' }
  const problem = labelYearDoubt(facts, today)
  if (problem !== null) return { kind: 'in-doubt', problem }
  return { kind: 'last-day', lastDay: lastDayOfYear(facts.labelYear), latestReading: null }
}

const lastDayOfYear = (year: number): string => `${String(year).padStart(4, '0')}-12-31`

const counted = (
  { earliest, latest }: ManufactureSpan,
  limit: Exclude<AgeLimit, { kind: 'label-year' }>,
): AgeOutcome => {
  const from = (date: string): string =>
    limit.kind === 'years-of-life'
      ? plusYears(date, limit.years)
      : lastDayOfYear(Number(date.slice(0, 4)) + limit.years)
  const [lastDay, latestReading] = [from(earliest), from(latest)]
  return { kind: 'last-day', lastDay, latestReading: latestReading === lastDay ? null : latestReading }
}
