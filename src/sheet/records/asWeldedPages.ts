import { type AnchorDeviation, recordDeviations } from '../../domain/layout/asWelded/deviation'
import { findingChanges } from '../../domain/layout/asWelded/findingChanges'
import type { Layout } from '../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../domain/layout/evaluate/evaluation'
import { flowed, type Frame, type PlacedRow } from '../page/flow'
import { footLine, printedBox } from '../page/footLine'
import type { Box, SheetItem } from '../page/item'
import { COLUMN_GAP_MM, columnFrames, columnsOf } from '../page/pageColumns'
import { type Paper, type PaperName, PAPERS } from '../page/paper'
import type { SheetPage } from '../page/sheetPage'
import { cautionRows, heightOf, stacked, widthOf } from '../page/strips'
import { type Typography, typography } from '../page/typography'
import { signatureRow } from './signature'
import { weldedContinued, weldedHeader } from './weldedHeader'
import type { WeldedPaper } from './weldedPaper'
import { weldedSections } from './weldedSections'
import { weldedTable } from './weldedTable'

const GAP_MM = 1.5

/** One page or more for each record: what was planned, measured and found, for the folder of the car. */
export const asWeldedPages = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  papers: readonly WeldedPaper[],
  paperName: PaperName,
): readonly SheetPage[] => {
  const paper = PAPERS[paperName]
  const bodies = papers.flatMap((record) => recordBodies(layout, evaluation, record, paper))
  return bodies.map(({ title, items }, index) => ({
    number: index + 1,
    of: bodies.length,
    widthMm: paper.widthMm,
    heightMm: paper.heightMm,
    title: `${title}, page ${index + 1} of ${bodies.length}`,
    items: [...items, ...footLine(paper, index + 1, bodies.length)],
  }))
}

interface PageBody {
  readonly title: string
  readonly items: readonly SheetItem[]
}

const recordBodies = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  welded: WeldedPaper,
  paper: Paper,
): readonly PageBody[] => {
  const type = typography(1)
  const printed = printedBox(paper)
  const widthMm = widthOf(printed)
  const { record } = welded
  const cautions = cautionRows(widthMm, type)
  const content: Box = { ...printed, bottomMm: printed.bottomMm - heightOf(cautions) - GAP_MM }
  const header = weldedHeader(layout, record, evaluation.ruleSet, widthMm, type)
  const continued = [weldedContinued(layout, record, widthMm, type)]
  const placed = placedRows(layout, evaluation, welded, type, {
    first: { ...content, topMm: content.topMm + heightOf(header) + GAP_MM },
    further: { ...content, topMm: content.topMm + heightOf(continued) + GAP_MM },
  })
  const count = 1 + Math.max(0, ...placed.map(({ pageIndex }) => pageIndex))
  return Array.from({ length: count }, (_, pageIndex) => ({
    title: `As-welded record ${record.name}`.trim(),
    items: [
      ...stacked(pageIndex === 0 ? header : continued, { xMm: printed.leftMm, yMm: printed.topMm }),
      ...placed.filter((row) => row.pageIndex === pageIndex).flatMap(({ row, at }) => row.draw(at)),
      ...stacked(cautions, { xMm: printed.leftMm, yMm: content.bottomMm + GAP_MM }),
    ],
  }))
}

interface PageBoxes {
  readonly first: Box
  readonly further: Box
}

/** The table across the page, what follows in two columns, and the signatures across the page after that. */
const placedRows = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  welded: WeldedPaper,
  type: Typography,
  { first, further }: PageBoxes,
): readonly PlacedRow[] => {
  const widthMm = widthOf(first)
  const deviations = recordDeviations(layout, welded.record)
  const pageBox = (index: number): Box => (index === 0 ? first : further)
  const across =
    (from: number) =>
    (index: number): Frame => ({
      pageIndex: from + index,
      box: pageBox(from + index),
    })
  const table = flowed(weldedTable(deviations, layout, widthMm, type), across(0))
  const tablePage = table.framesUsed - 1
  const below = belowRow(pageBox(tablePage), table.endMm)
  const columnMm = (widthMm - COLUMN_GAP_MM) / 2
  const begun = columnsOf(below, columnMm).map((box): Frame => ({ pageIndex: tablePage, box }))
  const columns = flowed(
    sectionRowsOf(layout, evaluation, welded, deviations, { widthMm: columnMm, type }),
    columnFrames(begun, further, columnMm),
  )
  const placed = [...table.placed, ...columns.placed]
  return [...placed, signed(welded, placed, { below, tablePage, columnMm }, pageBox)]
}

const sectionRowsOf = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  welded: WeldedPaper,
  deviations: readonly AnchorDeviation[],
  { widthMm, type }: { readonly widthMm: number; readonly type: Typography },
) => {
  const planned = evaluation.places.flatMap(({ findings }) => findings)
  const changes = findingChanges(planned, welded.findings, welded.measured.anchors)
  return weldedSections(welded, deviations, changes, evaluation.ruleSet, { layout, widthMm, type })
}

const belowRow = (box: Box, endMm: number): Box => ({ ...box, topMm: Math.min(box.bottomMm, endMm + GAP_MM) })

/** Where the rows of one page end within a box, from its top on. */
const endIn = (placed: readonly PlacedRow[], pageIndex: number, box: Box): number =>
  placed
    .filter(
      ({ pageIndex: page, at }) => page === pageIndex && at.xMm >= box.leftMm - 1 && at.xMm < box.rightMm,
    )
    .reduce((downMm, { at, row }) => Math.max(downMm, at.yMm + row.heightMm), box.topMm)

/** The signatures across the last page below everything else, or at the end of its last column, or on a page of their own. */
const signed = (
  { record }: WeldedPaper,
  placed: readonly PlacedRow[],
  columns: { readonly below: Box; readonly tablePage: number; readonly columnMm: number },
  pageBox: (index: number) => Box,
): PlacedRow => {
  const lastPage = Math.max(0, ...placed.map(({ pageIndex }) => pageIndex))
  const box = pageBox(lastPage)
  const last = columnsOf(lastPage === columns.tablePage ? columns.below : box, columns.columnMm).at(-1) ?? box
  for (const room of [box, last]) {
    const row = signatureRow(record, widthOf(room))
    const endMm = endIn(placed, lastPage, room)
    if (endMm + row.heightMm <= room.bottomMm)
      return { row, pageIndex: lastPage, at: { xMm: room.leftMm, yMm: endMm } }
  }
  const next = pageBox(lastPage + 1)
  const row = signatureRow(record, widthOf(next))
  return { row, pageIndex: lastPage + 1, at: { xMm: next.leftMm, yMm: next.topMm } }
}
