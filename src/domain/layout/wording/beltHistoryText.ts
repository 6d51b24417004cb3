import type { BeltEntry, BeltRecord } from '../../care/beltRecord'
import { type BeltCondition, faultyItems, isWholeInspection, strikeOf } from '../../care/condition'
import type { EntryProblem } from '../../care/entryProblems'
import { INSPECTION_ITEM_IDS } from '../../care/inspection'
import { factName, factValue, itemName, releaserWord } from './careWords'
import { capitalised } from './words'

/** One entry of a history as it is shown and printed. */
export interface HistoryLine {
  readonly id: string
  readonly date: string
  readonly by: string
  /** What happened, as sentences. */
  readonly what: string
  readonly note: string
  /** Who took it back, when and why; null while it stands. */
  readonly struck: string | null
}

export const historyLine = (belt: BeltRecord, entry: BeltEntry): HistoryLine => {
  const strike = strikeOf(belt, entry.id)
  const { id, date, by, note } = entry
  return {
    id,
    date,
    by,
    what: entryText(belt, entry),
    note,
    struck: strike === null ? null : `Struck ${strike.date} by ${strike.by}: ${strike.note}`,
  }
}

const entryText = (belt: BeltRecord, entry: BeltEntry): string => {
  switch (entry.kind) {
    case 'inspection':
      return inspectionText(entry)
    case 'cleaning':
      return 'Cleaned.'
    case 'crash':
      return 'Crash, roll-over or hard landing. Out of use.'
    case 'released':
      return `Looked at by ${releaserWord(entry.lookedAtBy)} and put back into use.`
    case 'retired':
      return 'Retired: taken out of the car for good.'
    case 'note':
      return 'Note.'
    case 'corrected':
      return `${capitalised(factName(entry.fact))} corrected from ${factValue(entry.fact, entry.from)} to ${factValue(entry.fact, entry.to)}.`
    case 'struck': {
      const meant = belt.entries.find(({ id }) => id === entry.entryId)
      return `Struck the entry of ${meant?.date ?? entry.entryId}.`
    }
  }
}

const inspectionText = (entry: Extract<BeltEntry, { kind: 'inspection' }>): string => {
  const faults = faultyItems(entry)
  const looked = INSPECTION_ITEM_IDS.filter(
    (id) => (entry.results[id] ?? 'not-looked-at') !== 'not-looked-at',
  )
  const left = INSPECTION_ITEM_IDS.filter((id) => !looked.includes(id))
  const names = (ids: typeof faults): string => ids.map((id) => itemName(id).toLowerCase()).join('; ')
  const found = faults.length === 0 ? 'Inspected, no fault found' : `Inspected, FAULT: ${names(faults)}`
  return isWholeInspection(entry)
    ? `${found}. All ${INSPECTION_ITEM_IDS.length} looked at.`
    : `${found}. Not looked at: ${names(left)}.`
}

/** Whether the belt may be worn as far as its history says, as one or more sentences. */
export const conditionText = (condition: BeltCondition): string => {
  switch (condition.kind) {
    case 'in-use':
      return 'No fault and no crash is open in its history.'
    case 'retired':
      return `Retired on ${condition.entry.date}. Not to be worn again.`
    case 'out-of-use':
      return `Out of use. ${condition.reasons
        .map((reason) =>
          reason.kind === 'crash'
            ? `Crash of ${reason.entry.date}: only the belt’s maker can put it back into use.`
            : `Fault found on ${reason.entry.date} (${reason.items.map((id) => itemName(id).toLowerCase()).join('; ')}): until the maker or a licensed person has looked at it.`,
        )
        .join(' ')}`
  }
}

/** Why something typed is not entered, and how to mend it. */
export const entryProblemText = (problem: EntryProblem): string => {
  switch (problem.kind) {
    case 'no-date':
      return problem.date === ''
        ? 'The date is missing. Type the day it happened.'
        : `There is no day ${problem.date}. Type the date as 2026-03-15.`
    case 'future-date':
      return `${problem.date} is still to come; today is ${problem.today}. Type the day it happened.`
    case 'before-made':
      return `${problem.date} is before the belt was made, ${problem.manufactured}. Check the date, or correct the label first.`
    case 'nobody':
      return 'Who did it is missing. Type a name.'
    case 'no-reason':
      return 'The words are missing. Type what happened or why.'
    case 'nothing-looked-at':
      return 'Nothing was looked at yet. Mark each thing you looked at as sound or as a fault.'
    case 'unchanged':
      return `The ${factName(problem.fact)} is already that. Change it, or call the correction off.`
    case 'no-such-fact':
      return problem.text.trim() === ''
        ? `The ${factName(problem.fact)} is missing.`
        : `“${problem.text}” is no ${factName(problem.fact)}. ${FACT_FORMS[problem.fact]}`
  }
}

const FACT_FORMS = {
  name: 'Type a name.',
  standard: 'Choose one from the list.',
  serial: 'Type the number on the label.',
  manufactured: 'Type it as 2026-03-15, 2026-03 or 2026, from 1950 on.',
  labelYear: 'Type a year of four digits.',
  fitted: 'Type it as 2026-03-15.',
} as const
