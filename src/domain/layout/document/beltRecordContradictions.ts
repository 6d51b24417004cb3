import { type BeltEntry, type BeltFact, type BeltRecord, factText } from '../../care/beltRecord'
import { factProblems } from '../../care/entryProblems'
import { isCalendarDate } from '../../units/calendarDate'
import type { Contradiction } from './contradiction'
import type { Layout } from './layout'
import type { FieldPath } from './problem'

/**
 * Where the belt records of a layout do not agree with themselves. A place that is no longer in the layout is no contradiction: the
 * record of a belt outlives the drawing of its seat.
 */
export const beltRecordContradictions = ({ belts = [] }: Layout): readonly Contradiction[] =>
  belts.flatMap((belt, index) => {
    const path: FieldPath = ['belts', index]
    return [
      ...repeatedId(belts, index, path, 'belt'),
      ...factContradictions(belt, path),
      ...intervalContradictions(belt, path),
      ...belt.entries.flatMap((entry, entryIndex) => [
        ...repeatedId(belt.entries, entryIndex, [...path, 'entries', entryIndex], 'entry'),
        ...entryContradictions(belt, entry, entryIndex, [...path, 'entries', entryIndex]),
      ]),
      ...correctionContradictions(belt, path),
    ]
  })

const repeatedId = (
  items: readonly { readonly id: string }[],
  index: number,
  path: FieldPath,
  what: string,
): readonly Contradiction[] => {
  const id = items[index]?.id ?? ''
  const first = items.findIndex((item) => item.id === id)
  if (first === index) return []
  const says = `the id "${id}" is already used by ${what} ${first + 1}`
  return [{ path: [...path, 'id'], received: id, says, remedy: 'Give each its own id.' }]
}

const FACT_REMEDIES: Readonly<Record<BeltFact, string>> = {
  name: 'Give the belt a name.',
  standard: 'Name the standard on the label.',
  serial: 'Write the number on the label, or leave it empty.',
  manufactured:
    'Write a day, month or year of the calendar from 1950 to 2150 as YYYY-MM-DD, YYYY-MM or YYYY, or leave it empty.',
  labelYear: 'Write a whole year, or null.',
  fitted: 'Write a day of the calendar from 1950 to 2150 as YYYY-MM-DD, or leave it empty.',
}

const factContradictions = (belt: BeltRecord, path: FieldPath): readonly Contradiction[] =>
  factProblems(belt).map(({ fact, text }) => ({
    path: [...path, fact],
    received: belt[fact],
    says: text.trim() === '' ? 'it is empty' : `a belt cannot have ${text} there`,
    remedy: FACT_REMEDIES[fact],
  }))

const intervalContradictions = (belt: BeltRecord, path: FieldPath): readonly Contradiction[] => {
  const { inspectEveryMonths } = belt
  if (inspectEveryMonths === undefined || Number.isInteger(inspectEveryMonths)) return []
  return [
    {
      path: [...path, 'inspectEveryMonths'],
      received: inspectEveryMonths,
      says: `${inspectEveryMonths} is no whole number of months`,
      remedy: 'Write whole months, or leave the field out.',
    },
  ]
}

const entryContradictions = (
  belt: BeltRecord,
  entry: BeltEntry,
  index: number,
  path: FieldPath,
): readonly Contradiction[] => {
  const found: Contradiction[] = []
  if (!isCalendarDate(entry.date)) {
    const says = `there is no day ${entry.date}`
    found.push({
      path: [...path, 'date'],
      received: entry.date,
      says,
      remedy: 'Write the date as YYYY-MM-DD.',
    })
  }
  if (entry.kind !== 'struck') return found
  const says = strikeTrouble(belt, entry.entryId, index)
  if (says === null) return found
  const remedy =
    'Name the id of an earlier entry of this belt that is neither a strike nor a correction, once.'
  return [...found, { path: [...path, 'entryId'], received: entry.entryId, says, remedy }]
}

const strikeTrouble = ({ entries }: BeltRecord, entryId: string, index: number): string | null => {
  const earlier = entries.slice(0, index)
  const meant = earlier.find(({ id }) => id === entryId)
  if (meant === undefined) return `no earlier entry of this belt has the id "${entryId}"`
  if (meant.kind === 'struck') return `"${entryId}" is itself a strike`
  if (meant.kind === 'corrected') return `"${entryId}" is a correction; it is changed by another correction`
  const isTwice = earlier.some((entry) => entry.kind === 'struck' && entry.entryId === entryId)
  return isTwice ? `"${entryId}" was struck before` : null
}

/** Corrections of a fact must lead, one from the other, to what the record says now: a fact changed without one is found out. */
const correctionContradictions = (belt: BeltRecord, path: FieldPath): readonly Contradiction[] => {
  const last = new Map<BeltFact, string>()
  const found: Contradiction[] = []
  for (const [index, entry] of belt.entries.entries()) {
    if (entry.kind !== 'corrected') continue
    const before = last.get(entry.fact)
    if (before !== undefined && before !== entry.from) {
      found.push({
        path: [...path, 'entries', index, 'from'],
        received: entry.from,
        says: `the correction before it left "${before}" there`,
        remedy: `Put "${before}" there.`,
      })
    }
    last.set(entry.fact, entry.to)
  }
  for (const [fact, to] of last) {
    if (factText(belt, fact) === to) continue
    found.push({
      path: [...path, fact],
      received: belt[fact],
      says: `its last correction in the history says "${to}"`,
      remedy: 'Put that there, or add the correction that is missing to the entries.',
    })
  }
  return found
}
