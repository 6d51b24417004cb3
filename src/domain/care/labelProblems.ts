import type { BeltFacts } from './beltRecord'
import { manufactureSpan } from './manufacture'

/** What is wrong with the facts of a belt: they cannot all be true, or the label does not say enough. */
export type LabelProblem =
  | { readonly kind: 'unreadable' }
  | { readonly kind: 'made-in-future'; readonly manufactured: string }
  | { readonly kind: 'fitted-in-future'; readonly fitted: string }
  | { readonly kind: 'fitted-before-made'; readonly fitted: string; readonly manufactured: string }
  | { readonly kind: 'label-year-before-made'; readonly labelYear: number; readonly manufactured: string }
  /** `manufactured` is empty where it is not known: then it is too far from today. */
  | { readonly kind: 'label-year-too-late'; readonly labelYear: number; readonly manufactured: string }

/** No label is believed that gives a belt more calendar years than this. Our judgement: twice the longest that any age rule here gives. */
export const LONGEST_LABEL_YEARS = 10

/** Everything wrong with the facts on a day; a date that may still be true is not a problem. `today` is an ISO 8601 date. */
export const labelProblems = (facts: BeltFacts, today: string): readonly LabelProblem[] => {
  const { manufactured, fitted, labelYear } = facts
  const made = manufactureSpan(manufactured)
  const found: LabelProblem[] = []
  if (facts.standard === 'unreadable') found.push({ kind: 'unreadable' })
  if (made !== null && made.earliest > today) found.push({ kind: 'made-in-future', manufactured })
  if (fitted !== '' && fitted > today) found.push({ kind: 'fitted-in-future', fitted })
  if (made !== null && fitted !== '' && fitted < made.earliest)
    found.push({ kind: 'fitted-before-made', fitted, manufactured })
  if (made !== null && labelYear !== null && labelYear < yearOf(made.earliest))
    found.push({ kind: 'label-year-before-made', labelYear, manufactured })
  if (labelYear !== null && labelYear > yearOf(made?.latest ?? today) + LONGEST_LABEL_YEARS)
    found.push({ kind: 'label-year-too-late', labelYear, manufactured })
  return found
}

const yearOf = (date: string): number => Number(date.slice(0, 4))

/** What leaves the date of manufacture in doubt. */
const OF_MANUFACTURE: readonly LabelProblem['kind'][] = [
  'made-in-future',
  'fitted-before-made',
  'label-year-before-made',
]

/** What leaves the year of the label in doubt: a label that is wrong in one date is not believed in the other. */
const OF_LABEL_YEAR: readonly LabelProblem['kind'][] = [
  'made-in-future',
  'label-year-before-made',
  'label-year-too-late',
]

/** The problem that leaves the date of manufacture in doubt, so that nothing is counted from it; null when there is none. */
export const manufactureDoubt = (facts: BeltFacts, today: string): LabelProblem | null =>
  labelProblems(facts, today).find(({ kind }) => OF_MANUFACTURE.includes(kind)) ?? null

/** The problem that leaves the year of the label in doubt; null when there is none. */
export const labelYearDoubt = (facts: BeltFacts, today: string): LabelProblem | null =>
  labelProblems(facts, today).find(({ kind }) => OF_LABEL_YEAR.includes(kind)) ?? null
