import type { Tube } from '../../geometry/tube'
import type { AsWeldedRecord, MeasuredAnchor, Signature } from '../../measure/asWeldedRecord'
import type { Measurement, Readings } from '../../measure/measurement'
import { heldPoint } from '../../shop/tape/heldPoint'
import type { Anchor } from '../../straps/anchor'
import { areShoulderStrapsJoined } from '../../straps/strap'
import { isCalendarDate } from '../../units/calendarDate'
import type { Layout, Place, Variants } from '../document/layout'
import { COUNTS } from '../document/limits'
import { freshId } from './change'
import { withReplaced } from './replace'

/*
 * Edits of what was measured on the car. None of them touches the plan, and none changes a record that is signed: they give the
 * very same layout then, as they do when there is nothing to change.
 */

/** Which entry of a record is meant. */
export interface MeasuredRef {
  readonly recordId: string
  readonly placeId: string
  readonly anchorId: string
}

/** The record with this id, or null. */
export const recordOf = (layout: Pick<Layout, 'asWelded'>, recordId: string | null): AsWeldedRecord | null =>
  layout.asWelded?.find(({ id }) => id === recordId) ?? null

/** One record more, the newest last, with every anchor of the car as it is planned now and nothing measured. */
export const addRecord = (layout: Layout): Layout => {
  const records = layout.asWelded ?? []
  if (records.length >= COUNTS.asWelded.max) return layout
  const record: AsWeldedRecord = {
    id: freshId('welded', records),
    name: `Record ${records.length + 1}`,
    date: '',
    measuredBy: '',
    notes: '',
    plannedRevision: layout.job.revision,
    ...(layout.variants === undefined ? {} : { plannedVariant: drawnOf(layout.variants) }),
    anchors: entriesOf(layout),
  }
  return { ...layout, asWelded: [...records, record] }
}

/** A record is of the variant that is drawn when it is begun, and stays so whichever is drawn later. */
const drawnOf = ({ drawn: { id, name } }: Variants): AsWeldedRecord['plannedVariant'] & object => ({
  id,
  name,
})

/** The held point of a wrap hangs on its bar, which may be changed after the record was signed: so the record keeps it. */
const entryOf = (placeId: string, { id, strap, mount }: Anchor, tubes: readonly Tube[]): MeasuredAnchor => ({
  placeId,
  anchorId: id,
  strap,
  planned: mount,
  ...(mount.kind === 'wrap' ? { plannedHeld: heldPoint(mount, tubes) } : {}),
  measurement: null,
})

/** Joined shoulder straps end on one anchor, which is measured once. */
const isOneWithAnother = ({ belt, anchors }: Place, { strap }: Anchor): boolean =>
  strap === 'shoulder-right' &&
  areShoulderStrapsJoined(belt) &&
  anchors.some((other) => other.strap === 'shoulder-left')

const entriesOf = ({ places, tubes }: Layout): readonly MeasuredAnchor[] =>
  places.flatMap((place) =>
    place.anchors
      .filter((anchor) => !isOneWithAnother(place, anchor))
      .map((anchor) => entryOf(place.id, anchor, tubes)),
  )

/** Entries that a record made now would have and this one has not. */
export const entriesMissingIn = (layout: Layout, record: AsWeldedRecord): readonly MeasuredAnchor[] =>
  entriesOf(layout).filter((entry) => !record.anchors.some((other) => isSameEntry(other, entry)))

const isSameEntry = (a: Omit<MeasuredRef, 'recordId'>, b: Omit<MeasuredRef, 'recordId'>): boolean =>
  a.placeId === b.placeId && a.anchorId === b.anchorId

/** The layout with one open record changed. */
const withOpenRecord = (
  layout: Layout,
  recordId: string,
  change: (record: AsWeldedRecord) => AsWeldedRecord,
): Layout => {
  const records = layout.asWelded
  if (records === undefined) return layout
  const asWelded = withReplaced(records, recordId, (record) =>
    record.signed === undefined ? change(record) : record,
  )
  return asWelded === records ? layout : { ...layout, asWelded }
}

/** What is said of the record as a whole. */
export const withRecord = (
  layout: Layout,
  recordId: string,
  patch: Partial<Pick<AsWeldedRecord, 'name' | 'date' | 'measuredBy' | 'notes' | 'plannedRevision'>>,
): Layout => withOpenRecord(layout, recordId, (record) => ({ ...record, ...patch }))

/** The record with the anchors that were added to the plan since it was begun. */
export const withMissingEntries = (layout: Layout, recordId: string): Layout =>
  withOpenRecord(layout, recordId, (record) => {
    const missing = entriesMissingIn(layout, record)
    return missing.length === 0 ? record : { ...record, anchors: [...record.anchors, ...missing] }
  })

const withEntry = (
  layout: Layout,
  ref: MeasuredRef,
  change: (entry: MeasuredAnchor) => MeasuredAnchor,
): Layout =>
  withOpenRecord(layout, ref.recordId, (record) => {
    const anchors = record.anchors.map((entry) => (isSameEntry(entry, ref) ? change(entry) : entry))
    return anchors.some((entry, index) => entry !== record.anchors[index]) ? { ...record, anchors } : record
  })

/** How an anchor was measured; null takes the measurement out again. */
export const withMeasurement = (layout: Layout, ref: MeasuredRef, measurement: Measurement | null): Layout =>
  withEntry(layout, ref, (entry) => ({ ...entry, measurement }))

/** Readings of one angle of a tab; none at all: not measured. Nothing happens for a wrap or an eye bolt. */
export const withTabReadings = (
  layout: Layout,
  ref: MeasuredRef,
  angle: 'planDeg' | 'leanDeg',
  readings: Readings,
): Layout =>
  withEntry(layout, ref, (entry) => {
    if (entry.planned.kind !== 'tab') return entry
    const { [angle]: _before, ...rest } = entry
    return readings.length === 0 ? rest : { ...rest, [angle]: readings }
  })

/**
 * Closes a record for good, with the tolerance and the rule set of now, so that a later change of either does not change what was signed.
 * Nothing happens without a name and a day that the calendar has, or when it is signed already.
 */
export const withSignature = (
  layout: Layout,
  recordId: string,
  { name, date }: Pick<Signature, 'name' | 'date'>,
): Layout => {
  const { tolerance, ruleSetId } = layout
  const signature: Signature = {
    name: name.trim(),
    date,
    ...(tolerance === undefined ? {} : { tolerance }),
    ruleSetId,
  }
  if (signature.name === '' || !isCalendarDate(date)) return layout
  return withOpenRecord(layout, recordId, (record) => ({ ...record, signed: signature }))
}

/** The layout without an open record; a signed one stays. */
export const removeRecord = (layout: Layout, recordId: string): Layout => {
  const record = recordOf(layout, recordId)
  if (record === null || record.signed !== undefined) return layout
  const { asWelded, ...rest } = layout
  const kept = (asWelded ?? []).filter(({ id }) => id !== recordId)
  return kept.length === 0 ? rest : { ...rest, asWelded: kept }
}
