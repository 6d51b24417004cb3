import type { Layout } from '../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../domain/layout/evaluate/evaluation'
import {
  ANCHOR_SECTION,
  EXPLAINED_SECTION,
  type AnchorTable,
  type PlaceAnchors,
  anchorTable,
  numberedAnchors,
} from './table/anchorTable'
import { CHECK_BAR_HEIGHT_MM, CHECK_BAR_WIDTH_MM, checkBarItems } from '../page/checkBar'
import { type ElevationFigure, type FigureMaker, figureMaker } from './figure/elevationFigure'
import { findingSection, statedSection } from './sections/findingSection'
import { type Flowed, flowed, type FlowRow, type Frame, type PlacedRow } from '../page/flow'
import type { Box, PagePoint, SheetItem } from '../page/item'
import { continuedHeader, jobHeader, jobInFull } from './jobHeader'
import { COLUMN_GAP_MM, columnFrames, columnsOf } from '../page/pageColumns'
import { footLine, printedBox } from '../page/footLine'
import { PAPERS, type Paper, type PaperName } from '../page/paper'
import { hardwareSections } from './sections/hardwareSection'
import { tubeSection } from './sections/partSections'
import type { SheetPage } from '../page/sheetPage'
import { gapRow, type BareRow } from '../page/section'
import { type Foot, signOffFoot } from './signOff'
import { type Typography, LETTERING_FACTORS, typography } from '../page/typography'

/** How much of the width the tables get at least beside the drawing: the more they get, the smaller the drawing. Our judgement. */
const TABLES_MIN_MM = [125, 131, 137, 144, 150, 157, 165, 175, 190] as const
const SMALL_GAP_MM = 1.5

/**
 * The mount sheet of a layout: one page if the paper allows it, else as few as possible; then with the anchor table in
 * one piece, with the largest drawing, in the largest lettering.
 */
export const sheetPages = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  paperName: PaperName,
): readonly SheetPage[] => {
  const anchors = numberedAnchors(layout, evaluation)
  const makeFigure = figureMaker(layout, evaluation, anchors)
  const paper = PAPERS[paperName]
  const tried = LETTERING_FACTORS.flatMap((factor) => {
    const sheet = { layout, evaluation, paper, type: typography(factor), anchors, makeFigure }
    return figuresFor(sheet).map((figure) => composed(sheet, figure))
  })
  const [best] = tried.toSorted(
    (a, b) =>
      Number(a.isCramped) - Number(b.isCramped) ||
      a.pageCount - b.pageCount ||
      lastAnchorPage(a) - lastAnchorPage(b) ||
      a.figure.scale - b.figure.scale,
  )
  return best === undefined ? [] : drawnPages(best)
}

const TABLE_SECTIONS: readonly string[] = [ANCHOR_SECTION, EXPLAINED_SECTION]

/** A table in one piece is worth more than large letters. */
const lastAnchorPage = ({ placed }: Composition): number =>
  Math.max(0, ...placed.map(({ row, pageIndex }) => (TABLE_SECTIONS.includes(row.section) ? pageIndex : 0)))

interface Sheet {
  readonly layout: Layout
  readonly evaluation: CheckedEvaluation
  readonly paper: Paper
  readonly type: Typography
  readonly anchors: readonly PlaceAnchors[]
  readonly makeFigure: FigureMaker
}

/** Where everything goes, before anything is drawn. */
interface Composition extends Sheet {
  readonly printed: Box
  readonly content: Box
  readonly figure: ElevationFigure
  readonly foot: Foot
  readonly footCorner: PagePoint
  readonly placed: readonly PlacedRow[]
  readonly pageCount: number
  readonly isCramped: boolean
}

/** The box inside the margins, above the foot line, and what the header of the first page leaves of it. */
const firstPageBoxes = ({
  layout,
  evaluation,
  paper,
  type,
}: Sheet): { readonly printed: Box; readonly content: Box } => {
  const printed = printedBox(paper)
  const headerMm = heightOf(jobHeader(layout, evaluation, widthOf(printed), type))
  return { printed, content: { ...printed, topMm: printed.topMm + headerMm + SMALL_GAP_MM } }
}

/** The drawing in every scale that leaves enough for the tables, each once. */
const figuresFor = (sheet: Sheet): readonly ElevationFigure[] => {
  const { content } = firstPageBoxes(sheet)
  const figures = TABLES_MIN_MM.map((tablesMinMm) =>
    sheet.makeFigure({
      widthMm: widthOf(content) - COLUMN_GAP_MM - tablesMinMm,
      heightMm: content.bottomMm - content.topMm - CHECK_BAR_HEIGHT_MM,
    }),
  )
  return [...new Map(figures.map((figure) => [figure.scale, figure])).values()]
}

