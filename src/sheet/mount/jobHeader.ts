import type { Layout } from '../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../domain/layout/evaluate/evaluation'
import { notMeasuredTitles } from '../../domain/layout/firstLayout/notMeasured'
import { findingCounts, hasBrokenFindings } from './sections/findingSection'
import { drawnVariantName } from '../../domain/layout/edit/changeVariants'
import { drawnVariantWords, jobWords } from '../../domain/layout/wording/variantWords'
import { toleranceText } from '../../domain/layout/wording/toleranceText'
import { PROJECTION_SYMBOL_WIDTH_MM, projectionSymbol } from './figure/projectionSymbol'
import type { FlowRow } from '../page/flow'
import { boxItem } from '../page/item'
import { cell, sectionRows, textRows, type BareRow } from '../page/section'
import { CELL_SIDE_MM, tableRow, type CellText, type Column } from '../page/table'
import { wrappedLines } from '../page/textWidth'
import type { Typography } from '../page/typography'

interface Field {
  readonly label: string
  readonly value: string
  /** Share of the strip's width. */
  readonly share: number
}

const SECTION = 'Job'
/** Longer entries are cut in the strip and stand in full under "Job in full". */
const STRIP_LINES = 2
const DATUM_LINES = 3
const DATUM_SHARE = 0.42
const TOLERANCE_SHARE = 0.28

/** What the strip says of the drawing, beside what the layout says itself. */
export interface DrawingFacts {
  /** n of 1:n. */
  readonly scale: number
  readonly sheetCount: number
}

const PROJECTION = 'Projection'

const stripFields = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  { scale, sheetCount }: DrawingFacts,
): readonly (readonly Field[])[] => {
  const { job, units } = layout
  const { ruleSet } = evaluation
  const unit = units.length === 'mm' ? 'millimetres; inches in small' : 'inches to 1/16; millimetres in small'
  return [
    [
      { label: 'Car', value: job.car, share: 0.27 },
      { label: 'Customer', value: job.customer, share: 0.22 },
      { label: 'Job', value: jobWords(layout), share: 0.27 },
    ],
    [
      { label: 'Prepared by', value: job.preparedBy, share: 0.15 },
      { label: 'Date', value: job.date, share: 0.08 },
      { label: 'Revision', value: job.revision, share: 0.07 },
      { label: 'Sheet', value: `1 of ${sheetCount}`, share: 0.06 },
      { label: 'Scale', value: `1:${scale}`, share: 0.06 },
      { label: PROJECTION, value: 'third angle', share: 0.11 },
      { label: 'Lengths', value: unit, share: 0.2 },
      { label: 'Rule set', value: `${ruleSet.name}, ${ruleSet.edition}`, share: 0.27 },
    ],
  ]
}

/**
 * The strip across the top of the first page: what car, whose, which sheet, revision and scale, from where everything is measured, within
 * what, by which rules, and how many limits are broken. A datum without a name is said before anything else.
 */
export const jobHeader = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  facts: DrawingFacts,
  widthMm: number,
  type: Typography,
): readonly BareRow[] => {
  const [first = [], second = []] = stripFields(layout, evaluation, facts)
  const columns = (fields: readonly Field[]): readonly Column[] =>
    fields.map((field) => ({ widthMm: field.share * widthMm, align: 'left' }))
  const titleMm = widthMm * 0.24
  return [
    ...warningRows(layout, widthMm, type),
    tableRow(
      [{ widthMm: titleMm, align: 'left' }, ...columns(first)],
      [titleCell(layout, type), ...first.map((field) => fieldCell(field, type))],
      { section: SECTION, rule: 'thin' },
    ),
    withProjectionSymbol(
      tableRow(
        columns(second),
        second.map((field) => fieldCell(field, type)),
        { section: SECTION, rule: 'thin' },
      ),
      second,
      widthMm,
    ),
    tableRow(
      [
        { widthMm: widthMm * DATUM_SHARE, align: 'left' },
        { widthMm: widthMm * TOLERANCE_SHARE, align: 'left' },
        { widthMm: widthMm * (1 - DATUM_SHARE - TOLERANCE_SHARE), align: 'left' },
      ],
      [
        [cell(datumText(layout), type.heading, DATUM_LINES)],
        [
          cell('General tolerances', type.small, 1),
          cell(generalTolerances(layout), type.strong, DATUM_LINES),
        ],
        [cell(statusText(evaluation), type.heading, DATUM_LINES)],
      ],
      { section: SECTION, rule: 'heavy', shaded: hasBrokenFindings(evaluation) },
    ),
  ]
}

/** Which sheet, and of which variant: a sheet of another one must not be welded from. */
const titleCell = (layout: Layout, type: Typography): readonly CellText[] => {
  const variant = drawnVariantName(layout)
  return [
    cell('Mount sheet', type.title, 1),
    ...(variant === '' ? [] : [cell(`Variant: ${variant}`, type.strong, STRIP_LINES)]),
  ]
}

/** The sign stands at the right end of the field that names the projection, beside its words. */
const withProjectionSymbol = (row: BareRow, fields: readonly Field[], widthMm: number): BareRow => {
  const index = fields.findIndex(({ label }) => label === PROJECTION)
  const endShare = fields.slice(0, index + 1).reduce((sum, { share }) => sum + share, 0)
  return {
    ...row,
    draw: (at) => [
      ...row.draw(at),
      ...projectionSymbol({
        xMm: at.xMm + endShare * widthMm - PROJECTION_SYMBOL_WIDTH_MM - CELL_SIDE_MM,
        yMm: at.yMm + row.heightMm / 2,
      }),
    ],
  }
}

