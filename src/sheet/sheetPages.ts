import type { Layout } from '../domain/layout/document/layout'
import type { Evaluation } from '../domain/layout/evaluate/evaluation'
import { CAUTIONS } from '../domain/layout/wording/cautions'
import { type PlaceAnchors, anchorTable, numberedAnchors } from './anchorTable'
import { CHECK_BAR_HEIGHT_MM, CHECK_BAR_WIDTH_MM, checkBarItems } from './checkBar'
import { datumSection } from './datumSection'
import { type ElevationFigure, elevationFigure } from './elevationFigure'
import { findingSection } from './findingSection'
import { type Flowed, flowed, type FlowRow, type Frame, type PlacedRow } from './flow'
import { type Box, textItem, type SheetItem } from './item'
import { continuedHeader, jobHeader, jobInFull } from './jobHeader'
import { COLUMN_GAP_MM, columnFrames, columnsOf } from './pageColumns'
import { MARGIN_MM, PAPERS, type Paper, type PaperName } from './paper'
import { hardwareSection, tubeSection } from './partSections'
import { gapRow, type BareRow } from './section'
import { signOffFoot } from './signOff'
import { type Typography, LETTERING_FACTORS, typography } from './typography'

/** One page of a mount sheet; nothing on it lies outside the paper. */
export interface SheetPage {
  readonly number: number
  readonly of: number
  readonly widthMm: number
  readonly heightMm: number
  readonly title: string
  readonly items: readonly SheetItem[]
}

/** The tables need this much beside the drawing. Our judgement: nine columns stay readable. */
const TABLES_MIN_MM = 138
const FOOT_LINE_MM = 4
const SMALL_GAP_MM = 2

/** The mount sheet of a layout: one page if the paper allows it, else as few as possible, in the largest lettering that does. */
export const sheetPages = (
  layout: Layout,
  evaluation: Evaluation,
  paperName: PaperName,
): readonly SheetPage[] => {
  let fewest: readonly SheetPage[] | null = null
  for (const factor of LETTERING_FACTORS) {
    const pages = pagesIn(layout, evaluation, PAPERS[paperName], factor)
    if (fewest === null || pages.length < fewest.length) fewest = pages
    if (fewest.length === 1) break
  }
  return fewest ?? []
}

interface Composition {
  readonly layout: Layout
  readonly evaluation: Evaluation
  readonly paper: Paper
  readonly type: Typography
  readonly anchors: readonly PlaceAnchors[]
}

const pagesIn = (
  layout: Layout,
  evaluation: Evaluation,
  paper: Paper,
  factor: number,
): readonly SheetPage[] => {
  const anchors = numberedAnchors(layout, evaluation)
  const sheet: Composition = { layout, evaluation, paper, type: typography(factor), anchors }
  const printed: Box = {
    leftMm: MARGIN_MM,
    topMm: MARGIN_MM,
    rightMm: paper.widthMm - MARGIN_MM,
    bottomMm: paper.heightMm - MARGIN_MM - FOOT_LINE_MM,
  }
  const header = stacked(jobHeader(layout, evaluation, widthOf(printed), sheet.type), printed)
  const content = { ...printed, topMm: header.endMm + SMALL_GAP_MM }
  const figure = elevationFigure(layout, evaluation, anchors, {
    widthMm: widthOf(content) - COLUMN_GAP_MM - TABLES_MIN_MM,
    heightMm: content.bottomMm - content.topMm - CHECK_BAR_HEIGHT_MM,
  })
  const leftMm = Math.max(figure.widthMm, CHECK_BAR_WIDTH_MM)
  const right = { ...content, leftMm: content.leftMm + leftMm + COLUMN_GAP_MM }
  const foot = signOffFoot(widthOf(right), sheet.type)
  const footTopMm = right.bottomMm - foot.heightMm
  const tables = { ...right, bottomMm: footTopMm - SMALL_GAP_MM }
  const belowFigure = {
    leftMm: content.leftMm,
    rightMm: content.leftMm + leftMm,
    topMm: content.topMm + figure.heightMm + SMALL_GAP_MM,
    bottomMm: content.bottomMm - CHECK_BAR_HEIGHT_MM - SMALL_GAP_MM,
  }
  const placed = placedTables(sheet, { tables, belowFigure }, printed)
  const firstItems = [
    ...header.items,
    ...figure.itemsAt({ xMm: content.leftMm, yMm: content.topMm }),
    ...checkBarItems({ xMm: content.leftMm, yMm: content.bottomMm - CHECK_BAR_HEIGHT_MM }),
    ...foot.itemsAt({ xMm: right.leftMm, yMm: footTopMm }),
  ]
  return numberedPages(sheet, printed, firstItems, placed, figure)
}

const widthOf = (box: Box): number => box.rightMm - box.leftMm

