import { straightItem, textItem, type PagePoint, type SheetItem } from './item'
import { LEAST_TEXT_MM } from './typography'

/** Lengths that a ruler must find on the print. Source: 4 in = 4 × 25.4 mm. */
const CHECK_BAR_MM = 100
const CHECK_BAR_4_IN_MM = 4 * 25.4

export const CHECK_BAR_HEIGHT_MM = 9.5
/** The longer bar and the room for its last figure. */
export const CHECK_BAR_WIDTH_MM = CHECK_BAR_4_IN_MM + 4

/** Two bars with ticks, so that a print that was scaled is found out before anyone measures on it. */
export const checkBarItems = (corner: PagePoint): readonly SheetItem[] => [
  textItem(
    { xMm: corner.xMm, yMm: corner.yMm + 2.6 },
    'Check bar: 100 mm above, 4 in below. If a ruler says otherwise, do not measure on the drawing.',
    LEAST_TEXT_MM,
    { ink: 'dark' },
  ),
  ...barItems((alongMm, acrossMm) => ({ xMm: corner.xMm + alongMm, yMm: corner.yMm + BAR_MM + acrossMm })),
]

/** Where the millimetre bar lies under the words, mm. */
const BAR_MM = 6.2

/** The same two bars standing upright, as high as the others are wide: printers stretch a page one way more than the other. */
export const uprightCheckBarItems = (corner: PagePoint): readonly SheetItem[] => {
  const footMm = corner.yMm + CHECK_BAR_WIDTH_MM
  return [
    textItem({ xMm: corner.xMm + 2.6, yMm: footMm }, 'Check bar: 100 mm left, 4 in right', LEAST_TEXT_MM, {
      ink: 'dark',
      upward: true,
    }),
    ...barItems((alongMm, acrossMm) => ({ xMm: corner.xMm + BAR_MM + acrossMm, yMm: footMm - alongMm })),
  ]
}

/** The millimetre bar with its ticks before it, and the inch bar with its ticks behind it. */
const barItems = (place: (alongMm: number, acrossMm: number) => PagePoint): readonly SheetItem[] => {
  const bar = (lengthMm: number, acrossMm: number): SheetItem =>
    straightItem(place(0, acrossMm), place(lengthMm, acrossMm), { widthMm: 0.25 })
  const tick = (atMm: number, fromMm: number, toMm: number): SheetItem =>
    straightItem(place(atMm, fromMm), place(atMm, toMm), { widthMm: 0.2 })
  const millimetres = Array.from({ length: 11 }, (_, index) => index * 10)
  const inches = Array.from({ length: 5 }, (_, index) => index * 25.4)
  return [
    bar(CHECK_BAR_MM, 0),
    ...millimetres.map((atMm) => tick(atMm, atMm % 50 === 0 ? -1.8 : -1, 0)),
    bar(CHECK_BAR_4_IN_MM, 0.6),
    ...inches.map((atMm) => tick(atMm, 0.6, 2.2)),
  ]
}
