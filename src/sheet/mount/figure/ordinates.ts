import { lineItem, textItem, type LineOptions, type PagePoint, type SheetItem } from '../../page/item'
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

/** Depth of the strip that the bent line and the longest number need. Our judgement: "-1234.5" and "-48 11/16" fit. */
export const ORDINATE_BAND_MM = 12

const SIZES_MM = [2.9, 2.6, 2.3] as const
const JOG_MM = 2.5
const PEN: LineOptions = { widthMm: 0.1, ink: 'dark' }
const DATUM_PEN: LineOptions = { widthMm: 0.2, ink: 'black', dashMm: [4, 0.8, 0.8, 0.8] }

/**
 * Running dimensions from the datum: a fine line from each measured point to the edge, bent where numbers would touch. Equal
 * numbers share one line. When the numbers find no room even in the smallest lettering, a note points to the table instead.
 */
export const ordinateItems = (ordinates: readonly Ordinate[], edge: OrdinateEdge): readonly SheetItem[] => {
  const shared = sharedOrdinates(ordinates, edge)
  const wanted = shared.map((each) => along(each.at, edge))
  for (const sizeMm of SIZES_MM) {
    const places = spread(wanted, sizeMm * 1.2, edge)
    if (places === null) continue
    return shared.flatMap((ordinate, index) => ordinateItem(ordinate, places[index] ?? 0, sizeMm, edge))
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

const ordinateItem = (
  ordinate: Ordinate,
  placeMm: number,
  sizeMm: number,
  edge: OrdinateEdge,
): readonly SheetItem[] => {
  const pen = ordinate.isDatum ? DATUM_PEN : PEN
  const weight = 'bold'
  if (edge.side === 'left') {
    const bend = { xMm: edge.edgeMm, yMm: ordinate.at.yMm }
    const end = { xMm: edge.edgeMm - JOG_MM, yMm: placeMm }
    const at = { xMm: end.xMm - 0.5, yMm: placeMm + sizeMm * 0.35 }
    return [
      lineItem([ordinate.at, bend, end], pen),
      textItem(at, ordinate.text, sizeMm, { align: 'right', weight, halo: true }),
    ]
  }
  const bend = { xMm: ordinate.at.xMm, yMm: edge.edgeMm }
  const end = { xMm: placeMm, yMm: edge.edgeMm + JOG_MM }
  const at = { xMm: placeMm + sizeMm * 0.35, yMm: end.yMm + 0.5 }
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
