import type { AsWeldedRecord, MeasuredAnchor } from '../../measure/asWeldedRecord'
import { isCalendarDate } from '../../units/calendarDate'
import type { Contradiction } from './contradiction'
import type { FieldPath } from './problem'

/**
 * What as-welded records say that cannot be. That a place or an anchor of a record is not in the layout any more is none: what was
 * measured on the car stays true when the plan changes.
 */
export const asWeldedContradictions = (
  records: readonly AsWeldedRecord[],
  path: FieldPath,
): readonly Contradiction[] =>
  records.flatMap((record, index) => [
    ...repeatedId(records, index, [...path, index]),
    ...dateContradictions(record, [...path, index]),
    ...signatureContradictions(record, [...path, index]),
    ...record.anchors.flatMap((anchor, anchorIndex) => {
      const at = [...path, index, 'anchors', anchorIndex]
      return [
        ...repeatedAnchor(record, anchorIndex, at),
        ...tabContradictions(anchor, at),
        ...heldContradictions(anchor, at),
      ]
    }),
  ])

const repeatedId = (
  records: readonly AsWeldedRecord[],
  index: number,
  path: FieldPath,
): readonly Contradiction[] => {
  const id = records[index]?.id
  const first = records.findIndex((other) => other.id === id)
  if (first === index) return []
  const says = `the id "${id}" is already used by record ${first + 1}`
  return [{ path: [...path, 'id'], received: id, says, remedy: 'Give each record its own id.' }]
}

const dayContradiction = (date: string, path: FieldPath, remedy: string): readonly Contradiction[] =>
  date === '' || isCalendarDate(date)
    ? []
    : [{ path, received: date, says: `there is no day ${date}`, remedy }]

const dateContradictions = ({ date }: AsWeldedRecord, path: FieldPath): readonly Contradiction[] =>
  dayContradiction(date, [...path, 'date'], 'Write the date as YYYY-MM-DD, or leave it empty.')

const signatureContradictions = ({ signed }: AsWeldedRecord, path: FieldPath): readonly Contradiction[] => {
  if (signed === undefined) return []
  const at = [...path, 'signed']
  const dates = dayContradiction(signed.date, [...at, 'date'], 'Write the date as YYYY-MM-DD.')
  if (signed.name.trim() !== '') return dates
  const remedy = 'Name who signed it, or take the signature out.'
  return [
    ...dates,
    { path: [...at, 'name'], received: signed.name, says: 'a record signed by nobody is not signed', remedy },
  ]
}

const repeatedAnchor = (
  { anchors }: AsWeldedRecord,
  index: number,
  path: FieldPath,
): readonly Contradiction[] => {
  const own = anchors[index]
  const first = anchors.findIndex(
    ({ placeId, anchorId }) => placeId === own?.placeId && anchorId === own.anchorId,
  )
  if (own === undefined || first === index) return []
  return [
    {
      path: [...path, 'anchorId'],
      received: own.anchorId,
      says: `"${own.anchorId}" is already measured by entry ${first + 1} of this record`,
      remedy: 'Keep one entry for each anchor; several readings go into one entry.',
    },
  ]
}

const tabContradictions = (anchor: MeasuredAnchor, path: FieldPath): readonly Contradiction[] => {
  if (anchor.planned.kind === 'tab') return []
  const what = anchor.planned.kind === 'wrap' ? 'a wrapped strap' : 'an eye bolt'
  return (['planDeg', 'leanDeg'] as const).flatMap((field) =>
    anchor[field] === undefined
      ? []
      : [
          {
            path: [...path, field],
            received: anchor[field],
            says: `${what} has no tab to measure the angles of`,
            remedy: 'Take the field out.',
          },
        ],
  )
}

const heldContradictions = (
  { planned, plannedHeld }: MeasuredAnchor,
  path: FieldPath,
): readonly Contradiction[] =>
  planned.kind === 'wrap' || plannedHeld === undefined
    ? []
    : [
        {
          path: [...path, 'plannedHeld'],
          received: plannedHeld,
          says: 'only a wrapped strap is measured at the outside of its bar',
          remedy: 'Take the field out.',
        },
      ]
