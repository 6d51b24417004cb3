import type { RuleSet } from '../../domain/rules/rule'
import { toleranceOf } from '../../domain/layout/asWelded/deviation'
import type { Layout } from '../../domain/layout/document/layout'
import { toleranceText } from '../../domain/layout/wording/toleranceText'
import { jobWords } from '../../domain/layout/wording/variantWords'
import type { AsWeldedRecord } from '../../domain/measure/asWeldedRecord'
import { cell, textRows, type BareRow } from '../page/section'
import { tableRow, type CellText, type Column } from '../page/table'
import type { Typography } from '../page/typography'

const SECTION = 'Record'

interface Field {
  readonly label: string
  readonly value: string
  readonly share: number
}

const fieldsOf = (
  { job, variants }: Layout,
  record: AsWeldedRecord,
  ruleSet: RuleSet,
): readonly (readonly Field[])[] => [
  [
    { label: 'Car', value: job.car, share: 0.25 },
    { label: 'Customer', value: job.customer, share: 0.2 },
    { label: 'Job', value: jobWords({ job, variants }), share: 0.3 },
    { label: 'Prepared by', value: job.preparedBy, share: 0.25 },
  ],
  [
    { label: 'Record', value: record.name, share: 0.25 },
    { label: 'Measured on', value: record.date, share: 0.1 },
    { label: 'Measured by', value: record.measuredBy, share: 0.2 },
    { label: 'Welded from revision', value: record.plannedRevision, share: 0.1 },
    { label: 'Revision of the plan now', value: job.revision, share: 0.1 },
    { label: 'Rule set', value: `${ruleSet.name}, ${ruleSet.edition}`, share: 0.25 },
  ],
]

const stripRow = (fields: readonly Field[], widthMm: number, type: Typography): BareRow => {
  const columns: readonly Column[] = fields.map(({ share }) => ({ widthMm: share * widthMm, align: 'left' }))
  const cells: readonly (readonly CellText[])[] = fields.map(({ label, value }) => [
    cell(label, type.small, 1),
    cell(value.trim() === '' ? '–' : value, type.strong, 3),
  ])
  return tableRow(columns, cells, { section: SECTION, rule: 'thin' })
}

const stateText = ({ signed }: AsWeldedRecord): string =>
  signed === undefined
    ? 'Open: not signed yet, and what it says may still change.'
    : `Signed by ${signed.name} on ${signed.date}.`

/** The strip across the top of a record's first page: which car, which record, from where and against what it was measured. */
export const weldedHeader = (
  layout: Layout,
  record: AsWeldedRecord,
  ruleSet: RuleSet,
  widthMm: number,
  type: Typography,
): readonly BareRow[] => {
  const datum =
    layout.datum.trim() === ''
      ? 'Datum: not named. Nobody can measure again from it.'
      : `Datum: ${layout.datum.trim()}`
  const allowed = toleranceOf(layout, record)
  const tolerance =
    allowed === undefined
      ? 'No tolerance is typed: deviations are shown and not judged.'
      : `Tolerance: ${toleranceText(allowed, layout.units.length)}. Within: the deviation and what the measurement may be off by stay inside it together; between within and outside nothing can be told.`
  return [
    tableRow(
      [
        { widthMm: widthMm * 0.5, align: 'left' },
        { widthMm: widthMm * 0.5, align: 'right' },
      ],
      [[cell('As-welded record', type.title, 1)], [cell(stateText(record), type.heading, 2)]],
      { section: SECTION, rule: 'heavy' },
    ),
    ...fieldsOf(layout, record, ruleSet).map((fields) => stripRow(fields, widthMm, type)),
    ...textRows(datum, widthMm, type.heading, SECTION),
    ...textRows(tolerance, widthMm, type.body, SECTION),
  ]
}

/** One line at the top of every further page. */
export const weldedContinued = (
  layout: Layout,
  record: AsWeldedRecord,
  widthMm: number,
  type: Typography,
): BareRow => {
  const words = [layout.job.car, record.name, record.date].filter((word) => word.trim() !== '')
  return tableRow(
    [{ widthMm, align: 'left' }],
    [[cell(['As-welded record, continued', ...words].join(' · '), type.heading, 1)]],
    { section: SECTION, rule: 'heavy' },
  )
}
