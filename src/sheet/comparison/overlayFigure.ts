import type { Elevation } from '../../domain/geometry/plane'
import { type Overlay, overlayDrawing } from '../../domain/layout/drawing/overlayDrawing'
import type { Drawing } from '../../domain/layout/drawing/primitive'
import { FIGURE_TEXT_MM, primitiveItems } from '../mount/figure/primitiveItems'
import { fittingScale } from '../mount/figure/scale'
import type { PagePoint, SheetItem } from '../page/item'

/** The two elevations above each other on one x axis, as one strip of a page. */
export interface OverlayFigure {
  /** n of 1:n. */
  readonly scale: number
  readonly heightMm: number
  readonly itemsAt: (at: PagePoint) => readonly SheetItem[]
}

/** The room that both views together may take from a page's height. Our judgement: a column holds a table beside them. */
const MOST_HEIGHT_MM = 118
const GAP_MM = 2
/** Above and below: symbols of constant size reach beyond what is drawn. */
const MARGIN_MM = 2.5

const extentOf = ({ bounds: { min, max } }: Drawing) => ({
  widthMm: max.uMm - min.uMm,
  heightMm: max.vMm - min.vMm,
})

/** Scale and lettering hang on each other: the drawing is made once at a guess to learn its size. */
const drawingsAt = (
  overlay: Omit<Overlay, 'textHeightMm'>,
  scale: number,
): Readonly<Record<Elevation, Drawing>> => {
  const sized = { ...overlay, textHeightMm: FIGURE_TEXT_MM * scale }
  return { top: overlayDrawing(sized, 'top'), side: overlayDrawing(sized, 'side') }
}

const neededScale = ({ top, side }: Readonly<Record<Elevation, Drawing>>, widthMm: number): number => {
  const minUMm = Math.min(top.bounds.min.uMm, side.bounds.min.uMm)
  const maxUMm = Math.max(top.bounds.max.uMm, side.bounds.max.uMm)
  const heightMm = extentOf(top).heightMm + extentOf(side).heightMm
  return fittingScale(
    { widthMm: maxUMm - minUMm, heightMm },
    { widthMm, heightMm: MOST_HEIGHT_MM - GAP_MM - 2 * MARGIN_MM },
  )
}

/** Times that a scale is tried again with the lettering it asks for; it only ever grows, so a few are enough. */
const MOST_TRIES = 6
const FIRST_SCALE = 10

const fitted = (overlay: Omit<Overlay, 'textHeightMm'>, widthMm: number) => {
  let scale = FIRST_SCALE
  let drawings = drawingsAt(overlay, scale)
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const needed = neededScale(drawings, widthMm)
    if (needed === scale) break
    scale = needed
    drawings = drawingsAt(overlay, scale)
  }
  // Larger lettering may ask for one scale more; smaller on paper is always right.
  return { scale: Math.max(scale, neededScale(drawings, widthMm)), drawings }
}

/** One variant over the other at the largest scale that fits a column. */
export const overlayFigure = (overlay: Omit<Overlay, 'textHeightMm'>, widthMm: number): OverlayFigure => {
  const { scale, drawings } = fitted(overlay, widthMm)
  const { top, side } = drawings
  const minUMm = Math.min(top.bounds.min.uMm, side.bounds.min.uMm)
  const maxUMm = Math.max(top.bounds.max.uMm, side.bounds.max.uMm)
  const leftMm = (widthMm - (maxUMm - minUMm) / scale) / 2
  const topHeightMm = extentOf(top).heightMm / scale
  const itemsOf = ({ bounds, primitives }: Drawing, at: PagePoint): readonly SheetItem[] => {
    const datum = {
      xMm: at.xMm + leftMm - minUMm / scale,
      yMm: at.yMm + bounds.max.vMm / scale,
    }
    return primitives.flatMap((primitive) => primitiveItems(primitive, { scale, datum }))
  }
  return {
    scale,
    heightMm: topHeightMm + GAP_MM + extentOf(side).heightMm / scale + 2 * MARGIN_MM,
    itemsAt: (at) => [
      ...itemsOf(top, { ...at, yMm: at.yMm + MARGIN_MM }),
      ...itemsOf(side, { ...at, yMm: at.yMm + MARGIN_MM + topHeightMm + GAP_MM }),
    ],
  }
}
