import { type PointMm, pointMm } from '../../geometry/point'
import type { AsWeldedRecord, MeasuredAnchor } from '../../measure/asWeldedRecord'
import type { Layout } from '../document/layout'
import { anchorReading } from './anchorReading'

/** A point that a tape or a string may start from. */
export type OfferedPoint =
  | { readonly sort: 'datum'; readonly point: PointMm }
  /** `number` counts the points of the tube's centre line from 1, as on the mount sheet. */
  | {
      readonly sort: 'tube-end'
      readonly tubeId: string
      readonly number: number
      readonly point: PointMm
    }
  /** Another anchor of the same record, where it was measured. */
  | { readonly sort: 'measured'; readonly entry: MeasuredAnchor; readonly point: PointMm }

/**
 * Points whose place is known: the datum, both ends of every tube's centre line as planned, and the other anchors of the record that have a
 * position by now. A measurement keeps the point as it was when it was picked, so nothing measured from here moves later.
 */
export const offeredPoints = (
  layout: Layout,
  record: AsWeldedRecord,
  own: Pick<MeasuredAnchor, 'placeId' | 'anchorId'>,
): readonly OfferedPoint[] => [
  { sort: 'datum', point: pointMm(0, 0, 0) },
  ...layout.tubes.flatMap(({ id, points }) =>
    points.flatMap((point, index): readonly OfferedPoint[] =>
      index === 0 || index === points.length - 1
        ? [{ sort: 'tube-end', tubeId: id, number: index + 1, point }]
        : [],
    ),
  ),
  ...record.anchors.flatMap((entry): readonly OfferedPoint[] => {
    if (entry.placeId === own.placeId && entry.anchorId === own.anchorId) return []
    const { position } = anchorReading(entry)
    return position?.ok === true ? [{ sort: 'measured', entry, point: position.value.point }] : []
  }),
]
