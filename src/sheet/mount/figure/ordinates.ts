import {
  lineItem,
  straightItem,
  textItem,
  type LineOptions,
  type PagePoint,
  type SheetItem,
} from '../../page/item'
import { textWidthMm } from '../../page/textWidth'
import { tickItem } from './primitiveItems'
import { spread } from './spread'

/** A distance from the datum that is written at the edge of an elevation. */
export interface Ordinate {
  readonly text: string
  /** What it measures, on the page. */
  readonly at: PagePoint
  readonly isDatum: boolean
}

/** The edge of the drawing where the numbers stand and the stretch of it they may use. */
export interface OrdinateEdge {
  /** `left`: heights or lateral distances, numbers level. `below`: distances along the car, numbers reading upward. */
  readonly side: 'left' | 'below'
  readonly edgeMm: number
  readonly fromMm: number
  readonly toMm: number
}

const SIZES_MM = [2.9, 2.6, 2.3] as const
const JOG_MM = 2.5
const GAP_MM = 0.5
const PEN: LineOptions = { widthMm: 0.1, ink: 'dark' }
const DATUM_PEN: LineOptions = { widthMm: 0.2, ink: 'black', dashMm: [4, 0.8, 0.8, 0.8] }
const RAIL_PEN: LineOptions = { widthMm: 0.12, ink: 'dark' }

/** Radius of the circle that marks where running dimensions begin. */
const ORIGIN_MM = 0.8

/** Depth of the strip that bent lines and the longest of the numbers need beside a drawing. */
export const ordinateBandMm = (texts: readonly string[]): number =>
  JOG_MM + 2 * GAP_MM + Math.max(0, ...texts.map((text) => textWidthMm(text, SIZES_MM[0], 'bold')))

/**
 * Running dimensions from the datum: one dimension line along the edge that begins in a circle at the datum, with an architectural tick
 * where the fine line from each measured point meets it, and the numbers beyond, moved apart where they would touch. Equal numbers
 * share one line. When they find no room even in the smallest lettering, a note points to the table instead.
 * Source of the manner: superimposed running dimensioning of ISO 129-1 (from memory), with ticks for arrows.
 */
export const ordinateItems = (ordinates: readonly Ordinate[], edge: OrdinateEdge): readonly SheetItem[] => {
  const shared = sharedOrdinates(ordinates, edge)
  const wanted = shared.map((each) => along(each.at, edge))
  for (const sizeMm of SIZES_MM) {
    const places = spread(wanted, sizeMm * 1.2, edge)
    if (places === null) continue
    return [
      ...railItems(shared, edge),
      ...shared.flatMap((ordinate, index) => ordinateItem(ordinate, places[index] ?? 0, sizeMm, edge)),
    ]
  }
  return [noteItem(edge)]
}

const along = (point: PagePoint, edge: OrdinateEdge): number => (edge.side === 'left' ? point.yMm : point.xMm)

/** One for each number, at the point farthest from the edge so that its line passes the others; in order along the edge. */
const sharedOrdinates = (ordinates: readonly Ordinate[], edge: OrdinateEdge): readonly Ordinate[] => {
  const byText = new Map<string, Ordinate>()
  for (const ordinate of ordinates) {
    const known = byText.get(ordinate.text)
    const isFarther =
      known !== undefined &&
      (edge.side === 'left' ? ordinate.at.xMm > known.at.xMm : ordinate.at.yMm < known.at.yMm)
    if (known === undefined || isFarther)
      byText.set(ordinate.text, { ...ordinate, isDatum: ordinate.isDatum || known?.isDatum === true })
    else if (ordinate.isDatum) byText.set(ordinate.text, { ...known, isDatum: true })
  }
  return [...byText.values()].toSorted((a, b) => along(a.at, edge) - along(b.at, edge))
}

/** Where a measured point's line meets the dimension line. */
const onRail = ({ at }: Ordinate, edge: OrdinateEdge): PagePoint =>
  edge.side === 'left' ? { xMm: edge.edgeMm, yMm: at.yMm } : { xMm: at.xMm, yMm: edge.edgeMm }

/** The dimension line with its ticks and the circle at the datum; none for a datum alone. */
const railItems = (shared: readonly Ordinate[], edge: OrdinateEdge): readonly SheetItem[] => {
  const [first, last] = [shared[0], shared.at(-1)]
  if (first === undefined || last === undefined || shared.length < 2) return []
  return [
    straightItem(onRail(first, edge), onRail(last, edge), RAIL_PEN),
    ...shared.map((ordinate) =>
      ordinate.isDatum ? originItem(onRail(ordinate, edge)) : tickItem(onRail(ordinate, edge)),
    ),
  ]
}

const originItem = (centre: PagePoint): SheetItem => ({
  kind: 'circle',
  centre,
  radiusMm: ORIGIN_MM,
  widthMm: 0.2,
  ink: 'black',
  fill: 'white',
  dashMm: [],
})

const ordinateItem = (
  ordinate: Ordinate,
  placeMm: number,
  sizeMm: number,
  edge: OrdinateEdge,
): readonly SheetItem[] => {
  const pen = ordinate.isDatum ? DATUM_PEN : PEN
  const weight = 'bold'
  const bend = onRail(ordinate, edge)
  if (edge.side === 'left') {
    const end = { xMm: edge.edgeMm - JOG_MM, yMm: placeMm }
    const at = { xMm: end.xMm - GAP_MM, yMm: placeMm + sizeMm * 0.35 }
    return [
      lineItem([ordinate.at, bend, end], pen),
      textItem(at, ordinate.text, sizeMm, { align: 'right', weight, halo: true }),
    ]
  }
  const end = { xMm: placeMm, yMm: edge.edgeMm + JOG_MM }
  const at = { xMm: placeMm + sizeMm * 0.35, yMm: end.yMm + GAP_MM }
  return [
    lineItem([ordinate.at, bend, end], pen),
    textItem(at, ordinate.text, sizeMm, { align: 'right', upward: true, weight, halo: true }),
  ]
}

const noteItem = (edge: OrdinateEdge): SheetItem => {
  const middleMm = (edge.fromMm + edge.toMm) / 2
  const text = 'distances: see the table'
  return edge.side === 'left'
    ? textItem({ xMm: edge.edgeMm - 1, yMm: middleMm }, text, 2.3, { align: 'centre', upward: true })
    : textItem({ xMm: middleMm, yMm: edge.edgeMm + 3 }, text, 2.3, { align: 'centre' })
}
