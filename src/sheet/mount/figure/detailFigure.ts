import { anchorDetail, type AnchorDetail } from '../../../domain/layout/drawing/anchorDetail'
import type { LengthUnit } from '../../../domain/layout/document/layout'
import type { AnchorRow } from '../../../domain/shop/anchorRows'
import type { TabOnTube } from '../../../domain/shop/tab/tabOnTube'
import { type Box, itemBox, type PagePoint, type SheetItem, textItem } from '../../page/item'
import type { FigureView } from './figureView'
import { FIGURE_TEXT_MM, primitiveItems } from './primitiveItems'

/** Side of the square that a detail is drawn in, mm of paper. */
export const DETAIL_MM = 28

/** Room for the words at the top and at the right that say what lies there. */
const WORD_MM = 3

/** Scales of a detail, n of 1:n, the largest first. Source: as in `scale`; details are drawn larger. */
const SCALES = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 8, 10, 15, 20, 40] as const

/** One anchor looked at along its tube, in a square. */
export interface DetailFigure {
  readonly scale: number
  readonly detail: AnchorDetail
  readonly itemsAt: (corner: PagePoint) => readonly SheetItem[]
}

/** The detail at the largest scale at which it fits into its square with all its numbers. */
export const detailFigure = (row: AnchorRow, on: TabOnTube | null, lengthUnit: LengthUnit): DetailFigure => {
  const { mount } = row.anchor
  const detailAt = (scale: number): AnchorDetail =>
    anchorDetail({ mount, on, path: row.path, lengthUnit, textHeightMm: FIGURE_TEXT_MM * scale })
  const itemsOf = (scale: number): readonly SheetItem[] => {
    const view: FigureView = { scale, datum: { xMm: 0, yMm: 0 } }
    return detailAt(scale).primitives.flatMap((primitive) => primitiveItems(primitive, view))
  }
  const roomMm = DETAIL_MM - WORD_MM
  const scale =
    SCALES.find((each) => {
      const box = boundsOf(itemsOf(each))
      return box.rightMm - box.leftMm <= roomMm && box.bottomMm - box.topMm <= roomMm
    }) ?? 100
  return {
    scale,
    detail: detailAt(scale),
    itemsAt: (corner) => {
      const items = itemsOf(scale)
      const { leftMm, topMm, rightMm, bottomMm } = boundsOf(items)
      const view: FigureView = {
        scale,
        datum: {
          xMm: corner.xMm + (roomMm - (rightMm + leftMm)) / 2,
          yMm: corner.yMm + WORD_MM + (roomMm - (bottomMm + topMm)) / 2,
        },
      }
      const { primitives, up, right } = detailAt(scale)
      return [
        ...primitives.flatMap((primitive) => primitiveItems(primitive, view)),
        ...wayItems({ up, right }, view.datum, corner),
      ]
    },
  }
}

const boundsOf = (items: readonly SheetItem[]): Box => {
  const boxes = items.map(itemBox)
  return {
    leftMm: Math.min(...boxes.map((box) => box.leftMm)),
    rightMm: Math.max(...boxes.map((box) => box.rightMm)),
    topMm: Math.min(...boxes.map((box) => box.topMm)),
    bottomMm: Math.max(...boxes.map((box) => box.bottomMm)),
  }
}

/** What lies at the top and at the right of the square, in small words at its edges. */
const wayItems = (
  { up, right }: Pick<AnchorDetail, 'up' | 'right'>,
  middle: PagePoint,
  corner: PagePoint,
): readonly SheetItem[] => [
  textItem({ xMm: middle.xMm, yMm: corner.yMm + 2.2 }, up, FIGURE_TEXT_MM, { align: 'centre', ink: 'dark' }),
  textItem({ xMm: corner.xMm + DETAIL_MM - 0.3, yMm: middle.yMm }, right, FIGURE_TEXT_MM, {
    align: 'centre',
    ink: 'dark',
    upward: true,
  }),
]
