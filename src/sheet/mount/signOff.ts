import { boxItem, straightItem, textItem, type PagePoint, type SheetItem } from '../page/item'
import { cautionRows, heightOf, stacked } from '../page/strips'
import { LEAST_TEXT_MM, type Typography } from '../page/typography'

const STEPS = ['Planned', 'Welded', 'Checked on the car'] as const
const BOX_MM = 11.5
const GAP_MM = 1.2

export interface Foot {
  readonly heightMm: number
  readonly itemsAt: (corner: PagePoint) => readonly SheetItem[]
}

/** Cautions and the boxes to sign in, as high as their text needs. The first caution stands on the last line of every page. */
export const signOffFoot = (widthMm: number, type: Typography): Foot => {
  const rows = cautionRows(widthMm, type)
  const textMm = heightOf(rows)
  return {
    heightMm: textMm + GAP_MM + BOX_MM,
    itemsAt: (corner) => [
      ...stacked(rows, corner),
      ...boxItems({ xMm: corner.xMm, yMm: corner.yMm + textMm + GAP_MM }, widthMm),
    ],
  }
}

const boxItems = (corner: PagePoint, widthMm: number): readonly SheetItem[] => {
  const boxMm = (widthMm - GAP_MM * (STEPS.length - 1)) / STEPS.length
  return STEPS.flatMap((step, index) => {
    const leftMm = corner.xMm + index * (boxMm + GAP_MM)
    const topMm = corner.yMm
    const lineMm = topMm + BOX_MM - 2.8
    const splitMm = leftMm + boxMm * 0.6
    const label = (xMm: number, text: string): SheetItem =>
      textItem({ xMm, yMm: topMm + BOX_MM - 0.8 }, text, LEAST_TEXT_MM, { ink: 'dark' })
    return [
      boxItem({ leftMm, topMm, rightMm: leftMm + boxMm, bottomMm: topMm + BOX_MM }, { widthMm: 0.25 }),
      textItem({ xMm: leftMm + 1.2, yMm: topMm + 2.9 }, step, 2.4, { weight: 'bold' }),
      straightItem(
        { xMm: leftMm + 1.2, yMm: lineMm },
        { xMm: splitMm - 1.5, yMm: lineMm },
        { widthMm: 0.12 },
      ),
      straightItem(
        { xMm: splitMm, yMm: lineMm },
        { xMm: leftMm + boxMm - 1.2, yMm: lineMm },
        { widthMm: 0.12 },
      ),
      label(leftMm + 1.2, 'name'),
      label(splitMm, 'date'),
    ]
  })
}
