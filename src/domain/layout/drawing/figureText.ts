import { type PlanePointMm, planePoint } from '../../geometry/plane'
import { atan2Deg, cosDeg, sinDeg, wrappedDeg } from '../../units/angle'
import type { Primitive } from './primitive'

type DimensionPrimitive = Extract<Primitive, { kind: 'dimension' }>
type AnglePrimitive = Extract<Primitive, { kind: 'angle' }>

/**
 * Mean width of a character as a share of the height of a line, for keeping labels apart. Our judgement after the bundled condensed
 * face: its figures are half as wide as the letters are high, and a line is a little higher than its letters. A wide guess costs only space.
 */
const CHARACTER_WIDTH_SHARE = 0.46

/** Estimated width of a line of text, mm of the car. */
export const textWidthMm = (text: string, textHeightMm: number): number =>
  text.length * CHARACTER_WIDTH_SHARE * textHeightMm

/** A dimension line ready to draw: its ends, and its text's middle and turn so that it reads from below or from the right. */
export interface DimensionLine {
  readonly from: PlanePointMm
  readonly to: PlanePointMm
  readonly textAt: PlanePointMm
  /** Anticlockwise from +u, in (-90°, 90°]. */
  readonly textTurnDeg: number
}

/** Where the line and its text lie. The text sits on the line's upper (or left) side, its middle three quarters of its height away. */
export const dimensionLine = (dimension: DimensionPrimitive, textHeightMm: number): DimensionLine => {
  const du = dimension.to.uMm - dimension.from.uMm
  const dv = dimension.to.vMm - dimension.from.vMm
  const directionDeg = atan2Deg(dv, du)
  const leftU = -sinDeg(directionDeg)
  const leftV = cosDeg(directionDeg)
  const shifted = (point: PlanePointMm, byMm: number): PlanePointMm =>
    planePoint(point.uMm + leftU * byMm, point.vMm + leftV * byMm)
  const from = shifted(dimension.from, dimension.offsetMm)
  const to = shifted(dimension.to, dimension.offsetMm)
  const isTurnedOver = directionDeg > 90 || directionDeg <= -90
  const middle = planePoint((from.uMm + to.uMm) / 2, (from.vMm + to.vMm) / 2)
  return {
    from,
    to,
    textAt: shifted(middle, (isTurnedOver ? -0.75 : 0.75) * textHeightMm),
    textTurnDeg: wrappedDeg(isTurnedOver ? directionDeg + 180 : directionDeg),
  }
}

/** Middle of an angle's text: on the arc's bisector, outside the arc, as far as the text needs. */
export const angleTextAt = (angle: AnglePrimitive, textHeightMm: number): PlanePointMm => {
  const sweepDeg = (((angle.toDeg - angle.fromDeg) % 360) + 360) % 360
  const middleDeg = angle.fromDeg + sweepDeg / 2
  const halfWidthMm = textWidthMm(angle.text, textHeightMm) / 2
  // Along the bisector the text's half extent is its half width sideways and its half height upward.
  const clearMm = Math.abs(cosDeg(middleDeg)) * halfWidthMm + Math.abs(sinDeg(middleDeg)) * 0.5 * textHeightMm
  const reachMm = angle.radiusMm + clearMm + 0.4 * textHeightMm
  return planePoint(
    angle.apex.uMm + cosDeg(middleDeg) * reachMm,
    angle.apex.vMm + sinDeg(middleDeg) * reachMm,
  )
}

/** Points on an angle's arc from `fromDeg` anticlockwise to `toDeg`, at most 5° apart. */
export const arcPoints = (
  centre: PlanePointMm,
  radiusMm: number,
  fromDeg: number,
  toDeg: number,
): readonly PlanePointMm[] => {
  const sweepDeg = (((toDeg - fromDeg) % 360) + 360) % 360
  const pieces = Math.max(1, Math.ceil(sweepDeg / 5))
  return Array.from({ length: pieces + 1 }, (_, index) => {
    const atDeg = fromDeg + (sweepDeg * index) / pieces
    return planePoint(centre.uMm + radiusMm * cosDeg(atDeg), centre.vMm + radiusMm * sinDeg(atDeg))
  })
}
