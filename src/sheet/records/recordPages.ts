import { flowed, type FlowRow, type PlacedRow } from '../page/flow'
import { footLine, printedBox } from '../page/footLine'
import { straightItem, textItem, type Box, type SheetItem } from '../page/item'
import { COLUMN_GAP_MM, columnFrames } from '../page/pageColumns'
import { PAPERS, type Paper, type PaperName } from '../page/paper'
import { gapRow, type BareRow } from '../page/section'
import type { SheetPage } from '../page/sheetPage'
import { cautionRows, heightOf, stacked, widthOf } from '../page/strips'
import { LEAST_TEXT_MM, LETTERING_FACTORS, typography, type Typography } from '../page/typography'
import { HAND_LINES } from './historySection'

/** One record or form: two columns under a header that comes again on every page, and a line to sign above the cautions. */
export interface RecordSheet {
  readonly title: string
  readonly header: (widthMm: number, type: Typography) => readonly BareRow[]
  /** In order; those without strips are left out. */
  readonly sections: (
    setting: { readonly widthMm: number; readonly type: Typography },
    handLines: number,
  ) => readonly (readonly FlowRow[])[]
  /** What the signature stands for, such as "Measured by". */
  readonly signedFor: string
}

/** Pages of records, each from a fresh one, counted through. */
export const recordPages = (sheets: readonly RecordSheet[], paperName: PaperName): readonly SheetPage[] => {
  const paper = PAPERS[paperName]
  const pages = sheets.flatMap((sheet) => sheetPages(sheet, paper))
  return pages.map(({ title, items }, index) => ({
    number: index + 1,
    of: pages.length,
    widthMm: paper.widthMm,
    heightMm: paper.heightMm,
    title: `${title}, page ${index + 1} of ${pages.length}`,
    items: [...items, ...footLine(paper, index + 1, pages.length)],
  }))
}

type BarePage = Pick<SheetPage, 'title' | 'items'>

const SMALL_GAP_MM = 1.5
/** A line to sign on. */
const SIGN_MM = 8

/** The pages of one record: as few as possible, then in the largest lettering. */
const sheetPages = (sheet: RecordSheet, paper: Paper): readonly BarePage[] => {
  const tried = LETTERING_FACTORS.map((factor) => {
    const setting = { sheet, paper, type: typography(factor) }
    return { setting, ...composed(setting, HAND_LINES.least) }
  })
  const [best] = tried.toSorted((a, b) => a.pageCount - b.pageCount)
  return best === undefined ? [] : drawn(filledUp(best.setting, best))
}

/** What is left of the last page is ruled to write on. */
const filledUp = (setting: Setting, least: Composition): Composition => {
  let filled = least
  for (let count = HAND_LINES.least + 1; count <= HAND_LINES.most; count += 1) {
    const longer = composed(setting, count)
    if (longer.pageCount > least.pageCount) break
    filled = longer
  }
  return filled
}

interface Setting {
  readonly sheet: RecordSheet
  readonly paper: Paper
  readonly type: Typography
}

interface Composition {
  readonly sheet: RecordSheet
  readonly printed: Box
  readonly header: readonly BareRow[]
  readonly cautions: readonly BareRow[]
  readonly placed: readonly PlacedRow[]
  readonly pageCount: number
}

const composed = ({ sheet, paper, type }: Setting, handLines: number): Composition => {
  const printed = printedBox(paper)
  const widthMm = widthOf(printed)
  const header = sheet.header(widthMm, type)
  const cautions = cautionRows(widthMm, type)
  const content = {
    ...printed,
    topMm: printed.topMm + heightOf(header) + SMALL_GAP_MM,
    bottomMm: printed.bottomMm - heightOf(cautions) - SIGN_MM - SMALL_GAP_MM,
  }
  const columnMm = (widthMm - COLUMN_GAP_MM) / 2
  const rows = inOneList(sheet.sections({ widthMm: columnMm, type }, handLines))
  const { placed } = flowed(rows, columnFrames([], content, columnMm))
  const pageCount = 1 + Math.max(0, ...placed.map(({ pageIndex }) => pageIndex))
  return { sheet, printed, header, cautions, placed, pageCount }
}

const inOneList = (sections: readonly (readonly FlowRow[])[]): readonly FlowRow[] =>
  sections
    .filter((rows) => rows.length > 0)
    .flatMap((rows, index) => (index === 0 ? rows : [gapRow(SMALL_GAP_MM, rows[0]?.section ?? ''), ...rows]))

const drawn = (composition: Composition): readonly BarePage[] => {
  const { sheet, printed, header, cautions, placed, pageCount } = composition
  const footTopMm = printed.bottomMm - heightOf(cautions)
  return Array.from({ length: pageCount }, (_, pageIndex) => ({
    title: sheet.title,
    items: [
      ...stacked(header, { xMm: printed.leftMm, yMm: printed.topMm }),
      ...placed.filter((row) => row.pageIndex === pageIndex).flatMap(({ row, at }) => row.draw(at)),
      ...signature(sheet.signedFor, { ...printed, topMm: footTopMm - SIGN_MM, bottomMm: footTopMm }),
      ...stacked(cautions, { xMm: printed.leftMm, yMm: footTopMm }),
    ],
  }))
}

/** One line to sign, as wide as the page. */
const signature = (signedFor: string, box: Box): readonly SheetItem[] => {
  const widthMm = widthOf(box)
  const lineMm = box.bottomMm - 1.2
  let leftMm = box.leftMm
  return [
    { label: signedFor, share: 0.45 },
    { label: 'signature', share: 0.35 },
    { label: 'date', share: 0.2 },
  ].flatMap(({ label, share }) => {
    const fromMm = leftMm
    leftMm += share * widthMm
    return [
      straightItem({ xMm: fromMm, yMm: lineMm }, { xMm: leftMm - 3, yMm: lineMm }, { widthMm: 0.15 }),
      textItem({ xMm: fromMm, yMm: box.topMm + 2.6 }, label, LEAST_TEXT_MM, { ink: 'dark' }),
    ]
  })
}
