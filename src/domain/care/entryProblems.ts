import { err, ok, type Result } from '../result'
import { isCalendarDate } from '../units/calendarDate'
import {
  BELT_FACTS,
  type BeltEntry,
  type BeltEvent,
  type BeltFact,
  type BeltFacts,
  factText,
  withFactText,
} from './beltRecord'
import { manufactureSpan } from './manufacture'

/** An entry as it is typed, before it has an id. */
export type NewEntry = BeltEvent & Omit<BeltEntry, keyof BeltEvent | 'id'>

/** What keeps something typed from being entered. */
export type EntryProblem =
  | { readonly kind: 'no-date'; readonly date: string }
  | { readonly kind: 'future-date'; readonly date: string; readonly today: string }
  | { readonly kind: 'before-made'; readonly date: string; readonly manufactured: string }
  | { readonly kind: 'nobody' }
  | { readonly kind: 'no-reason' }
  | { readonly kind: 'nothing-looked-at' }
  | { readonly kind: 'unchanged'; readonly fact: BeltFact }
  | { readonly kind: 'no-such-fact'; readonly fact: BeltFact; readonly text: string }

/** Years that a date on a belt may have. Our judgement: catches a slip of the pen. */
export const BELT_YEARS = { min: 1950, max: 2150 } as const

/** These entries mean nothing without the words that say why. */
const NEEDS_NOTE: readonly BeltEvent['kind'][] = ['note', 'struck', 'corrected', 'released', 'crash']

/** Everything that keeps an entry from being added to a belt today (ISO 8601). */
export const entryProblems = (facts: BeltFacts, entry: NewEntry, today: string): readonly EntryProblem[] => {
  const found: EntryProblem[] = [...dateProblems(facts, entry, today)]
  if (entry.by.trim() === '') found.push({ kind: 'nobody' })
  if (NEEDS_NOTE.includes(entry.kind) && entry.note.trim() === '') found.push({ kind: 'no-reason' })
  if (
    entry.kind === 'inspection' &&
    !Object.values(entry.results).some((result) => result !== 'not-looked-at')
  )
    found.push({ kind: 'nothing-looked-at' })
  if (entry.kind === 'corrected') found.push(...correctionProblems(facts, entry.fact, entry.to))
  return found
}

/** A wrong date of manufacture must not keep its own correction from being entered. */
const dateProblems = (facts: BeltFacts, entry: NewEntry, today: string): readonly EntryProblem[] => {
  const { date } = entry
  if (!isCalendarDate(date)) return [{ kind: 'no-date', date }]
  if (date > today) return [{ kind: 'future-date', date, today }]
  const made = manufactureSpan(facts.manufactured)
  if (made === null || date >= made.earliest || entry.kind === 'corrected' || entry.kind === 'struck')
    return []
  return [{ kind: 'before-made', date, manufactured: facts.manufactured }]
}

const correctionProblems = (facts: BeltFacts, fact: BeltFact, to: string): readonly EntryProblem[] => {
  if (to === factText(facts, fact)) return [{ kind: 'unchanged', fact }]
  const changed = withFactText(facts, fact, to)
  return changed === null
    ? [{ kind: 'no-such-fact', fact, text: to }]
    : factProblems(changed).filter((each) => each.fact === fact)
}

/** Facts as they are typed into a form. */
export type FactTexts = Readonly<Record<BeltFact, string>>

/** The facts of a new record from what was typed, spaces at both ends left out; or everything that is wrong with it. */
export const factsFromTexts = (
  texts: FactTexts,
): Result<BeltFacts, readonly Extract<EntryProblem, { kind: 'no-such-fact' }>[]> => {
  let facts: BeltFacts = {
    name: '',
    standard: 'unreadable',
    serial: '',
    manufactured: '',
    labelYear: null,
    fitted: '',
  }
  const unread: BeltFact[] = []
  for (const fact of BELT_FACTS) {
    const changed = withFactText(facts, fact, texts[fact].trim())
    if (changed === null) unread.push(fact)
    else facts = changed
  }
  const problems = [
    ...unread.map((fact) => ({ kind: 'no-such-fact' as const, fact, text: texts[fact] })),
    ...factProblems(facts),
  ]
  return problems.length > 0 ? err(problems) : ok(facts)
}

/** Facts that a record cannot hold: each date must be one, the label's year a year that a belt can have, and a belt has a name. */
export const factProblems = (
  facts: BeltFacts,
): readonly Extract<EntryProblem, { kind: 'no-such-fact' }>[] => {
  const { manufactured, fitted, labelYear } = facts
  const problem = (fact: BeltFact) => ({ kind: 'no-such-fact' as const, fact, text: factText(facts, fact) })
  const made = manufactureSpan(manufactured)
  return [
    ...(facts.name.trim() === '' ? [problem('name')] : []),
    ...(manufactured !== '' && (made === null || !isBeltYear(Number(made.earliest.slice(0, 4))))
      ? [problem('manufactured')]
      : []),
    ...(labelYear !== null && !isBeltYear(labelYear) ? [problem('labelYear')] : []),
    ...(fitted !== '' && !(isCalendarDate(fitted) && isBeltYear(Number(fitted.slice(0, 4))))
      ? [problem('fitted')]
      : []),
  ]
}

const isBeltYear = (year: number): boolean =>
  Number.isInteger(year) && year >= BELT_YEARS.min && year <= BELT_YEARS.max
