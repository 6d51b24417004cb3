import type { BeltEntry, BeltRecord } from './beltRecord'
import { INSPECTION_ITEM_IDS, type InspectionItemId } from './inspection'

/** Why a belt is out of use. */
type OutOfUse =
  | { readonly kind: 'crash'; readonly entry: BeltEntry }
  | { readonly kind: 'fault'; readonly entry: BeltEntry; readonly items: readonly InspectionItemId[] }

export type BeltCondition =
  | { readonly kind: 'in-use' }
  /** Every reason that nobody has lifted yet, in the order they were entered; at least one. */
  | { readonly kind: 'out-of-use'; readonly reasons: readonly OutOfUse[] }
  /** Taken out of the car for good. */
  | { readonly kind: 'retired'; readonly entry: BeltEntry }

type Entries = Pick<BeltRecord, 'entries'>

/** The strike that takes an entry back, or null while it stands. */
export const strikeOf = ({ entries }: Entries, entryId: string): BeltEntry | null =>
  entries.find((entry) => entry.kind === 'struck' && entry.entryId === entryId) ?? null

/** The entries that stand, without strikes and what they took back, in the order they were entered. */
export const standingEntries = (belt: Entries): readonly BeltEntry[] =>
  belt.entries.filter((entry) => entry.kind !== 'struck' && strikeOf(belt, entry.id) === null)

/** All entries by date; those of one day in the order they were entered. */
export const entriesByDate = ({ entries }: Entries): readonly BeltEntry[] =>
  entries.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))

/** What an inspection found to be faulty. */
export const faultyItems = (entry: BeltEntry): readonly InspectionItemId[] =>
  entry.kind === 'inspection' ? INSPECTION_ITEM_IDS.filter((id) => entry.results[id] === 'fault') : []

/**
 * Whether a belt may be worn as far as its own history says; its age is another matter. A later inspection that finds nothing does
 * not lift a fault: somebody who may has to put the belt back into use. What counts as later is the order of entering, so that
 * a date typed wrong cannot lift anything.
 */
export const beltCondition = (belt: Entries): BeltCondition => {
  let reasons: readonly OutOfUse[] = []
  let retired: BeltEntry | null = null
  for (const entry of standingEntries(belt)) {
    const items = faultyItems(entry)
    if (items.length > 0) reasons = [...reasons, { kind: 'fault', entry, items }]
    else if (entry.kind === 'crash') reasons = [...reasons, { kind: 'crash', entry }]
    else if (entry.kind === 'released')
      reasons = entry.lookedAtBy === 'maker' ? [] : reasons.filter(({ kind }) => kind === 'crash')
    else if (entry.kind === 'retired') retired = entry
  }
  if (retired !== null) return { kind: 'retired', entry: retired }
  return reasons.length > 0 ? { kind: 'out-of-use', reasons } : { kind: 'in-use' }
}

/** Whether everything on the list was looked at. */
export const isWholeInspection = (entry: BeltEntry): boolean =>
  entry.kind === 'inspection' &&
  INSPECTION_ITEM_IDS.every((id) => entry.results[id] === 'sound' || entry.results[id] === 'fault')

/** The latest inspection by date that stands and looked at everything; null when there is none. */
export const lastWholeInspection = (belt: Entries): BeltEntry | null =>
  entriesByDate({ entries: standingEntries(belt) }).findLast(isWholeInspection) ?? null