/** Strips one below the other from the top of a box. */
const stacked = (
  rows: readonly BareRow[],
  box: Box,
): { readonly items: readonly SheetItem[]; readonly endMm: number } => {
  let yMm = box.topMm
  const items = rows.flatMap((row) => {
    const drawn = row.draw({ xMm: box.leftMm, yMm })
    yMm += row.heightMm
    return drawn
  })
  return { items, endMm: yMm }
}

/** The first page's room for tables, and what the drawing leaves free below itself. */
interface FirstPage {
  readonly tables: Box
  readonly belowFigure: Box
}

/** The anchor table in its frames, then everything else in columns below it, below the drawing, and on further pages. */
const placedTables = (sheet: Composition, first: FirstPage, printed: Box): readonly PlacedRow[] => {
  const { layout, type } = sheet
  const widthMm = widthOf(first.tables)
  const fullPage = { ...printed, topMm: continuedTopMm(sheet, printed) }
  const table = flowed(anchorTable(sheet.anchors, { layout, widthMm, type }), (index) => ({
    pageIndex: index,
    box: index === 0 ? first.tables : { ...fullPage, rightMm: fullPage.leftMm + widthMm },
  }))
  const columnMm = (widthMm - COLUMN_GAP_MM) / 2
  const rest = flowed(
    sectionsOf(sheet, columnMm, widthOf(printed)),
    columnFrames(restFrames(table, first, fullPage, columnMm), fullPage, columnMm),
  )
  return [...table.placed, ...rest.placed]
}

/** Where the columns may begin: below the end of the anchor table. The room below the drawing is used when a column fits there. */
const restFrames = (table: Flowed, first: FirstPage, fullPage: Box, columnMm: number): readonly Frame[] => {
  const pageIndex = table.framesUsed - 1
  const box = pageIndex === 0 ? first.tables : fullPage
  const below = { ...box, topMm: Math.min(box.bottomMm, table.endMm + SMALL_GAP_MM) }
  const free = pageIndex === 0 && widthOf(first.belowFigure) >= columnMm ? [first.belowFigure] : []
  return [...columnsOf(below, columnMm), ...free].map((each) => ({ pageIndex, box: each }))
}

const continuedTopMm = ({ layout, type }: Composition, printed: Box): number =>
  printed.topMm + continuedHeader(layout, widthOf(printed), type).heightMm + SMALL_GAP_MM

const sectionsOf = (
  { layout, evaluation, type }: Composition,
  widthMm: number,
  stripWidthMm: number,
): readonly FlowRow[] => {
  const setting = { layout, widthMm, type }
  const sections = [
    datumSection(layout, setting),
    tubeSection(setting),
    findingSection(layout, evaluation, widthMm, type),
    ...layout.places.map((place) =>
      hardwareSection(
        place,
        evaluation.places.find((each) => each.placeId === place.id),
        setting,
      ),
    ),
    jobInFull(layout, evaluation, { widthMm: stripWidthMm }, setting),
  ]
  return sections
    .filter((rows) => rows.length > 0)
    .flatMap((rows, index) => (index === 0 ? rows : [gapRow(SMALL_GAP_MM, rows[0]?.section ?? ''), ...rows]))
}

const numberedPages = (
  sheet: Composition,
  printed: Box,
  firstItems: readonly SheetItem[],
  placed: readonly PlacedRow[],
  figure: ElevationFigure,
): readonly SheetPage[] => {
  const { paper, layout, type } = sheet
  const count = 1 + Math.max(0, ...placed.map((row) => row.pageIndex))
  const head = stacked([continuedHeader(layout, widthOf(printed), type)], printed).items
  return Array.from({ length: count }, (_, pageIndex) => {
    const rows = placed.filter((row) => row.pageIndex === pageIndex)
    return {
      number: pageIndex + 1,
      of: count,
      widthMm: paper.widthMm,
      heightMm: paper.heightMm,
      title: `Mount sheet, page ${pageIndex + 1} of ${count}, scale 1:${figure.scale}`,
      items: [
        ...(pageIndex === 0 ? firstItems : head),
        ...rows.flatMap(({ row, at }) => row.draw(at)),
        ...footLine(printed, pageIndex, count, placed),
      ],
    }
  })
}

/** The last line of every page: that it is no certificate, which page it is, and what goes on overleaf. */
const footLine = (
  printed: Box,
  pageIndex: number,
  count: number,
  placed: readonly PlacedRow[],
): readonly SheetItem[] => {
  const yMm = printed.bottomMm + FOOT_LINE_MM - 0.6
  const later = new Set(placed.filter((row) => row.pageIndex > pageIndex).map(({ row }) => row.section))
  const goesOn = later.size === 0 ? '' : ` · continued on page ${pageIndex + 2}`
  return [
    textItem({ xMm: printed.leftMm, yMm }, `Tabwright · ${CAUTIONS[0] ?? ''}`, 2.05, { ink: 'dark' }),
    textItem({ xMm: printed.rightMm, yMm }, `Page ${pageIndex + 1} of ${count}${goesOn}`, 2.4, {
      align: 'right',
      weight: 'bold',
    }),
  ]
}
