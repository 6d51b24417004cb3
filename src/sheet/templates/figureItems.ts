import { sweepDeg } from '../../domain/shop/flat/flatBounds'
import type { FlatLayer, FlatPoint, FlatShape } from '../../domain/shop/flat/flatFigure'
import { cosDeg, sinDeg } from '../../domain/units/angle'
import {
  type Box,
  itemBox,
  lineItem,
  type LineOptions,
  type PagePoint,
  type SheetItem,
  textItem,
} from '../page/item'
import { clippedLine, type FlatWindow } from './clip'

/** Pens of the layers on paper: what is cut is heavy, what is only marked is thin. */
const PENS: Readonly<Record<FlatLayer, LineOptions>> = {
  CUT: { widthMm: 0.35 },
  DRILL: { widthMm: 0.3 },
  MARK: { widthMm: 0.15, ink: 'dark' },
  CHECK: { widthMm: 0.2 },
  TEXT: { widthMm: 0.15 },
  OUTLINE: { widthMm: 0.2 },
}

/** Where a figure's (0, 0) lies on the page; its y counts upward there too. Never scaled. */
const onPage =
  (origin: PagePoint) =>
  ({ xMm, yMm }: FlatPoint): PagePoint => ({ xMm: origin.xMm + xMm, yMm: origin.yMm - yMm })

type FlatText = Extract<FlatShape, { kind: 'text' }>

/** Lettering of a figure on paper; it reads to the right or upward. */
export const textOnPage = (shape: FlatText, origin: PagePoint): SheetItem =>
  textItem(onPage(origin)(shape.at), shape.text, shape.heightMm, {
    align: shape.align,
    upward: shape.turnDeg === 90,
    halo: shape.turnDeg === 90,
    weight: shape.heightMm > 3 ? 'bold' : 'regular',
  })

/** 2° each, as fine as the outlines of tabs. */
const ROUND_STEP_DEG = 2

/** A shape's line as straight pieces; text has none. */
export const lineOf = (shape: FlatShape): readonly FlatPoint[] => {
  switch (shape.kind) {
    case 'polyline': {
      const [first] = shape.points
      return shape.closed && first !== undefined ? [...shape.points, first] : shape.points
    }
    case 'circle':
      return roundLine(shape, 0, 360)
    case 'arc':
      return roundLine(shape, shape.fromDeg, sweepDeg(shape.fromDeg, shape.toDeg))
    case 'text':
      return []
  }
}

const roundLine = (
  { centre, radiusMm }: { readonly centre: FlatPoint; readonly radiusMm: number },
  fromDeg: number,
  turnDeg: number,
): readonly FlatPoint[] => {
  const steps = Math.max(1, Math.ceil(turnDeg / ROUND_STEP_DEG))
  return Array.from({ length: steps + 1 }, (_, step) => {
    const deg = fromDeg + (turnDeg * step) / steps
    return { xMm: centre.xMm + radiusMm * cosDeg(deg), yMm: centre.yMm + radiusMm * sinDeg(deg) }
  })
}

/** The lines of a figure inside a window, on the page. */
export const lineItems = (
  shapes: readonly FlatShape[],
  window: FlatWindow,
  origin: PagePoint,
): readonly SheetItem[] =>
  shapes.flatMap((shape) => {
    if (shape.kind === 'circle' && isInWindow(shape.centre, shape.radiusMm, window))
      return [circleOnPage(shape, origin)]
    return clippedLine(lineOf(shape), window).map((points) =>
      lineItem(points.map(onPage(origin)), PENS[shape.layer]),
    )
  })

const isInWindow = ({ xMm, yMm }: FlatPoint, radiusMm: number, { min, max }: FlatWindow): boolean =>
  xMm - radiusMm >= min.xMm &&
  xMm + radiusMm <= max.xMm &&
  yMm - radiusMm >= min.yMm &&
  yMm + radiusMm <= max.yMm

const circleOnPage = (shape: Extract<FlatShape, { kind: 'circle' }>, origin: PagePoint): SheetItem => ({
  kind: 'circle',
  centre: onPage(origin)(shape.centre),
  radiusMm: shape.radiusMm,
  widthMm: PENS[shape.layer].widthMm ?? 0.2,
  ink: PENS[shape.layer].ink ?? 'black',
  fill: 'none',
  dashMm: [],
})

/** The rectangle that a figure inks on paper, in its own coordinates: its lettering as the page sets it. */
export const inkedWindow = (shapes: readonly FlatShape[]): FlatWindow => {
  const boxes = shapes.map((shape): Box => {
    if (shape.kind === 'text') return itemBox(textOnPage(shape, { xMm: 0, yMm: 0 }))
    return itemBox(lineItem(lineOf(shape).map(onPage({ xMm: 0, yMm: 0 })), PENS[shape.layer]))
  })
  return {
    min: {
      xMm: Math.min(...boxes.map(({ leftMm }) => leftMm)),
      yMm: -Math.max(...boxes.map(({ bottomMm }) => bottomMm)),
    },
    max: {
      xMm: Math.max(...boxes.map(({ rightMm }) => rightMm)),
      yMm: -Math.min(...boxes.map(({ topMm }) => topMm)),
    },
  }
}
