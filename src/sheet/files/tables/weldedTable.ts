import type { PointMm } from '../../../domain/geometry/point'
import {
  type AnchorDeviation,
  type Deviation,
  recordDeviations,
} from '../../../domain/layout/asWelded/deviation'
import type { Layout } from '../../../domain/layout/document/layout'
import { deviationWords, entryName, wayWords } from '../../../domain/layout/wording/weldedWords'
import type { AsWeldedRecord } from '../../../domain/measure/asWeldedRecord'
import type { CsvTable } from '../csv'
import { column, type ColumnOf, lengthColumns, pointColumns, tableOf } from './columns'

interface MeasuredRow {
  readonly record: AsWeldedRecord
  readonly found: AnchorDeviation
}

/** Every anchor of every as-welded record: planned, measured, how far off, and whether that is allowed. */
export const weldedTable = (layout: Layout): CsvTable => {
  const rows = (layout.asWelded ?? []).flatMap((record) =>
    recordDeviations(layout, record).map((found): MeasuredRow => ({ record, found })),
  )
  const columns = [
    ...column<MeasuredRow>('record', ({ record }) => record.name),
    ...column<MeasuredRow>('measured on', ({ record }) => record.date),
    ...column<MeasuredRow>('measured by', ({ record }) => record.measuredBy),
    ...column<MeasuredRow>('welded from revision', ({ record }) => record.plannedRevision),
    ...column<MeasuredRow>('signed', ({ record: { signed } }) =>
      signed === undefined ? 'open' : `${signed.name}, ${signed.date}`,
    ),
    ...column<MeasuredRow>('anchor', ({ found }) => entryName(found.reading.entry, layout)),
    ...column<MeasuredRow>('way of measuring', ({ found }) => {
      const { measurement } = found.reading.entry
      return measurement === null ? null : wayWords(measurement.kind)
    }),
    ...pointColumns<MeasuredRow>('planned ', ({ found }) => found.reading.entry.planned.point),
    ...pointColumns<MeasuredRow>('measured ', ({ found }) => measuredAt(found)),
    ...AXES.flatMap((axis) => deviationColumns(axis)),
    ...lengthColumns<MeasuredRow>('total off', ({ found }) => found.position?.totalMm ?? null),
    ...column<MeasuredRow>('turn off (deg)', ({ found }) => found.planDeg?.off ?? null),
    ...column<MeasuredRow>('lean off (deg)', ({ found }) => found.leanDeg?.off ?? null),
    ...column<MeasuredRow>('verdict', ({ found }) => verdictText(found)),
  ]
  return tableOf(columns, rows)
}

/** A tab within tolerance by its position alone may still be turned: the verdict names the angles that nobody measured. */
const verdictText = ({ verdict, areAnglesUnmeasured, planDeg, leanDeg }: AnchorDeviation): string => {
  const isJudged = verdict === 'within' || verdict === 'outside'
  if (!areAnglesUnmeasured || !isJudged) return deviationWords(verdict)
  const unmeasured = [...(planDeg === null ? ['turn'] : []), ...(leanDeg === null ? ['lean'] : [])]
  return `${deviationWords(verdict)}, without its ${unmeasured.join(' and ')}, not measured`
}

const AXES = ['x', 'y', 'z'] as const

/** Where the anchor is: the plan and what it is off by. */
const measuredAt = ({ reading, position }: AnchorDeviation): PointMm | null => {
  if (position === null) return null
  const { xMm, yMm, zMm } = reading.entry.planned.point
  return { xMm: xMm + position.x.off, yMm: yMm + position.y.off, zMm: zMm + position.z.off }
}

const deviationColumns = (axis: (typeof AXES)[number]): readonly ColumnOf<MeasuredRow>[] => {
  const of = (value: (deviation: Deviation) => number | null) => (row: MeasuredRow) =>
    row.found.position === null ? null : value(row.found.position[axis])
  return [
    ...lengthColumns<MeasuredRow>(
      `${axis} off`,
      of(({ off }) => off),
    ),
    ...column<MeasuredRow>(
      `${axis} measured to plus or minus (mm)`,
      of(({ uncertainty }) => uncertainty),
    ),
    ...column<MeasuredRow>(
      `${axis} allowed plus or minus (mm)`,
      of(({ allowed }) => allowed),
    ),
  ]
}
