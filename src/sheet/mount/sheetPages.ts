import type { Layout } from '../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../domain/layout/evaluate/evaluation'
import { tapeChecks } from '../../domain/shop/tape/tapeChecks'
import { CHECK_BAR_HEIGHT_MM, checkBarItems } from '../page/checkBar'
import { footLine } from '../page/footLine'
import type { Box, PagePoint, SheetItem } from '../page/item'
import { PAPERS, type PaperName } from '../page/paper'
import type { SheetPage } from '../page/sheetPage'
import { stacked, widthOf } from '../page/strips'
import { LETTERING_FACTORS, typography } from '../page/typography'
import { composed, type Composition, figuresFor, prepared } from './composition'
import { figureMaker } from './figure/elevationFigure'
import { continuedHeader, jobHeader } from './jobHeader'
import { type SheetOptions, WHOLE_SHEET } from './sheetOptions'
import { ANCHOR_SECTION, EXPLAINED_SECTION, numberedAnchors } from './table/anchorTable'

/**
 * The mount sheet of a layout on as few pages as possible; then with the anchor table in one piece, with the largest drawing, in the
 * largest lettering.
 */
export const sheetPages = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  paperName: PaperName,
  options: SheetOptions = WHOLE_SHEET,
): readonly SheetPage[] => {
  const anchors = numberedAnchors(layout, evaluation)
  const makeFigure = figureMaker(layout, evaluation, anchors)
  const paper = PAPERS[paperName]
  const { tapePoints = [], tubes, places } = layout
  const tape = tapeChecks({ tapePoints, tubes, places })
  const tried = LETTERING_FACTORS.flatMap((factor) => {
    const sheet = prepared({
      layout,
      evaluation,
      anchors,
      tape,
      options,
      paper,
      makeFigure,
      type: typography(factor),
    })
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

const upperLeft = ({ leftMm, topMm }: Box): PagePoint => ({ xMm: leftMm, yMm: topMm })

const drawnPages = (sheet: Composition): readonly SheetPage[] => {
  const { paper, placed, pageCount, figure } = sheet
  return Array.from({ length: pageCount }, (_, pageIndex) => ({
    number: pageIndex + 1,
    of: pageCount,
    widthMm: paper.widthMm,
    heightMm: paper.heightMm,
    title: `Mount sheet, page ${pageIndex + 1} of ${pageCount}, scale 1:${figure.scale}`,
    items: [
      ...(pageIndex === 0 ? firstPageItems(sheet) : furtherHeading(sheet, pageIndex + 1)),
      ...placed.filter((row) => row.pageIndex === pageIndex).flatMap(({ row, at }) => row.draw(at)),
      ...footLine(paper, pageIndex + 1, pageCount),
    ],
  }))
}

const furtherHeading = ({ layout, type, printed, pageCount }: Composition, number: number) =>
  stacked(continuedHeader(layout, { number, count: pageCount }, widthOf(printed), type), upperLeft(printed))

const firstPageItems = (sheet: Composition): readonly SheetItem[] => {
  const { layout, evaluation, type, printed, content, figure, foot, footCorner, pageCount } = sheet
  const facts = { scale: figure.scale, sheetCount: pageCount }
  return [
    ...stacked(jobHeader(layout, evaluation, facts, widthOf(printed), type), upperLeft(printed)),
    ...figure.itemsAt({ xMm: content.leftMm, yMm: content.topMm }),
    ...checkBarItems({ xMm: content.leftMm, yMm: content.bottomMm - CHECK_BAR_HEIGHT_MM }),
    ...foot.itemsAt(footCorner),
  ]
}
