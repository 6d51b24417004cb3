import { type AgeLimit, type AgeRule, ruleOfAge } from '../../care/ageRules'
import type { BeltFacts } from '../../care/beltRecord'
import type { AgeOutcome, AgeReading, BeltAge } from '../../care/expiry'
import { manufactureSpan } from '../../care/manufacture'
import type { RuleSet } from '../../rules/rule'
import { factName, labelProblemText, standardName } from './careWords'
import { sourceText } from './ruleSentence'
import { capitalised, levelWord } from './words'

/** The age of a belt by the chosen rule set, as one sentence with the date. */
export const ageSentence = (age: BeltAge, facts: BeltFacts, ruleSet: Pick<RuleSet, 'name'>): string => {
  const { verdict, lastDay, daysLeft } = age
  switch (verdict) {
    case 'expired':
      return `Expired: the last day of use was ${lastDay}, ${days(-(daysLeft ?? 0))} ago. Take it out of use.`
    case 'soon':
      return daysLeft === 0
        ? `Expires soon: today, ${lastDay}, is the last day of use.`
        : `Expires soon: the last day of use is ${lastDay}, in ${days(daysLeft ?? 0)}.`
    case 'fine':
      return `Not expired: the last day of use is ${lastDay}, in ${days(daysLeft ?? 0)}.`
    case 'not-known':
      return `Age not known: ${[
        ...age.chosen.map(({ outcome }) => outcome),
        ...(age.label === null ? [] : [age.label]),
      ]
        .flatMap((outcome) => whyUnknown(outcome) ?? [])
        .filter((words, index, all) => all.indexOf(words) === index)
        .join(' ')} Treat it as expired until that is settled.`
    case 'no-rule':
      return `No age rule: ${silentWords(facts, ruleSet)}, and its label states no year. The belt maker’s instructions decide.`
  }
}

/** What the rules outside the chosen set give, from the strictest to the most lenient; null when none gives a day. */
export const orientationText = ({ others }: BeltAge, today: string): string | null => {
  const lastDays = others
    .flatMap(({ outcome }) => (outcome.kind === 'last-day' ? [outcome.lastDay] : []))
    .toSorted()
  const [first, last] = [lastDays[0], lastDays.at(-1)]
  if (first === undefined || last === undefined) return null
  const span = first === last ? `a last day of ${first}` : `last days from ${first} to ${last}`
  const past = last < today ? 'all past' : first < today ? 'the strictest is past' : 'none is past'
  return `For orientation: other rules that speak of such a belt give ${span}; ${past}.`
}

const days = (count: number): string => (count === 1 ? '1 day' : `${count} days`)

const silentWords = (facts: BeltFacts, { name }: Pick<RuleSet, 'name'>): string =>
  `the rule set ${name} says nothing of the age of a belt with ${facts.standard === 'unreadable' ? 'an unreadable label' : `${standardName(facts.standard)} on its label`}`

/** Said beside the age when only the label's own year speaks; null when the set has a rule or nothing speaks. */
export const silentSetText = (
  age: BeltAge,
  facts: BeltFacts,
  ruleSet: Pick<RuleSet, 'name'>,
): string | null =>
  age.chosen.length > 0 || age.label === null
    ? null
    : `${capitalised(silentWords(facts, ruleSet))}; the year on its own label counts.`

const whyUnknown = (outcome: AgeOutcome): string | null => {
  switch (outcome.kind) {
    case 'missing':
      return `the ${factName(outcome.fact)} is missing.`
    case 'in-doubt':
      return labelProblemText(outcome.problem)
    case 'last-day':
    case 'other-standards':
      return null
  }
}

/** What one rule gives for a belt, as short words for a table: the last day, or why there is none. */
const outcomeWords = (outcome: AgeOutcome): string => {
  switch (outcome.kind) {
    case 'last-day':
      return outcome.lastDay
    case 'missing':
      return `${factName(outcome.fact)} missing`
    case 'in-doubt':
      return 'dates do not agree'
    case 'other-standards':
      return 'of other standards'
  }
}

const limitWords = (limit: AgeLimit): string => {
  switch (limit.kind) {
    case 'years-of-life':
      return `${limit.years} years from manufacture`
    case 'end-of-year-after':
      return `to 31 December of the ${limit.years === 1 ? 'year' : `${ORDINALS[limit.years] ?? `${limit.years}th`} year`} after manufacture`
    case 'label-year':
      return 'to 31 December of the last year on the label'
  }
}

const ORDINALS: Readonly<Record<number, string>> = { 2: 'second', 3: 'third' }

/** How a last day was counted, as sentences: from which day, and what a later day of manufacture would give. */
const countingText = (rule: AgeRule, outcome: AgeOutcome, facts: BeltFacts): string => {
  const words = [`Counted ${limitWords(rule.limit)}.`]
  if (outcome.kind === 'last-day' && rule.limit.kind !== 'label-year') {
    const span = manufactureSpan(facts.manufactured)
    if (span !== null && span.known !== 'day' && outcome.latestReading !== null)
      words.push(
        `The label gives the ${span.known} only: counted from ${span.earliest}, the earliest day it may mean; from ${span.latest} it would be ${outcome.latestReading}.`,
      )
  }
  if (rule.reading !== null) words.push(rule.reading)
  return words.join(' ')
}

/** One rule as a row of a table. */
export interface AgeRow {
  readonly says: string
  readonly level: string
  readonly lastDay: string
  readonly counting: string
  readonly source: string
}

export const ageRow = ({ rule, outcome }: AgeReading, facts: BeltFacts): AgeRow => {
  const { says, level, source } = ruleOfAge(rule)
  return {
    says,
    level: levelWord(level),
    lastDay: outcomeWords(outcome),
    counting: countingText(rule, outcome, facts),
    source: sourceText(source),
  }
}

/** The row of the belt's own label; null when it states no year. */
export const labelRow = ({ label }: BeltAge, facts: BeltFacts): AgeRow | null =>
  label === null
    ? null
    : {
        says: `The label says that the belt may be used to ${facts.labelYear}.`,
        level: levelWord('must'),
        lastDay: outcomeWords(label),
        counting: 'Taken to 31 December of that year. It counts whatever the rule set says.',
        source: 'The belt’s own label, as it was typed here',
      }

/** Said under every table of ages. */
export const AGE_CAVEAT =
  'Sources disagree, from two to five years and on what they count from. A date here is counted, not confirmed: the label, the event’s rule book and the belt maker’s instructions decide.'
