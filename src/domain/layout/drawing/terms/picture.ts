import { type PlanePointMm, planePoint } from '../../../geometry/plane'
import { cosDeg, sinDeg } from '../../../units/angle'
import { type Box, boxAbout, drawingBounds } from '../box'
import type { LineStyle, Primitive } from '../primitive'

/** One picture of a word or a reason: drawn as any other drawing is, with what it shows in words for those who do not see it. */
export interface Picture {
  readonly primitives: readonly Primitive[]
  /** The part of the plane to show, 4 wide and 3 high. */
  readonly bounds: Box
  /** Height of a line of text, mm of the car. */
  readonly textHeightMm: number
  readonly description: string
}

/** Width over height of every picture: a shape that is legible on an upright phone. Our judgement. */
const ASPECT = 4 / 3

/** Lines of text across a picture: at 300 px a line is then 14 px high. Our judgement. */
const TEXTS_ACROSS = 21

/** Of the drawing's own size. Our judgement. */
const MARGIN = 1.12

const textHeightIn = ({ min, max }: Box): number => (max.uMm - min.uMm) / TEXTS_ACROSS

/** The rectangle of the pictures' shape about a point. */
export const window43 = (uMm: number, vMm: number, widthMm: number): Box =>
  boxAbout(planePoint(uMm, vMm), widthMm, widthMm / ASPECT)

/** The smallest rectangle of the pictures' shape about everything drawn, with a margin. */
const windowAbout = (primitives: readonly Primitive[]): Box => {
  const about = (textHeightMm: number): Box => {
    const { min, max } = drawingBounds(primitives, textHeightMm)
    const widthMm = MARGIN * Math.max(max.uMm - min.uMm, (max.vMm - min.vMm) * ASPECT)
    return window43((min.uMm + max.uMm) / 2, (min.vMm + max.vMm) / 2, widthMm)
  }
  // Lettering grows with the window and the window with its lettering: twice is near enough, and the margin bears the rest.
  const first = about(0)
  const second = about(textHeightIn(first))
  return about(textHeightIn(second))
}

/** A picture of these primitives, of all of them or of a part of the plane. */
export const pictureOf = (
  primitives: readonly Primitive[],
  description: string,
  bounds: Box = windowAbout(primitives),
): Picture => ({
  primitives,
  bounds,
  textHeightMm: textHeightIn(bounds),
  description,
})

type Point = readonly [uMm: number, vMm: number]

const at = ([uMm, vMm]: Point): PlanePointMm => planePoint(uMm, vMm)

/** A line or closed outline of a picture. */
export const stroke = (
  key: string,
  points: readonly Point[],
  style: LineStyle = 'outline',
  ends: 'open' | 'closed' = 'open',
): Primitive => ({
  kind: 'polyline',
  key: `picture/${key}`,
  part: null,
  points: points.map(at),
  closed: ends === 'closed',
  style,
})

/** An upright rectangle about its middle. */
export const rectangle = (
  key: string,
  [uMm, vMm]: Point,
  [widthMm, heightMm]: readonly [number, number],
  style: LineStyle = 'outline',
): Primitive => {
  const [u, v] = [widthMm / 2, heightMm / 2]
  return stroke(
    key,
    [
      [uMm - u, vMm - v],
      [uMm + u, vMm - v],
      [uMm + u, vMm + v],
      [uMm - u, vMm + v],
    ],
    style,
    'closed',
  )
}

/** A circle about a point. */
export const ring = (
  key: string,
  centre: Point,
  radiusMm: number,
  style: LineStyle = 'outline',
): Primitive => ({ kind: 'circle', key: `picture/${key}`, part: null, centre: at(centre), radiusMm, style })

/** A text; strong where it must not be missed. */
export const words = (
  key: string,
  point: Point,
  text: string,
  align: 'left' | 'centre' | 'right' = 'centre',
  weight: 'plain' | 'strong' = 'strong',
): Primitive => ({ kind: 'label', key: `picture/${key}`, part: null, at: at(point), text, align, weight })

/** A dimension line; + offset to the left of from→to. */
export const measured = (key: string, from: Point, to: Point, text: string, offsetMm = 0): Primitive => ({
  kind: 'dimension',
  key: `picture/${key}`,
  part: null,
  from: at(from),
  to: at(to),
  offsetMm,
  text,
})

/** An arrow from a point on, anticlockwise from +u: a force or a way to move. Its head is a sixth of it, 25° to each side. */
export const arrow = (
  key: string,
  from: Point,
  directionDeg: number,
  lengthMm: number,
  style: LineStyle = 'focus',
): readonly Primitive[] => {
  const tip: Point = [from[0] + lengthMm * cosDeg(directionDeg), from[1] + lengthMm * sinDeg(directionDeg)]
  const barb = (turnDeg: number): Point => [
    tip[0] - (lengthMm / 6) * cosDeg(directionDeg + turnDeg),
    tip[1] - (lengthMm / 6) * sinDeg(directionDeg + turnDeg),
  ]
  return [stroke(key, [from, tip], style), stroke(`${key}/head`, [barb(25), tip, barb(-25)], style)]
}
