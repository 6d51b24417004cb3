import { CHECK_BAR_HEIGHT_MM, CHECK_BAR_WIDTH_MM } from '../page/checkBar'
import { fittedWhole } from '../page/firstFit'
import { type Flowed, flowed, type FlowRow, type Frame, type PlacedRow } from '../page/flow'
import { printedBox } from '../page/footLine'
import type { Box, PagePoint } from '../page/item'
import { COLUMN_GAP_MM, columnFrames, columnsOf } from '../page/pageColumns'
import type { Paper } from '../page/paper'
import { gapRow } from '../page/section'
import { heightOf, widthOf } from '../page/strips'
import type { ElevationFigure, FigureMaker } from './figure/elevationFigure'
import { continuedHeader, jobHeader } from './jobHeader'
import { readSections, type Section, type SectionInput, workSections } from './sections'
import { type Foot, signOffFoot } from './signOff'
import { type AnchorTable, anchorTable } from './table/anchorTable'

/** How much of the width the tables get at least beside the drawing: the more they get, the smaller the drawing. Our judgement. */
const TABLES_MIN_MM = [125, 131, 137, 144, 150, 157, 165, 175, 190] as const
const SMALL_GAP_MM = 1.5
const SECTION_GAP_MM = 2

/** Columns of the further pages. Our judgement: three hold a detail with its words beside it, and lines that are easily read. */
const FURTHER_COLUMNS = 3

export interface Sheet extends SectionInput {
  readonly paper: Paper
  readonly makeFigure: FigureMaker
}

/** What is the same for every size of the drawing. */
export interface Prepared extends Sheet {
  readonly printed: Box
  /** What the strip across the top of the first page leaves. */
  readonly content: Box
  /** A further page below its heading, and the width of its columns. */
  readonly fullPage: Box
  readonly columnMm: number
  readonly work: readonly Section[]
  readonly read: readonly Section[]
}

/** Where everything goes, before anything is drawn. */
export interface Composition extends Prepared {
  readonly figure: ElevationFigure
  readonly foot: Foot
  readonly footCorner: PagePoint
  readonly placed: readonly PlacedRow[]
  readonly pageCount: number
  readonly isCramped: boolean
}

/** The numbers of sheets and the scale stand on one line whatever they are: any will do to find the height. */
const ANY_FACTS = { scale: 10, sheetCount: 9 } as const

export const prepared = (sheet: Omit<Sheet, 'stripWidthMm'>): Prepared => {
  const { layout, evaluation, type } = sheet
  const printed = printedBox(sheet.paper)
  const stripWidthMm = widthOf(printed)
  const headerMm = heightOf(jobHeader(layout, evaluation, ANY_FACTS, stripWidthMm, type))
  const furtherMm = heightOf(continuedHeader(layout, { number: 2, count: 9 }, stripWidthMm, type))
  const columnMm = (stripWidthMm - (FURTHER_COLUMNS - 1) * COLUMN_GAP_MM) / FURTHER_COLUMNS
  const input = { ...sheet, stripWidthMm }
  return {
    ...input,
    printed,
    content: { ...printed, topMm: printed.topMm + headerMm + SMALL_GAP_MM },
    fullPage: { ...printed, topMm: printed.topMm + furtherMm + SMALL_GAP_MM },
    columnMm,
    work: workSections(input, columnMm),
    read: readSections(input, columnMm),
  }
}

/** The drawing in every scale that leaves enough for the tables, each once. */
export const figuresFor = ({ content, makeFigure }: Prepared): readonly ElevationFigure[] => {
  const figures = TABLES_MIN_MM.map((tablesMinMm) =>
    makeFigure({
      widthMm: widthOf(content) - COLUMN_GAP_MM - tablesMinMm,
      heightMm: content.bottomMm - content.topMm - CHECK_BAR_HEIGHT_MM,
    }),
  )
  return [...new Map(figures.map((figure) => [figure.scale, figure])).values()]
}

