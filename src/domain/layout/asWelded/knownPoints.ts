import type { PointMm } from '../../geometry/point'
import type { AsWeldedRecord, MeasuredAnchor } from '../../measure/asWeldedRecord'
import { type TapePlace, tapePlaces } from '../../shop/tape/tapePlace'
import type { TapePoint } from '../../shop/tape/tapePoint'
import type { Layout } from '../document/layout'
import { anchorReading } from './anchorReading'
import { uncertaintyMm } from './uncertainty'

/** A layout as far as it says what a tape can be held to. */
type TapePoints = Pick<Layout, 'tubes'> & { readonly tapePoints?: readonly TapePoint[] }

/**
 * An anchor is a point to measure from only while each of its coordinates is sure to this: what it is off by goes into everything measured
 * from it, and no verdict there would know. Twice what a tape of millimetres is read to. Our judgement.
 */
const SURE_MM = 1

/** A point that a tape or a string may start from. */
export type OfferedPoint =
  | { readonly sort: 'place'; readonly place: TapePlace; readonly point: PointMm }
  /** Another anchor of the same record, where it was measured well enough. */
  | { readonly sort: 'measured'; readonly entry: MeasuredAnchor; readonly point: PointMm }

/**
 * Points whose place is known: what a tape can be held to by the plan, and the other anchors of the record whose position is sure by now.
 * A measurement keeps the point as it was when it was picked, so nothing measured from here moves later.
 */
export const offeredPoints = (
  { tapePoints = [], tubes }: TapePoints,
  record: AsWeldedRecord,
  own: Pick<MeasuredAnchor, 'placeId' | 'anchorId'>,
): readonly OfferedPoint[] => [
  ...tapePlaces({ tapePoints, tubes }).map((place): OfferedPoint => ({
    sort: 'place',
    place,
    point: place.point,
  })),
  ...record.anchors.flatMap((entry): readonly OfferedPoint[] => {
    if (entry.placeId === own.placeId && entry.anchorId === own.anchorId) return []
    const { position } = anchorReading(entry)
    return position?.ok === true && isSure(entry)
      ? [{ sort: 'measured', entry, point: position.value.point }]
      : []
  }),
]

const isSure = ({ measurement }: MeasuredAnchor): boolean => {
  const off = measurement === null ? null : uncertaintyMm(measurement)
  return off !== null && Math.max(off.x, off.y, off.z) <= SURE_MM
}