/** Between the upper edge of a box and its words. Our judgement. */
const AIR_MM = 0.8

/** Words in a box of their own across the strip. */
const boxedRow = (words: CellText, widthMm: number): BareRow => {
  const row = tableRow([{ widthMm, align: 'centre' }], [[words]], {
    section: SECTION,
    rule: 'none',
    shaded: true,
  })
  return {
    ...row,
    heightMm: row.heightMm + 1 + AIR_MM,
    draw: (at) => [
      ...row.draw({ ...at, yMm: at.yMm + AIR_MM }),
      boxItem(
        {
          leftMm: at.xMm + 0.4,
          topMm: at.yMm + 0.4,
          rightMm: at.xMm + widthMm - 0.4,
          bottomMm: at.yMm + AIR_MM + row.heightMm - 0.1,
        },
        { widthMm: 0.7 },
      ),
    ],
  }
}

/** Nothing may be measured from a point that nobody can find, nor welded from numbers that nobody measured: said on every page. */
const warningRows = (layout: Layout, widthMm: number, type: Typography): readonly BareRow[] => {
  const titles = notMeasuredTitles(layout)
  return [
    ...(layout.datum.trim() === '' ? [boxedRow(cell(UNNAMED_DATUM, type.title, 3), widthMm)] : []),
    ...(titles.length === 0
      ? []
      : [boxedRow(cell(`${NOT_MEASURED} ${titles.join(' ')}`, type.strong, 6), widthMm)]),
  ]
}

const NOT_MEASURED =
  'NOT MEASURED YET: weld nothing from this sheet before these are measured on the car and answered.'

const UNNAMED_DATUM = 'DATUM NOT NAMED: measure nothing from this sheet. Name the datum in Job.'

const datumText = ({ datum }: Layout): string =>
  datum.trim() === '' ? 'Datum: not named.' : `Datum: ${datum.trim()}`

const generalTolerances = ({ tolerance, units }: Layout): string =>
  tolerance === undefined
    ? 'Nobody has typed any: agree them before anything is welded.'
    : `Anchors ${toleranceText(tolerance, units.length)}`

const statusText = (evaluation: CheckedEvaluation): string => {
  const counts = `Findings: ${findingCounts(evaluation)}.`
  return hasBrokenFindings(evaluation) ? `${counts} Settle what is broken before anything is welded.` : counts
}

const fieldCell = ({ label, value }: Field, type: Typography): readonly CellText[] => [
  cell(label, type.small, 1),
  cell(value === '' ? '–' : value, type.strong, STRIP_LINES),
]

/** Entries that the strip had to cut, in full. */
export const jobInFull = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  strip: { readonly widthMm: number },
  setting: { readonly widthMm: number; readonly type: Typography },
): readonly FlowRow[] => {
  const { widthMm, type } = setting
  const cut = stripFields(layout, evaluation, { scale: 1, sheetCount: 1 })
    .flat()
    .filter(({ value, share }) => {
      const roomMm = share * strip.widthMm - 2 * CELL_SIDE_MM
      return wrappedLines(value, roomMm, type.strong.sizeMm, type.strong.weight).length > STRIP_LINES
    })
  const full = cut.flatMap(({ label, value }) =>
    textRows(`${label}: ${value}`, widthMm, type.body, 'Job in full'),
  )
  const datumRoomMm = strip.widthMm * DATUM_SHARE - 2 * CELL_SIDE_MM
  const { sizeMm, weight } = type.heading
  const isDatumCut = wrappedLines(datumText(layout), datumRoomMm, sizeMm, weight).length > DATUM_LINES
  const datum = isDatumCut ? textRows(datumText(layout), widthMm, type.body, 'Job in full') : []
  return sectionRows('Job in full', widthMm, type, [...full, ...datum])
}

export const notesSection = (setting: {
  readonly layout: Layout
  readonly widthMm: number
  readonly type: Typography
}): readonly FlowRow[] => {
  const { layout, widthMm, type } = setting
  const notes = layout.job.notes.trim()
  return sectionRows('Notes', widthMm, type, notes === '' ? [] : textRows(notes, widthMm, type.body, 'Notes'))
}

/** At the top of every further page: what it belongs to, and where everything is measured from. */
export const continuedHeader = (
  layout: Layout,
  sheet: { readonly number: number; readonly count: number },
  widthMm: number,
  type: Typography,
): readonly BareRow[] => {
  const { car, name, revision, date } = layout.job
  const words = [
    drawnVariantWords(layout),
    car,
    name,
    revision === '' ? '' : `revision ${revision}`,
    date,
  ].filter((word) => word !== '')
  const numbered = `sheet ${sheet.number} of ${sheet.count}`
  return [
    ...warningRows(layout, widthMm, type),
    tableRow(
      [
        { widthMm: widthMm * 0.88, align: 'left' },
        { widthMm: widthMm * 0.12, align: 'right' },
      ],
      [
        [
          cell(['Mount sheet, continued', ...words].join(' · '), type.heading, 1),
          cell(datumText(layout), type.small, 1),
        ],
        [cell(numbered, type.heading, 1)],
      ],
      { section: SECTION, rule: 'heavy' },
    ),
  ]
}
