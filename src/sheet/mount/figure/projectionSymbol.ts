import { lineItem, straightItem, type LineOptions, type PagePoint, type SheetItem } from '../../page/item'

/** Radii of the two ends of the cone, its length, and the gap between its two views, mm of paper. */
const LARGE_MM = 1.7
const SMALL_MM = 0.85
const LENGTH_MM = 3.6
const GAP_MM = 1.4
const PEN: LineOptions = { widthMm: 0.25 }
const CENTRE_PEN: LineOptions = { widthMm: 0.1, ink: 'dark', dashMm: [1.2, 0.4, 0.4, 0.4] }

export const PROJECTION_SYMBOL_WIDTH_MM = 2 * LARGE_MM + GAP_MM + LENGTH_MM + 1.2

const circle = (centre: PagePoint, radiusMm: number): SheetItem => ({
  kind: 'circle',
  centre,
  radiusMm,
  widthMm: 0.25,
  ink: 'black',
  fill: 'none',
  dashMm: [],
})

/**
 * The sign of third-angle projection: a truncated cone from its small end, both rims in sight, at the left of the cone from the side
 * with its small end to the left, so that each view stands on the side it is seen from. `at` is its left end at half its height.
 * Source: ISO 5456-2 (from memory); the proportions are ours.
 */
export const projectionSymbol = (at: PagePoint): readonly SheetItem[] => {
  const centre = { xMm: at.xMm + 0.6 + LARGE_MM, yMm: at.yMm }
  const fromMm = centre.xMm + LARGE_MM + GAP_MM
  const toMm = fromMm + LENGTH_MM
  const { yMm } = at
  return [
    circle(centre, LARGE_MM),
    circle(centre, SMALL_MM),
    lineItem(
      [
        { xMm: fromMm, yMm: yMm - SMALL_MM },
        { xMm: toMm, yMm: yMm - LARGE_MM },
        { xMm: toMm, yMm: yMm + LARGE_MM },
        { xMm: fromMm, yMm: yMm + SMALL_MM },
      ],
      { ...PEN, closed: true },
    ),
    straightItem({ xMm: at.xMm, yMm }, { xMm: toMm + 0.6, yMm }, CENTRE_PEN),
    straightItem(
      { xMm: centre.xMm, yMm: yMm - LARGE_MM - 0.5 },
      { xMm: centre.xMm, yMm: yMm + LARGE_MM + 0.5 },
      CENTRE_PEN,
    ),
  ]
}
