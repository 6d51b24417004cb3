import {
  type AnchorDeviation,
  type Deviation,
  type PositionDeviation,
} from '../../domain/layout/asWelded/deviation'
import type { Layout, LengthUnit } from '../../domain/layout/document/layout'
import { problemOf, qualityText } from '../../domain/layout/wording/readingLines'
import {
  angleOffText,
  axisOffText,
  deviationWords,
  entryName,
  sharedText,
  wayWords,
} from '../../domain/layout/wording/weldedWords'
import type { TabMount } from '../../domain/straps/anchor'
import { angleText } from '../../domain/units/angle'
import { lengthText, lengthWithUnit } from '../../domain/units/length'
import type { FlowRow } from '../page/flow'
import { cell, headingRow, type BareRow } from '../page/section'
import { tableRow, type CellText, type Column } from '../page/table'
import type { Typography } from '../page/typography'

const TABLE_SECTION = 'Planned and measured'

/** Shares of the width, in the order of the columns; the last takes what is left. */
const SHARES = [0.14, 0.052, 0.052, 0.052, 0.052, 0.052, 0.052, 0.078, 0.078, 0.078, 0.055, 0.1] as const

const columnsIn = (widthMm: number): readonly Column[] => {
  const left = 1 - SHARES.reduce((sum, share) => sum + share, 0)
  return [...SHARES, left].map((share, index) => ({
    widthMm: share * widthMm,
    align: index === 0 || index >= 11 ? 'left' : 'right',
  }))
}

const AXES = ['x', 'y', 'z'] as const

const other = (unit: LengthUnit): LengthUnit => (unit === 'mm' ? 'in' : 'mm')

/** More lines than this a cell never needs; it only keeps a foreign text from filling a page. */
const MOST_LINES = 30

/** A length as the shop works, with the other unit under it. */
const both = (lengthMm: number, unit: LengthUnit, type: Typography): readonly CellText[] => [
  cell(lengthText(lengthMm, unit), type.strong, 1),
  cell(lengthWithUnit(lengthMm, other(unit)), type.small, 1),
]

const NOTHING = '–'

const offCell = (
  position: PositionDeviation | null,
  axis: (typeof AXES)[number],
  unit: LengthUnit,
  type: Typography,
): readonly CellText[] => {
  if (position === null) return [cell(NOTHING, type.body, 1)]
  const { off, allowed } = position[axis]
  return [
    cell(axisOffText(axis, off, unit), type.strong, 4),
    ...(unit === 'mm' ? [cell(lengthWithUnit(Math.abs(off), 'in'), type.small, 1)] : []),
    ...(allowed === null ? [] : [cell(`± ${lengthWithUnit(allowed, 'mm')} allowed`, type.small, 2)]),
  ]
}

const angleLine = (
  words: string,
  plannedDeg: number,
  deviation: Deviation | null,
  measuredDeg: number | null,
): string =>
  deviation === null || measuredDeg === null
    ? `${words} ${angleText(plannedDeg)} planned, not measured`
    : `${words} ${angleText(plannedDeg)} planned, ${angleText(measuredDeg)} measured, off ${angleOffText(deviation.off)}`

const tabLines = (planned: TabMount, { planDeg, leanDeg, reading }: AnchorDeviation): readonly string[] => [
  angleLine(
    'Turn',
    planned.planDeg,
    planDeg,
    reading.planDeg?.ok === true ? reading.planDeg.value.mean : null,
  ),
  angleLine(
    'Lean',
    planned.leanDeg,
    leanDeg,
    reading.leanDeg?.ok === true ? reading.leanDeg.value.mean : null,
  ),
]

const nameCell = (deviation: AnchorDeviation, layout: Layout, type: Typography): readonly CellText[] => {
  const { entry } = deviation.reading
  const lines = entry.planned.kind === 'tab' ? tabLines(entry.planned, deviation) : []
  const shared = sharedText(entry, layout)
  const held = entry.planned.kind === 'wrap' ? ['measured at the mark on the outside of the bar'] : []
  return [
    cell(entryName(entry, layout), type.strong, 4),
    ...[...lines, ...held, ...(shared === null ? [] : [shared])].map((line) => cell(line, type.small, 3)),
  ]
}

const howCell = (deviation: AnchorDeviation, layout: Layout, type: Typography): readonly CellText[] => {
  const { entry } = deviation.reading
  if (entry.measurement === null) return []
  const unit = layout.units.length
  const quality = qualityText(deviation, unit) ?? problemOf(deviation.reading, unit) ?? ''
  return [cell(`${wayWords(entry.measurement.kind)}: ${quality}`, type.small, MOST_LINES)]
}

const verdictCell = (deviation: AnchorDeviation, type: Typography): readonly CellText[] => {
  const isJudged = deviation.verdict === 'within' || deviation.verdict === 'outside'
  return [
    cell(deviationWords(deviation.verdict), type.strong, 4),
    ...(deviation.areAnglesUnmeasured && isJudged
      ? [cell('without the angles that were not measured', type.small, 4)]
      : []),
  ]
}

const deviationRow = (
  deviation: AnchorDeviation,
  layout: Layout,
  columns: readonly Column[],
  type: Typography,
): BareRow => {
  const unit = layout.units.length
  const { planned, position, reading } = deviation
  const point = reading.position?.ok === true ? reading.position.value.point : null
  const measured = AXES.map((axis): readonly CellText[] =>
    point === null ? [cell(NOTHING, type.body, 1)] : both(point[`${axis}Mm`], unit, type),
  )
  return tableRow(
    columns,
    [
      nameCell(deviation, layout, type),
      ...AXES.map((axis) => both(planned[`${axis}Mm`], unit, type)),
      ...measured,
      ...AXES.map((axis) => offCell(position, axis, unit, type)),
      position === null ? [cell(NOTHING, type.body, 1)] : both(position.totalMm, unit, type),
      verdictCell(deviation, type),
      howCell(deviation, layout, type),
    ],
    { section: TABLE_SECTION, rule: 'thin' },
  )
}

const headRow = (layout: Layout, columns: readonly Column[], type: Typography): FlowRow => {
  const unit = layout.units.length
  const head = (name: string, small: string): readonly CellText[] => [
    cell(name, type.strong, 2),
    cell(small, type.small, 3),
  ]
  const cells = [
    head('Anchor', 'angles of its tab'),
    ...AXES.map((axis) => head(`${axis}, ${unit}`, 'planned')),
    ...AXES.map((axis) => head(`${axis}, ${unit}`, 'measured')),
    ...AXES.map((axis) => head(`Off in ${axis}`, 'measured less planned')),
    head('Off', 'straight'),
    head('Verdict', 'against the tolerance'),
    head('How it was measured', 'readings, scatter, what these leave open'),
  ]
  return {
    ...tableRow(columns, cells, { section: TABLE_SECTION, rule: 'thin', keepWithNext: true }),
    continuation: [],
  }
}

/** One row for each anchor of a record; the head comes again on every page. */
export const weldedTable = (
  deviations: readonly AnchorDeviation[],
  layout: Layout,
  widthMm: number,
  type: Typography,
): readonly FlowRow[] => {
  const columns = columnsIn(widthMm)
  const head = headRow(layout, columns, type)
  const title = headingRow('Planned and measured positions, from the datum', TABLE_SECTION, widthMm, type)
  const again = headingRow(
    'Planned and measured positions, from the datum (continued)',
    TABLE_SECTION,
    widthMm,
    type,
  )
  return [
    title,
    head,
    ...deviations.map((deviation) => ({
      ...deviationRow(deviation, layout, columns, type),
      continuation: [again, head],
    })),
  ]
}