export const composed = (sheet: Prepared, figure: ElevationFigure): Composition => {
  const { layout, type, content } = sheet
  const leftMm = Math.max(figure.widthMm, CHECK_BAR_WIDTH_MM)
  const right = { ...content, leftMm: content.leftMm + leftMm + COLUMN_GAP_MM }
  const foot = signOffFoot(widthOf(right), type)
  const footCorner = { xMm: right.leftMm, yMm: right.bottomMm - foot.heightMm }
  const first = {
    tables: { ...right, bottomMm: footCorner.yMm - SMALL_GAP_MM },
    belowFigure: {
      leftMm: content.leftMm,
      rightMm: content.leftMm + leftMm,
      topMm: content.topMm + figure.heightMm + SMALL_GAP_MM,
      bottomMm: content.bottomMm - CHECK_BAR_HEIGHT_MM - SMALL_GAP_MM,
    },
  }
  const table = anchorTable(sheet.anchors, { layout, widthMm: widthOf(right), type })
  const placed = placedRows(sheet, table, first)
  const pageCount = 1 + Math.max(0, ...placed.map((row) => row.pageIndex))
  return { ...sheet, figure, foot, footCorner, placed, pageCount, isCramped: table.isCramped }
}

/** The first page's room for tables, and what the drawing leaves free below itself. */
interface FirstPage {
  readonly tables: Box
  readonly belowFigure: Box
}

/**
 * The anchor table in its frames; then what only says something, whole sections at a time, in the room that the first page has left;
 * then what is worked by and the remaining sections in columns of further pages.
 */
const placedRows = (sheet: Prepared, table: AnchorTable, first: FirstPage): readonly PlacedRow[] => {
  const { fullPage, columnMm } = sheet
  const widthMm = widthOf(first.tables)
  const anchors = flowed(table.rows, (index) => ({
    pageIndex: index,
    box: index === 0 ? first.tables : { ...fullPage, rightMm: fullPage.leftMm + widthMm },
  }))
  const filling = anchors.framesUsed > 1 ? NOTHING_FITTED(sheet) : firstPageFill(sheet, anchors, first)
  const further = [...sheet.work, ...filling.left.flatMap((index) => [sheet.read[index] ?? []])]
  const lastPage = anchors.framesUsed - 1
  const begun = lastPage === 0 ? [] : columnsBelow(anchors, fullPage, columnMm)
  const rest = flowed(spaced(further), columnFrames(begun, fullPage, columnMm, lastPage))
  return [...anchors.placed, ...filling.placed, ...(further.length === 0 ? [] : rest.placed)]
}

const NOTHING_FITTED = ({ read }: Prepared): ReturnType<typeof fittedWhole> => ({
  placed: [],
  left: read.map((_, index) => index),
})

/** Two columns below the anchor table, and one below the drawing where it is wide enough. */
const firstPageFill = (
  sheet: Prepared,
  table: Flowed,
  { tables, belowFigure }: FirstPage,
): ReturnType<typeof fittedWhole> => {
  const columnMm = (widthOf(tables) - COLUMN_GAP_MM) / 2
  const below = { ...tables, topMm: Math.min(tables.bottomMm, table.endMm + SECTION_GAP_MM) }
  const boxes = [
    ...columnsOf(below, columnMm),
    ...(widthOf(belowFigure) >= columnMm ? columnsOf(belowFigure, columnMm) : []),
  ]
  const frames = boxes.map((box): Frame => ({ pageIndex: 0, box }))
  return fittedWhole(readSections(sheet, columnMm), frames, SECTION_GAP_MM)
}

/** Columns of a further page below the end of the anchor table. */
const columnsBelow = (table: Flowed, fullPage: Box, columnMm: number): readonly Frame[] => {
  const topMm = Math.min(fullPage.bottomMm, table.endMm + SECTION_GAP_MM)
  return columnsOf({ ...fullPage, topMm }, columnMm).map((box) => ({ pageIndex: table.framesUsed - 1, box }))
}

const spaced = (sections: readonly Section[]): readonly FlowRow[] =>
  sections.flatMap((rows, index) =>
    index === 0 ? rows : [gapRow(SECTION_GAP_MM, rows[0]?.section ?? ''), ...rows],
  )
