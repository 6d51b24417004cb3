import type { PointMm } from '../../src/domain/geometry/point'
import type { Layout } from '../../src/domain/layout/document/layout'
import { addRecord } from '../../src/domain/layout/edit/asWelded'
import type { AsWeldedRecord, MeasuredAnchor } from '../../src/domain/measure/asWeldedRecord'
import type { Measurement } from '../../src/domain/measure/measurement'
import { heldPoint } from '../../src/domain/shop/tape/heldPoint'
import { exampleLayout } from './exampleLayouts'

/** An example as planned, whatever was measured on it. */
export const planOfExample = (file: string): Layout => {
  const { asWelded: _asWelded, ...plan } = exampleLayout(file)
  return plan
}

/** One reading of each coordinate of a point, so far off. */
export const coordinatesAt = (point: PointMm, off: Partial<PointMm> = {}): Measurement => ({
  kind: 'coordinates',
  xMm: [point.xMm + (off.xMm ?? 0)],
  yMm: [point.yMm + (off.yMm ?? 0)],
  zMm: [point.zMm + (off.zMm ?? 0)],
})

/** One reading of each coordinate of what the tape is held to at an entry, so far off the plan. */
export const measuredAt = (
  entry: MeasuredAnchor,
  { tubes }: Pick<Layout, 'tubes'>,
  off: Partial<PointMm> = {},
): MeasuredAnchor => ({ ...entry, measurement: coordinatesAt(heldPoint(entry.planned, tubes), off) })

/** A new record of a layout with every entry changed. */
export const recordWith = (
  layout: Layout,
  change: (entry: MeasuredAnchor) => MeasuredAnchor,
): AsWeldedRecord => {
  const record = addRecord(layout).asWelded?.at(-1)
  if (record === undefined) throw new Error('no record was begun')
  return { ...record, anchors: record.anchors.map(change) }
}
