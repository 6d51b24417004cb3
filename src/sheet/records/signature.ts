import type { AsWeldedRecord } from '../../domain/measure/asWeldedRecord'
import type { FlowRow } from '../page/flow'
import { boxItem, straightItem, textItem, type PagePoint, type SheetItem } from '../page/item'
import { LEAST_TEXT_MM } from '../page/typography'

const BOX_MM = 13
const GAP_MM = 1.2

interface SignedBox {
  readonly title: string
  /** What was typed; empty lines to sign on where nothing was. */
  readonly name: string
  readonly date: string
}

const boxesOf = ({ measuredBy, date, signed }: AsWeldedRecord): readonly SignedBox[] => [
  { title: 'Measured', name: measuredBy.trim(), date },
  {
    title: signed === undefined ? 'Signed' : 'Signed and closed',
    name: signed?.name ?? '',
    date: signed?.date ?? '',
  },
  { title: 'Seen by the customer', name: '', date: '' },
]

const boxItems = (
  { title, name, date }: SignedBox,
  corner: PagePoint,
  widthMm: number,
): readonly SheetItem[] => {
  const leftMm = corner.xMm
  const topMm = corner.yMm
  const lineMm = topMm + BOX_MM - 3.2
  const splitMm = leftMm + widthMm * 0.62
  const rule = (fromMm: number, toMm: number): SheetItem =>
    straightItem({ xMm: fromMm, yMm: lineMm }, { xMm: toMm, yMm: lineMm }, { widthMm: 0.12 })
  const words = (xMm: number, yMm: number, text: string, sizeMm: number): SheetItem =>
    textItem({ xMm, yMm }, text, sizeMm, { ink: 'dark' })
  return [
    boxItem({ leftMm, topMm, rightMm: leftMm + widthMm, bottomMm: topMm + BOX_MM }, { widthMm: 0.25 }),
    textItem({ xMm: leftMm + 1.2, yMm: topMm + 3 }, title, 2.4, { weight: 'bold' }),
    rule(leftMm + 1.2, splitMm - 1.5),
    rule(splitMm, leftMm + widthMm - 1.2),
    ...(name === '' ? [] : [words(leftMm + 1.2, lineMm - 0.8, name, 2.6)]),
    ...(date === '' ? [] : [words(splitMm, lineMm - 0.8, date, 2.6)]),
    words(leftMm + 1.2, topMm + BOX_MM - 0.8, 'name', LEAST_TEXT_MM),
    words(splitMm, topMm + BOX_MM - 0.8, 'date', LEAST_TEXT_MM),
  ]
}

/** Who measured, who signed, and lines for a pen where nobody has yet; one strip, never cut. */
export const signatureRow = (record: AsWeldedRecord, widthMm: number): FlowRow => {
  const boxes = boxesOf(record)
  const boxMm = (widthMm - GAP_MM * (boxes.length - 1)) / boxes.length
  return {
    heightMm: BOX_MM + GAP_MM,
    keepWithNext: false,
    section: 'Signature',
    continuation: [],
    draw: (at) =>
      boxes.flatMap((box, index) =>
        boxItems(box, { xMm: at.xMm + index * (boxMm + GAP_MM), yMm: at.yMm + GAP_MM }, boxMm),
      ),
  }
}
