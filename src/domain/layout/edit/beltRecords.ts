import {
  type BeltEntry,
  type BeltFact,
  type BeltFacts,
  type BeltRecord,
  factText,
  withFactText,
} from '../../care/beltRecord'
import type { NewEntry } from '../../care/entryProblems'
import type { Layout } from '../document/layout'
import { COUNTS } from '../document/limits'
import { freshId } from './change'

/*
 * Edits of belt records. Entries are only ever added; none of these changes or removes one. Values are taken as given: a form
 * asks `entryProblems` and `factProblems` first.
 */

/** Who enters something, when and why. */
export type EntrySaid = Pick<BeltEntry, 'date' | 'by' | 'note'>

const withBelt = (layout: Layout, beltId: string, change: (belt: BeltRecord) => BeltRecord): Layout => {
  const belts = layout.belts ?? []
  const changed = belts.map((belt) => (belt.id === beltId ? change(belt) : belt))
  return changed.every((belt, index) => belt === belts[index]) ? layout : { ...layout, belts: changed }
}

/**
 * One more belt at a place, with an empty history. The id must be one that no belt of any layout has, because calendars know a belt
 * by it. Unchanged when the layout holds as many as it can, or the id is taken.
 */
export const withBeltAdded = (layout: Layout, placeId: string, id: string, facts: BeltFacts): Layout => {
  const belts = layout.belts ?? []
  if (belts.length >= COUNTS.beltRecords.max || belts.some((belt) => belt.id === id)) return layout
  const { name, standard, serial, manufactured, labelYear, fitted } = facts
  const belt = { id, placeId, name, standard, serial, manufactured, labelYear, fitted, entries: [] }
  return { ...layout, belts: [...belts, belt] }
}

/** One more entry at the end of a belt's history. Unchanged when it holds as many as it can. Corrections go through `withFactCorrected`. */
export const withEntryAdded = (
  layout: Layout,
  beltId: string,
  entry: Exclude<NewEntry, { kind: 'corrected' }>,
): Layout => withBelt(layout, beltId, (belt) => appended(belt, entry))

const appended = (belt: BeltRecord, entry: NewEntry): BeltRecord =>
  belt.entries.length >= COUNTS.beltEntries.max
    ? belt
    : { ...belt, entries: [...belt.entries, { ...entry, id: freshId('entry', belt.entries) }] }

/**
 * A fact of the label or the fitting changed, with the correction that keeps what stood there before. Unchanged when it says so
 * already, when the text is no such fact, or when the history is full.
 */
export const withFactCorrected = (
  layout: Layout,
  beltId: string,
  correction: { readonly fact: BeltFact; readonly to: string },
  said: EntrySaid,
): Layout =>
  withBelt(layout, beltId, (belt) => {
    const { fact, to } = correction
    const from = factText(belt, fact)
    const changed = from === to ? null : withFactText(belt, fact, to)
    if (changed === null) return belt
    const kept = appended(changed, { ...said, kind: 'corrected', fact, from, to })
    return kept === changed ? belt : kept
  })

/** The old belt retired and a new record begun at its place, as one step. Unchanged when the layout or the history is full. */
export const withBeltReplaced = (
  layout: Layout,
  beltId: string,
  successor: { readonly id: string; readonly facts: BeltFacts },
  said: EntrySaid,
): Layout => {
  const old = layout.belts?.find(({ id }) => id === beltId)
  if (old === undefined) return layout
  const begun = withBeltAdded(layout, old.placeId, successor.id, successor.facts)
  if (begun === layout) return layout
  const ended = withEntryAdded(begun, beltId, { ...said, kind: 'retired' })
  return ended === begun ? layout : ended
}

/** How often the shop wants a belt looked at, whole months; null for no reminder. Not part of the history: a wish, not a fact. */
export const withInspectionInterval = (layout: Layout, beltId: string, months: number | null): Layout =>
  withBelt(layout, beltId, (belt) => {
    if ((belt.inspectEveryMonths ?? null) === months) return belt
    const { inspectEveryMonths: _before, ...rest } = belt
    return months === null ? rest : { ...rest, inspectEveryMonths: months }
  })
