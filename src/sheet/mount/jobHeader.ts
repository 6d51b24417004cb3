import type { Layout } from '../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../domain/layout/evaluate/evaluation'
import { findingCounts, hasBrokenFindings } from './sections/findingSection'
import type { FlowRow } from '../page/flow'
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
const DATUM_SHARE = 0.55

const stripFields = (layout: Layout, evaluation: CheckedEvaluation): readonly (readonly Field[])[] => {
  const { job, units } = layout
  const { ruleSet } = evaluation
  const unit = units.length === 'mm' ? 'millimetres; inches in small' : 'inches to 1/16; millimetres in small'
  return [
    [
      { label: 'Car', value: job.car, share: 0.27 },
      { label: 'Customer', value: job.customer, share: 0.22 },
      { label: 'Job', value: job.name, share: 0.27 },
    ],
    [
      { label: 'Prepared by', value: job.preparedBy, share: 0.2 },
      { label: 'Date', value: job.date, share: 0.1 },
      { label: 'Revision', value: job.revision, share: 0.1 },
      { label: 'Rule set', value: `${ruleSet.name}, ${ruleSet.edition}`, share: 0.36 },
      { label: 'Lengths', value: unit, share: 0.24 },
    ],
  ]
}

/** The strip across the top of the first page: what car, whose, which revision, which rules, and how many limits are broken. */
export const jobHeader = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  widthMm: number,
  type: Typography,
): readonly BareRow[] => {
  const [first = [], second = []] = stripFields(layout, evaluation)
  const columns = (fields: readonly Field[]): readonly Column[] =>
    fields.map((field) => ({ widthMm: field.share * widthMm, align: 'left' }))
  const titleMm = widthMm * 0.24
  return [
    tableRow(
      [{ widthMm: titleMm, align: 'left' }, ...columns(first)],
      [[cell('Mount sheet', type.title, 1)], ...first.map((field) => fieldCell(field, type))],
      { section: SECTION, rule: 'thin' },
    ),
    tableRow(
      columns(second),
      second.map((field) => fieldCell(field, type)),
      { section: SECTION, rule: 'thin' },
    ),
    tableRow(
      [
        { widthMm: widthMm * DATUM_SHARE, align: 'left' },
        { widthMm: widthMm * (1 - DATUM_SHARE), align: 'left' },
      ],
      [
        [cell(datumText(layout), type.heading, DATUM_LINES)],
        [cell(statusText(evaluation), type.heading, DATUM_LINES)],
      ],
      { section: SECTION, rule: 'heavy', shaded: hasBrokenFindings(evaluation) },
    ),
  ]
}

const datumText = ({ datum }: Layout): string =>
  datum.trim() === ''
    ? 'Datum: not named. Name a point that a tape can reach before anything is measured.'
    : `Datum: ${datum.trim()}`

const statusText = (evaluation: CheckedEvaluation): string => {
  const counts = `Findings: ${findingCounts(evaluation)}.`
  return hasBrokenFindings(evaluation) ? `${counts} Settle what is broken before anything is welded.` : counts
}

const fieldCell = ({ label, value }: Field, type: Typography): readonly CellText[] => [
  cell(label, type.small, 1),
  cell(value === '' ? '–' : value, type.strong, STRIP_LINES),
]

/** Entries that the strip had to cut, in full, and the notes. */
export const jobInFull = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  strip: { readonly widthMm: number },
  setting: { readonly widthMm: number; readonly type: Typography },
): readonly FlowRow[] => {
  const { widthMm, type } = setting
  const cut = stripFields(layout, evaluation)
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
  const notes = layout.job.notes.trim()
  return [
    ...sectionRows('Job in full', widthMm, type, [...full, ...datum]),
    ...sectionRows('Notes', widthMm, type, notes === '' ? [] : textRows(notes, widthMm, type.body, 'Notes')),
  ]
}

/** One line at the top of every further page. */
export const continuedHeader = (layout: Layout, widthMm: number, type: Typography): BareRow => {
  const { car, name, revision, date } = layout.job
  const words = [car, name, revision === '' ? '' : `revision ${revision}`, date].filter((word) => word !== '')
  return tableRow(
    [{ widthMm, align: 'left' }],
    [[cell(['Mount sheet, continued', ...words].join(' · '), type.heading, 1)]],
    { section: SECTION, rule: 'heavy' },
  )
}
