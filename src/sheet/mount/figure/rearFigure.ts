import { projected } from '../../../domain/geometry/plane'
import type { Layout } from '../../../domain/layout/document/layout'
import { harnessBars, type RearDrawing, rearDrawing } from '../../../domain/layout/drawing/rearDrawing'
import type { CheckedEvaluation } from '../../../domain/layout/evaluate/evaluation'
import type { AnchorRow } from '../../../domain/shop/anchorRows'
import { lengthText } from '../../../domain/units/length'
import { type Box, type PagePoint, type SheetItem, straightItem, textItem } from '../../page/item'
import { textWidthMm } from '../../page/textWidth'
import type { PlaceAnchors } from '../table/anchorTable'
import { BALLOON_BAND_MM, dimensionedItems } from './dimensionedView'
import { type FigureView, pagePoint } from './figureView'
import { type Ordinate, ordinateBandMm } from './ordinates'
import { FIGURE_TEXT_MM, primitiveItems, strapLines, tickItem } from './primitiveItems'
import { fittingScale } from './scale'

/** The bars from behind, as wide as asked for. */
export interface RearFigure {
  /** n of 1:n. */
  readonly scale: number
  readonly heightMm: number
  readonly itemsAt: (corner: PagePoint) => readonly SheetItem[]
}

/** No view is taller than this on paper: a bar is wide and low. Our judgement. */
const MOST_HEIGHT_MM = 70

/** A chain of spacings between neighbours on one bar. */
const CHAIN_MM = 4

interface Rear {
  readonly layout: Layout
  readonly drawing: RearDrawing
  /** The rows of the anchors on each bar, from left to right; bars without anchors are left out. */
  readonly chains: readonly (readonly AnchorRow[])[]
  readonly leftBandMm: number
  readonly belowBandMm: number
}

/** Null for a car without a harness bar. */
export const rearFigure = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  anchors: readonly PlaceAnchors[],
  widthMm: number,
): RearFigure | null => {
  const drawing = rearDrawing(layout, evaluation)
  if (drawing === null) return null
  const chains = chainsOf(layout, anchors)
  const points = chains.flat().map(({ anchor }) => anchor.mount.point)
  const text = (lengthMm: number): string => lengthText(lengthMm, layout.units.length)
  const rear: Rear = {
    layout,
    drawing,
    chains,
    leftBandMm: ordinateBandMm(points.map(({ zMm }) => text(zMm))),
    belowBandMm: ordinateBandMm(['0', ...points.map(({ yMm }) => text(yMm))]),
  }
  const { min, max } = drawing.bounds
  const real = { widthMm: max.uMm - min.uMm, heightMm: max.vMm - min.vMm }
  const scale = fittingScale(real, {
    widthMm: widthMm - rear.leftBandMm - 2 * BALLOON_BAND_MM,
    heightMm: MOST_HEIGHT_MM,
  })
  const boxHeightMm = real.heightMm / scale + 2 * BALLOON_BAND_MM
  return {
    scale,
    heightMm: chains.length * CHAIN_MM + boxHeightMm + rear.belowBandMm,
    itemsAt: (corner) => rearItems(rear, scale, corner),
  }
}

const chainsOf = (layout: Layout, anchors: readonly PlaceAnchors[]): readonly (readonly AnchorRow[])[] => {
  const rows = anchors.flatMap((place) => place.rows)
  return harnessBars(layout)
    .map(({ id }) =>
      rows
        .filter(({ anchor, sameAsItem }) => anchor.mount.tubeId === id && sameAsItem === null)
        .toSorted((a, b) => a.anchor.mount.point.yMm - b.anchor.mount.point.yMm),
    )
    .filter((chain) => chain.length > 0)
}

const rearItems = (rear: Rear, scale: number, corner: PagePoint): readonly SheetItem[] => {
  const { layout, drawing, chains } = rear
  const { min, max } = drawing.bounds
  const leftMm = corner.xMm + rear.leftBandMm
  const topMm = corner.yMm + chains.length * CHAIN_MM
  const view: FigureView = {
    scale,
    datum: {
      xMm: leftMm + BALLOON_BAND_MM - min.uMm / scale,
      yMm: topMm + BALLOON_BAND_MM + max.vMm / scale,
    },
  }
  const box: Box = {
    leftMm,
    topMm,
    rightMm: leftMm + 2 * BALLOON_BAND_MM + (max.uMm - min.uMm) / scale,
    bottomMm: topMm + 2 * BALLOON_BAND_MM + (max.vMm - min.vMm) / scale,
  }
  const rows = chains.flat()
  const ordinate = (valueMm: number, at: PagePoint): Ordinate => ({
    text: lengthText(valueMm, layout.units.length),
    at,
    isDatum: false,
  })
  const placeOf = ({ anchor }: AnchorRow): PagePoint => pagePoint(view, projected(anchor.mount.point, 'rear'))
  return [
    ...chains.flatMap((chain, index) =>
      chainItems(
        chain.map((row) => ({ row, at: placeOf(row) })),
        topMm - index * CHAIN_MM - 0.8,
        layout,
      ),
    ),
    ...dimensionedItems({
      view,
      box,
      drawn: drawing.primitives.flatMap((primitive) => primitiveItems(primitive, view)),
      targets: rows.map((row) => ({ itemNumber: row.itemNumber, at: placeOf(row) })),
      straps: strapLines(drawing.primitives, view),
      across: rows.map((row) => ordinate(row.anchor.mount.point.zMm, placeOf(row))),
      along: [
        // The datum itself lies far below: its line begins at the edge.
        { text: '0', at: { xMm: view.datum.xMm, yMm: box.bottomMm }, isDatum: true },
        ...rows.map((row) => ordinate(row.anchor.mount.point.yMm, placeOf(row))),
      ],
    }),
  ]
}

interface Link {
  readonly row: AnchorRow
  readonly at: PagePoint
}

/** Spacings of neighbours, square across the car, on one line above the view; one that is too short for its number has no number. */
const chainItems = (links: readonly Link[], yMm: number, { units }: Layout): readonly SheetItem[] => {
  if (links.length < 2) return []
  const between = links.slice(1).map((to, index) => ({ from: links[index] ?? to, to }))
  return [
    ...links.flatMap(({ at }) => [
      straightItem({ xMm: at.xMm, yMm: yMm - 0.8 }, at, { widthMm: 0.1, ink: 'dark' }),
      tickItem({ xMm: at.xMm, yMm }),
    ]),
    ...between.flatMap(({ from, to }) => {
      const spacingMm = to.row.anchor.mount.point.yMm - from.row.anchor.mount.point.yMm
      const text = lengthText(spacingMm, units.length)
      const middleMm = (from.at.xMm + to.at.xMm) / 2
      const line = straightItem(
        { xMm: from.at.xMm, yMm },
        { xMm: to.at.xMm, yMm },
        { widthMm: 0.12, ink: 'dark' },
      )
      const isRoomy = textWidthMm(text, FIGURE_TEXT_MM, 'bold') + 2 <= to.at.xMm - from.at.xMm
      const number = textItem({ xMm: middleMm, yMm: yMm - 0.7 }, text, FIGURE_TEXT_MM, {
        align: 'centre',
        weight: 'bold',
      })
      return isRoomy ? [line, number] : [line]
    }),
  ]
}
