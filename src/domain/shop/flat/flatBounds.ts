import { cosDeg, sinDeg } from '../../units/angle'
import type { FlatPoint, FlatShape } from './flatFigure'

/** An upright rectangle in a flat figure, mm. */
export interface FlatBounds {
  readonly min: FlatPoint
  readonly max: FlatPoint
}

/** Room kept for a character, as a share of the font size: a wide guess, which costs only white space. Our judgement. */
const CHARACTER_SHARE = 0.6

/** How far letters reach above and below their base line, as shares of the font size. Our judgement: a little more than common faces. */
const ASCENT_SHARE = 0.8
const DESCENT_SHARE = 0.25

/** How much of a line of text stands before its point, by what of it is aligned there. */
const SHARE_BEFORE = { left: 0, centre: 0.5, right: 1 } as const

/** The same direction as an angle in [0°, 360°). */
export const fullTurnDeg = (angleDeg: number): number => ((angleDeg % 360) + 360) % 360

/** How far an arc turns anticlockwise, [0°, 360°]; 360 only where its two angles lie a whole turn or more apart. */
export const sweepDeg = (fromDeg: number, toDeg: number): number =>
  Math.abs(toDeg - fromDeg) >= 360 ? 360 : fullTurnDeg(toDeg - fromDeg)

const onCircle = (centre: FlatPoint, radiusMm: number, atDeg: number): FlatPoint => ({
  xMm: centre.xMm + radiusMm * cosDeg(atDeg),
  yMm: centre.yMm + radiusMm * sinDeg(atDeg),
})

/** Points whose bounds are those of the shape; of an arc its ends and where it runs level or plumb. */
const outerPoints = (shape: FlatShape): readonly FlatPoint[] => {
  switch (shape.kind) {
    case 'polyline':
      return shape.points
    case 'circle':
      return [0, 90, 180, 270].map((deg) => onCircle(shape.centre, shape.radiusMm, deg))
    case 'arc': {
      const wholeDeg = sweepDeg(shape.fromDeg, shape.toDeg)
      const turning = [0, 90, 180, 270].filter((deg) => fullTurnDeg(deg - shape.fromDeg) <= wholeDeg)
      return [shape.fromDeg, shape.toDeg, ...turning].map((deg) =>
        onCircle(shape.centre, shape.radiusMm, deg),
      )
    }
    case 'text': {
      const widthMm = shape.text.length * CHARACTER_SHARE * shape.heightMm
      const beforeMm = widthMm * SHARE_BEFORE[shape.align]
      const [cos, sin] = [cosDeg(shape.turnDeg), sinDeg(shape.turnDeg)]
      return [-beforeMm, widthMm - beforeMm].flatMap((alongMm) =>
        [-DESCENT_SHARE * shape.heightMm, ASCENT_SHARE * shape.heightMm].map((upMm) => ({
          xMm: shape.at.xMm + alongMm * cos - upMm * sin,
          yMm: shape.at.yMm + alongMm * sin + upMm * cos,
        })),
      )
    }
  }
}

/** The least rectangle about shapes, lettering by a wide guess; a point at the origin when there are none. */
export const flatBounds = (shapes: readonly FlatShape[]): FlatBounds => {
  let [leftMm, bottomMm, rightMm, topMm] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const { xMm, yMm } of shapes.flatMap(outerPoints)) {
    leftMm = Math.min(leftMm, xMm)
    bottomMm = Math.min(bottomMm, yMm)
    rightMm = Math.max(rightMm, xMm)
    topMm = Math.max(topMm, yMm)
  }
  if (leftMm > rightMm) return { min: { xMm: 0, yMm: 0 }, max: { xMm: 0, yMm: 0 } }
  return { min: { xMm: leftMm, yMm: bottomMm }, max: { xMm: rightMm, yMm: topMm } }
}
