import { CAUTIONS } from '../../domain/layout/wording/cautions'
import { type Box, textItem, type SheetItem } from './item'
import { MARGIN_MM, type Paper } from './paper'
import { LEAST_TEXT_MM } from './typography'

const FOOT_LINE_MM = 4

/** The box inside the margins and above the foot line. */
export const printedBox = (paper: Paper): Box => ({
  leftMm: MARGIN_MM,
  topMm: MARGIN_MM,
  rightMm: paper.widthMm - MARGIN_MM,
  bottomMm: paper.heightMm - MARGIN_MM - FOOT_LINE_MM,
})

/** The last line of every page that leaves the shop: that it is no certificate, which page it is, and whether it goes on. */
export const footLine = (paper: Paper, pageNumber: number, pageCount: number): readonly SheetItem[] => {
  const printed = printedBox(paper)
  const yMm = printed.bottomMm + FOOT_LINE_MM - 0.6
  const goesOn = pageNumber === pageCount ? '' : ` · continued on page ${pageNumber + 1}`
  return [
    textItem({ xMm: printed.leftMm, yMm }, `Tabwright · ${CAUTIONS[0] ?? ''}`, LEAST_TEXT_MM, {
      ink: 'dark',
    }),
    textItem({ xMm: printed.rightMm, yMm }, `Page ${pageNumber} of ${pageCount}${goesOn}`, 2.4, {
      align: 'right',
      weight: 'bold',
    }),
  ]
}