const composed = (sheet: Sheet, figure: ElevationFigure): Composition => {
  const { layout, type } = sheet
  const { printed, content } = firstPageBoxes(sheet)
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
  const placed = placedTables(sheet, table, first, printed)
  const pageCount = 1 + Math.max(0, ...placed.map((row) => row.pageIndex))
  return {
    ...sheet,
    printed,
    content,
    figure,
    foot,
    footCorner,
    placed,
    pageCount,
    isCramped: table.isCramped,
  }
}

const widthOf = (box: Box): number => box.rightMm - box.leftMm

const heightOf = (rows: readonly BareRow[]): number => rows.reduce((sumMm, row) => sumMm + row.heightMm, 0)

/** Strips one below the other from the top of a box. */
const stacked = (rows: readonly BareRow[], box: Box): readonly SheetItem[] =>
  rows.flatMap((row, index) => row.draw({ xMm: box.leftMm, yMm: box.topMm + heightOf(rows.slice(0, index)) }))

/** The first page's room for tables, and what the drawing leaves free below itself. */
interface FirstPage {
  readonly tables: Box
  readonly belowFigure: Box
}

/** The anchor table in its frames, then everything else in columns below it, below the drawing, and on further pages. */
const placedTables = (
  sheet: Sheet,
  table: AnchorTable,
  first: FirstPage,
  printed: Box,
): readonly PlacedRow[] => {
  const widthMm = widthOf(first.tables)
  const fullPage = { ...printed, topMm: continuedTopMm(sheet, printed) }
  const anchors = flowed(table.rows, (index) => ({
    pageIndex: index,
    box: index === 0 ? first.tables : { ...fullPage, rightMm: fullPage.leftMm + widthMm },
  }))
  const columnMm = (widthMm - COLUMN_GAP_MM) / 2
  const rest = flowed(
    sectionsOf(sheet, columnMm, widthOf(printed)),
    columnFrames(restFrames(anchors, first, fullPage, columnMm), fullPage, columnMm),
  )
  return [...anchors.placed, ...rest.placed]
}

/** Where the columns may begin: below the end of the anchor table. The room below the drawing is used when a column fits there. */
const restFrames = (table: Flowed, first: FirstPage, fullPage: Box, columnMm: number): readonly Frame[] => {
  const pageIndex = table.framesUsed - 1
  const box = pageIndex === 0 ? first.tables : fullPage
  const below = { ...box, topMm: Math.min(box.bottomMm, table.endMm + SMALL_GAP_MM) }
  const free =
    pageIndex === 0 && widthOf(first.belowFigure) >= columnMm ? columnsOf(first.belowFigure, columnMm) : []
  return [...columnsOf(below, columnMm), ...free].map((each) => ({ pageIndex, box: each }))
}

const continuedTopMm = ({ layout, type }: Sheet, printed: Box): number =>
  printed.topMm + continuedHeader(layout, widthOf(printed), type).heightMm + SMALL_GAP_MM

const sectionsOf = (
  { layout, evaluation, type }: Sheet,
  widthMm: number,
  stripWidthMm: number,
): readonly FlowRow[] => {
  const setting = { layout, widthMm, type }
  const sections = [
    findingSection(layout, evaluation, widthMm, type),
    tubeSection(setting),
    ...hardwareSections(evaluation, setting),
    statedSection(evaluation, widthMm, type),
    jobInFull(layout, evaluation, { widthMm: stripWidthMm }, setting),
  ]
  return sections
    .filter((rows) => rows.length > 0)
    .flatMap((rows, index) => (index === 0 ? rows : [gapRow(SMALL_GAP_MM, rows[0]?.section ?? ''), ...rows]))
}

const drawnPages = (sheet: Composition): readonly SheetPage[] => {
  const { paper, layout, type, printed, placed, pageCount, figure } = sheet
  const head = stacked([continuedHeader(layout, widthOf(printed), type)], printed)
  return Array.from({ length: pageCount }, (_, pageIndex) => ({
    number: pageIndex + 1,
    of: pageCount,
    widthMm: paper.widthMm,
    heightMm: paper.heightMm,
    title: `Mount sheet, page ${pageIndex + 1} of ${pageCount}, scale 1:${figure.scale}`,
    items: [
      ...(pageIndex === 0 ? firstPageItems(sheet) : head),
      ...placed.filter((row) => row.pageIndex === pageIndex).flatMap(({ row, at }) => row.draw(at)),
      ...footLine(paper, pageIndex + 1, pageCount),
    ],
  }))
}

const firstPageItems = (sheet: Composition): readonly SheetItem[] => {
  const { layout, evaluation, type, printed, content, figure, foot, footCorner } = sheet
  return [
    ...stacked(jobHeader(layout, evaluation, widthOf(printed), type), printed),
    ...figure.itemsAt({ xMm: content.leftMm, yMm: content.topMm }),
    ...checkBarItems({ xMm: content.leftMm, yMm: content.bottomMm - CHECK_BAR_HEIGHT_MM }),
    ...foot.itemsAt(footCorner),
  ]
}
