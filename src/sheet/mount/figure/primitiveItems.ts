import type { Region } from '../../../domain/geometry/polygon'
import { angleTextAt, arcPoints, dimensionLine } from '../../../domain/layout/drawing/figureText'
import type { LineStyle, MarkKind, Primitive } from '../../../domain/layout/drawing/primitive'
import { cosDeg, sinDeg } from '../../../domain/units/angle'
import { type FigureView, pagePoint } from './figureView'
import { lineItem, straightItem, textItem, type Ink, type PagePoint, type SheetItem } from '../../page/item'

/** Line widths and patterns of the printed drawing: two weights, as on a drawing board. Our judgement. */
const PENS: Readonly<
  Record<LineStyle, { readonly widthMm: number; readonly ink: Ink; readonly dashMm: readonly number[] }>
> = {
  outline: { widthMm: 0.3, ink: 'black', dashMm: [] },
  tube: { widthMm: 0.25, ink: 'dark', dashMm: [] },
  strap: { widthMm: 0.5, ink: 'black', dashMm: [] },
  hidden: { widthMm: 0.15, ink: 'dark', dashMm: [1.2, 0.8] },
  centre: { widthMm: 0.12, ink: 'mid', dashMm: [3, 0.6, 0.6, 0.6] },
  ghost: { widthMm: 0.1, ink: 'mid', dashMm: [] },
  body: { widthMm: 0.15, ink: 'mid', dashMm: [] },
  dimension: { widthMm: 0.12, ink: 'dark', dashMm: [] },
  limit: { widthMm: 0.15, ink: 'dark', dashMm: [2, 0.8] },
  broken: { widthMm: 0.7, ink: 'black', dashMm: [1.8, 1] },
  focus: { widthMm: 0.9, ink: 'dark', dashMm: [] },
  other: { widthMm: 0.35, ink: 'dark', dashMm: [0.6, 0.7] },
}

/** Height of the lettering on the drawing, mm of paper. Our judgement: 6.5 point. */
export const FIGURE_TEXT_MM = 2.3

/** Half the height of a line of capitals above its base line. */
const MIDDLE_SHARE = 0.35

/** One thing of the drawing list as it lies on the page. */
export const primitiveItems = (primitive: Primitive, view: FigureView): readonly SheetItem[] => {
  const textHeightMm = FIGURE_TEXT_MM * view.scale
  switch (primitive.kind) {
    case 'polyline': {
      if (primitive.points.length < 2) return []
      const points = primitive.points.map((point) => pagePoint(view, point))
      return [lineItem(points, { ...PENS[primitive.style], closed: primitive.closed })]
    }
    case 'circle':
      return [
        {
          kind: 'circle',
          centre: pagePoint(view, primitive.centre),
          radiusMm: primitive.radiusMm / view.scale,
          fill: 'none',
          ...PENS[primitive.style],
        },
      ]
    case 'zone':
      return zoneItems(primitive.region, primitive.edges, primitive.hatchDeg, view)
    case 'label':
      return [
        figureText(pagePoint(view, primitive.at), primitive.text, {
          align: primitive.align,
          weight: primitive.weight === 'strong' ? 'bold' : 'regular',
        }),
      ]
    case 'dimension': {
      const line = dimensionLine(primitive, textHeightMm)
      return dimensionItems(
        pagePoint(view, line.from),
        pagePoint(view, line.to),
        figureText(pagePoint(view, line.textAt), primitive.text, { align: 'centre' }),
      )
    }
    case 'angle': {
      const arc = arcPoints(primitive.apex, primitive.radiusMm, primitive.fromDeg, primitive.toDeg)
      return [
        lineItem(
          arc.map((point) => pagePoint(view, point)),
          PENS.dimension,
        ),
        figureText(pagePoint(view, angleTextAt(primitive, textHeightMm)), primitive.text, {
          align: 'centre',
        }),
      ]
    }
    case 'mark':
      return markItems(primitive.mark, pagePoint(view, primitive.at))
  }
}

/** The straps as lines on the page: balloons keep off them where they can, because a covered strap cannot be followed. */
export const strapLines = (
  primitives: readonly Primitive[],
  view: FigureView,
): readonly (readonly PagePoint[])[] =>
  primitives.flatMap((primitive) =>
    primitive.kind === 'polyline' && primitive.style === 'strap'
      ? [primitive.points.map((point) => pagePoint(view, point))]
      : [],
  )

const figureText = (middle: PagePoint, text: string, options: Parameters<typeof textItem>[3]): SheetItem =>
  textItem({ xMm: middle.xMm, yMm: middle.yMm + FIGURE_TEXT_MM * MIDDLE_SHARE }, text, FIGURE_TEXT_MM, {
    ...options,
    halo: true,
  })

