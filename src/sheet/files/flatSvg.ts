import { flatBounds, sweepDeg } from '../../domain/shop/flat/flatBounds'
import type { FlatFigure, FlatLayer, FlatPoint, FlatShape } from '../../domain/shop/flat/flatFigure'
import { cosDeg, sinDeg } from '../../domain/units/angle'
import { svgText } from '../page/svgText'
import type { SvgNode } from '../page/svgTree'
import { FLAT_LAYERS } from './dxf'
import { noteShapes } from './noteShapes'

/** Pens of the layers: told apart in colour on screen and by their weight in a grey print. Our choice. */
const PENS: Readonly<Record<FlatLayer, { readonly colour: string; readonly widthMm: number }>> = {
  CUT: { colour: '#c00000', widthMm: 0.25 },
  DRILL: { colour: '#a000a0', widthMm: 0.25 },
  MARK: { colour: '#0060a0', widthMm: 0.13 },
  CHECK: { colour: '#007030', widthMm: 0.18 },
  TEXT: { colour: '#404040', widthMm: 0.13 },
  OUTLINE: { colour: '#000000', widthMm: 0.18 },
}

const ANCHORS = { left: 'start', centre: 'middle', right: 'end' } as const

/** White border, mm, so that no line lies on the edge. */
const MARGIN_MM = 5
const NOTE_SIZE_MM = 3.5

/** 10 nm, far below any machine; longer numbers only make files large. */
const places = (lengthMm: number): number => {
  const rounded = Math.round(lengthMm * 1e5) / 1e5
  return rounded === 0 ? 0 : rounded
}

/**
 * One figure as a drawing in true scale: one unit is one millimetre, width and height say so, and each layer is a group by its name.
 * The figure's x is the file's x; its y is the file's −y, for a screen counts downward. The notes stand below it.
 */
export const flatSvg = (figure: FlatFigure, notes: readonly string[]): string => {
  const shapes = [...figure.shapes, ...noteShapes([figure.title, ...notes], figure.shapes, NOTE_SIZE_MM)]
  const { min, max } = flatBounds(shapes)
  const widthMm = places(max.xMm - min.xMm + 2 * MARGIN_MM)
  const heightMm = places(max.yMm - min.yMm + 2 * MARGIN_MM)
  const root: SvgNode = {
    tag: 'svg',
    attributes: {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${widthMm}mm`,
      height: `${heightMm}mm`,
      viewBox: `${places(min.xMm - MARGIN_MM)} ${places(-max.yMm - MARGIN_MM)} ${widthMm} ${heightMm}`,
      'font-family': "'Arial Narrow', 'Liberation Sans Narrow', Arial, sans-serif",
      fill: 'none',
    },
    children: [
      { tag: 'title', attributes: {}, children: [figure.title] },
      ...FLAT_LAYERS.flatMap((layer) => layerNodes(layer, shapes)),
    ],
  }
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svgText(root)}\n`
}

const layerNodes = (layer: FlatLayer, shapes: readonly FlatShape[]): readonly SvgNode[] => {
  const own = shapes.filter((shape) => shape.layer === layer)
  if (own.length === 0) return []
  const { colour, widthMm } = PENS[layer]
  const attributes = { id: layer, stroke: colour, 'stroke-width': widthMm }
  return [{ tag: 'g', attributes, children: own.flatMap((shape) => shapeNodes(shape, colour)) }]
}

const onPage = ({ xMm, yMm }: FlatPoint): string => `${places(xMm)} ${places(-yMm)}`

const shapeNodes = (shape: FlatShape, colour: string): readonly SvgNode[] => {
  switch (shape.kind) {
    case 'polyline': {
      const path = shape.points.map(onPage).join('L')
      return shape.points.length < 2
        ? []
        : [{ tag: 'path', attributes: { d: `M${path}${shape.closed ? 'Z' : ''}` }, children: [] }]
    }
    case 'circle':
      return [circleNode(shape.centre, shape.radiusMm)]
    case 'arc':
      return [arcNode(shape)]
    case 'text':
      return [textNode(shape, colour)]
  }
}

const circleNode = ({ xMm, yMm }: FlatPoint, radiusMm: number): SvgNode => ({
  tag: 'circle',
  attributes: { cx: places(xMm), cy: places(-yMm), r: places(radiusMm) },
  children: [],
})

const arcNode = ({ centre, radiusMm, fromDeg, toDeg }: Extract<FlatShape, { kind: 'arc' }>): SvgNode => {
  const turnDeg = sweepDeg(fromDeg, toDeg)
  if (turnDeg === 360) return circleNode(centre, radiusMm)
  const at = (deg: number): string =>
    onPage({ xMm: centre.xMm + radiusMm * cosDeg(deg), yMm: centre.yMm + radiusMm * sinDeg(deg) })
  const radius = places(radiusMm)
  // Anticlockwise with y up is sweep flag 0 with y down. Source: SVG 1.1, 8.3.8 (from memory).
  const d = `M${at(fromDeg)}A${radius} ${radius} 0 ${turnDeg > 180 ? 1 : 0} 0 ${at(toDeg)}`
  return { tag: 'path', attributes: { d }, children: [] }
}

const textNode = (shape: Extract<FlatShape, { kind: 'text' }>, colour: string): SvgNode => {
  const [xMm, yMm] = [places(shape.at.xMm), places(-shape.at.yMm)]
  return {
    tag: 'text',
    attributes: {
      x: xMm,
      y: yMm,
      'font-size': places(shape.heightMm),
      'text-anchor': ANCHORS[shape.align],
      fill: colour,
      stroke: 'none',
      ...(shape.turnDeg === 0 ? {} : { transform: `rotate(${places(-shape.turnDeg)} ${xMm} ${yMm})` }),
    },
    children: [shape.text],
  }
}
