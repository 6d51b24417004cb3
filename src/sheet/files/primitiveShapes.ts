import type { PlanePointMm } from '../../domain/geometry/plane'
import { angleTextAt, dimensionLine } from '../../domain/layout/drawing/figureText'
import type { LineStyle, MarkKind, Primitive } from '../../domain/layout/drawing/primitive'
import type { FlatLayer, FlatPoint, FlatShape } from '../../domain/shop/flat/flatFigure'

/** Outlines are what is there or comes with the seat; marks are what somebody sets out. */
const LAYERS: Readonly<Record<LineStyle, FlatLayer>> = {
  outline: 'OUTLINE',
  hidden: 'OUTLINE',
  centre: 'OUTLINE',
  ghost: 'OUTLINE',
  body: 'OUTLINE',
  tube: 'OUTLINE',
  strap: 'MARK',
  broken: 'MARK',
  dimension: 'MARK',
  limit: 'MARK',
  focus: 'MARK',
  other: 'MARK',
}

/** How far the font's middle is above its base line, as a share of its size: half the height of capitals. */
const MIDDLE_SHARE = 0.35

const flat = ({ uMm, vMm }: PlanePointMm): FlatPoint => ({ xMm: uMm, yMm: vMm })

/** One thing of the drawing list in true size; a zone is none, for it is no part of the car. */
export const primitiveShapes = (primitive: Primitive, textHeightMm: number): readonly FlatShape[] => {
  switch (primitive.kind) {
    case 'polyline':
      return primitive.points.length < 2
        ? []
        : [
            {
              kind: 'polyline',
              layer: LAYERS[primitive.style],
              points: primitive.points.map(flat),
              closed: primitive.closed,
            },
          ]
    case 'circle':
      return [
        {
          kind: 'circle',
          layer: LAYERS[primitive.style],
          centre: flat(primitive.centre),
          radiusMm: primitive.radiusMm,
        },
      ]
    case 'zone':
      return []
    case 'label':
      return [letters(primitive.at, primitive.text, textHeightMm, primitive.align)]
    case 'dimension': {
      const line = dimensionLine(primitive, textHeightMm)
      const text = letters(line.textAt, primitive.text, textHeightMm, 'centre', line.textTurnDeg)
      return [stroke([line.from, line.to]), text]
    }
    case 'angle':
      return [
        {
          kind: 'arc',
          layer: 'MARK',
          centre: flat(primitive.apex),
          radiusMm: primitive.radiusMm,
          fromDeg: primitive.fromDeg,
          toDeg: primitive.toDeg,
        },
        letters(angleTextAt(primitive, textHeightMm), primitive.text, textHeightMm, 'centre'),
      ]
    case 'mark':
      return markShapes(primitive.mark, primitive.at)
  }
}

/** A text whose middle is at a height half of its capitals above the base line. */
const letters = (
  middle: PlanePointMm,
  text: string,
  heightMm: number,
  align: 'left' | 'centre' | 'right',
  turnDeg = 0,
): FlatShape => {
  const turn = (turnDeg * Math.PI) / 180
  const downMm = MIDDLE_SHARE * heightMm
  return {
    kind: 'text',
    layer: 'TEXT',
    at: { xMm: middle.uMm + downMm * Math.sin(turn), yMm: middle.vMm - downMm * Math.cos(turn) },
    text,
    heightMm,
    align,
    turnDeg,
  }
}

const stroke = (points: readonly PlanePointMm[]): FlatShape => ({
  kind: 'polyline',
  layer: 'MARK',
  points: points.map(flat),
  closed: false,
})

const cross = ({ uMm, vMm }: PlanePointMm, reachMm: number): readonly FlatShape[] => [
  stroke([
    { uMm: uMm - reachMm, vMm },
    { uMm: uMm + reachMm, vMm },
  ]),
  stroke([
    { uMm, vMm: vMm - reachMm },
    { uMm, vMm: vMm + reachMm },
  ]),
]

const ring = (centre: PlanePointMm, radiusMm: number): FlatShape => ({
  kind: 'circle',
  layer: 'MARK',
  centre: flat(centre),
  radiusMm,
})

/** Crosses to snap to where something is set out from or fixed, small rings elsewhere; sizes in mm of the car, ours. */
const markShapes = (mark: MarkKind, at: PlanePointMm): readonly FlatShape[] => {
  switch (mark) {
    case 'datum':
      return [ring(at, 15), ...cross(at, 30)]
    case 'tab':
    case 'wrap':
    case 'eye':
      return cross(at, 8)
    case 'hip':
      return [ring(at, 8), ...cross(at, 15)]
    case 'shoulder':
    case 'hip-bone':
    case 'buckle':
    case 'junction':
      return [ring(at, 6)]
    case 'slot':
    case 'rim':
    case 'tube-end':
    case 'recline':
      return [ring(at, 3)]
  }
}