/** Half the length of an architectural tick. */
const TICK_MM = 0.8

/** An architectural tick across the end of a dimension line. */
export const tickItem = ({ xMm, yMm }: PagePoint): SheetItem =>
  straightItem(
    { xMm: xMm - TICK_MM, yMm: yMm + TICK_MM },
    { xMm: xMm + TICK_MM, yMm: yMm - TICK_MM },
    { widthMm: 0.25 },
  )

/** A line with a slanting tick at each end. */
const dimensionItems = (from: PagePoint, to: PagePoint, text: SheetItem): readonly SheetItem[] => [
  straightItem(from, to, PENS.dimension),
  ...[from, to].map(tickItem),
  ...(text.kind === 'text' && text.text === '' ? [] : [text]),
]

const circle = (centre: PagePoint, radiusMm: number, fill: Ink): SheetItem => ({
  kind: 'circle',
  centre,
  radiusMm,
  widthMm: 0.2,
  ink: 'black',
  fill,
  dashMm: [],
})

const cross = (centre: PagePoint, reachMm: number): readonly SheetItem[] => [
  straightItem(
    { xMm: centre.xMm - reachMm, yMm: centre.yMm },
    { xMm: centre.xMm + reachMm, yMm: centre.yMm },
    { widthMm: 0.2 },
  ),
  straightItem(
    { xMm: centre.xMm, yMm: centre.yMm - reachMm },
    { xMm: centre.xMm, yMm: centre.yMm + reachMm },
    { widthMm: 0.2 },
  ),
]

/** Symbols of constant size; things to be welded are filled. */
const markItems = (mark: MarkKind, at: PagePoint): readonly SheetItem[] => {
  switch (mark) {
    case 'datum':
      return [circle(at, 1.6, 'none'), circle(at, 0.35, 'black'), ...cross(at, 2.8)]
    case 'hip':
      return [circle(at, 1, 'white'), ...cross(at, 1.6)]
    case 'shoulder':
      return [circle(at, 0.8, 'white')]
    case 'hip-bone':
      return [circle(at, 0.5, 'mid')]
    case 'tab':
    case 'wrap':
    case 'eye':
      return [circle(at, 0.6, 'black')]
    case 'buckle':
      return [circle(at, 0.9, 'light')]
    case 'junction':
      return [circle(at, 0.6, 'light')]
    case 'slot':
    case 'rim':
    case 'tube-end':
    case 'recline':
      return [circle(at, 0.4, 'white')]
  }
}

/** Distance of hatch lines on paper. */
const HATCH_MM = 1.2

const zoneItems = (
  region: Region,
  edges: Extract<Primitive, { kind: 'zone' }>['edges'],
  hatchDeg: number,
  view: FigureView,
): readonly SheetItem[] => [
  ...region.flatMap((polygon) =>
    hatchLines(
      polygon.map((point) => pagePoint(view, point)),
      hatchDeg,
    ),
  ),
  ...edges.map(([from, to]) => straightItem(pagePoint(view, from), pagePoint(view, to), PENS.dimension)),
]

/**
 * Parallel lines across a convex polygon on the page. Lines are counted from the page's corner, so that neighbouring polygons
 * share them. Each is cut where it enters and leaves the polygon.
 */
const hatchLines = (corners: readonly PagePoint[], hatchDeg: number): readonly SheetItem[] => {
  const normal = { x: sinDeg(hatchDeg), y: cosDeg(hatchDeg) }
  const heights = corners.map((corner) => corner.xMm * normal.x + corner.yMm * normal.y)
  const first = Math.ceil(Math.min(...heights) / HATCH_MM)
  const last = Math.floor(Math.max(...heights) / HATCH_MM)
  return Array.from(
    { length: Math.max(0, last - first + 1) },
    (_, index) => (first + index) * HATCH_MM,
  ).flatMap((height) => {
    const [from, to] = crossings(corners, heights, height)
    return from === undefined || to === undefined
      ? []
      : [straightItem(from, to, { widthMm: 0.08, ink: 'mid' })]
  })
}

const crossings = (
  corners: readonly PagePoint[],
  heights: readonly number[],
  height: number,
): readonly PagePoint[] =>
  corners.flatMap((start, index) => {
    const next = (index + 1) % corners.length
    const end = corners[next] ?? start
    const fromMm = (heights[index] ?? 0) - height
    const toMm = (heights[next] ?? 0) - height
    if (fromMm < 0 === toMm < 0) return []
    const share = fromMm / (fromMm - toMm)
    return [
      { xMm: start.xMm + (end.xMm - start.xMm) * share, yMm: start.yMm + (end.yMm - start.yMm) * share },
    ]
  })
