import { straightItem, textItem, type PagePoint, type SheetItem } from './item'
import { LEAST_TEXT_MM } from './typography'

/** Lengths that a ruler must find on the print. Source: 4 in = 4 × 25.4 mm. */
const CHECK_BAR_MM = 100
const CHECK_BAR_4_IN_MM = 4 * 25.4

export const CHECK_BAR_HEIGHT_MM = 9.5
/** The longer bar and the room for its last figure. */
export const CHECK_BAR_WIDTH_MM = CHECK_BAR_4_IN_MM + 4

/** Two bars with ticks, so that a print that was scaled is found out before anyone measures on it. */
export const checkBarItems = (corner: PagePoint): readonly SheetItem[] => {
  const leftMm = corner.xMm
  const barMm = corner.yMm + 6.2
  const bar = (lengthMm: number, yMm: number): SheetItem =>
    straightItem({ xMm: leftMm, yMm }, { xMm: leftMm + lengthMm, yMm }, { widthMm: 0.25 })
  const tick = (atMm: number, fromMm: number, toMm: number): SheetItem =>
    straightItem({ xMm: leftMm + atMm, yMm: fromMm }, { xMm: leftMm + atMm, yMm: toMm }, { widthMm: 0.2 })
  const millimetres = Array.from({ length: 11 }, (_, index) => index * 10)
  const inches = Array.from({ length: 5 }, (_, index) => index * 25.4)
  return [
    textItem(
      { xMm: leftMm, yMm: corner.yMm + 2.6 },
      'Check bar: 100 mm above, 4 in below. If a ruler says otherwise, do not measure on the drawing.',
      LEAST_TEXT_MM,
      { ink: 'dark' },
    ),
    bar(CHECK_BAR_MM, barMm),
    ...millimetres.map((atMm) => tick(atMm, barMm - (atMm % 50 === 0 ? 1.8 : 1), barMm)),
    bar(CHECK_BAR_4_IN_MM, barMm + 0.6),
    ...inches.map((atMm) => tick(atMm, barMm + 0.6, barMm + 2.2)),
  ]
}
