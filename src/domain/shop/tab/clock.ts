import { directionDot, type Direction } from '../../geometry/point'
import { acosDeg, atan2Deg, cosDeg, sinDeg } from '../../units/angle'
import { directionCross, directionScaled, directionSum, squareTo, unitDirection } from '../../geometry/vector'
import { wayOf, type Way } from './way'

/** The line along a tube from which angles round it are counted, and the line a quarter turn on. */
export interface ClockLines {
  /** The top of the tube, or its front where the tube itself stands so steep that it has no top worth finding. */
  readonly from: 'top' | 'front'
  /** Length 1, square to the tube: from the centre line out through the zero line. */
  readonly zero: Direction
  /** Length 1, square to the tube: a quarter turn on, clockwise for somebody who looks along the tube from its first point. */
  readonly quarter: Direction
}

/** A tube within this of plumb has no top that an angle finder could find. Our judgement. */
const STEEP_COSINE = cosDeg(10)

/**
 * The zero line of a tube whose direction (length 1, from its first point on) is `axis`. Formula: the vertical (or forward, for a
 * tube within 10° of plumb) less its share along the tube; the quarter line is axis × zero, so that angles run clockwise
 * for somebody who looks along the axis. Source: derived here from the right-handed frame.
 */
export const clockLines = (axis: Direction): ClockLines => {
  const isSteep = Math.abs(axis.z) > STEEP_COSINE
  const toward = isSteep ? { x: -1, y: 0, z: 0 } : { x: 0, y: 0, z: 1 }
  const zero = unitDirection(squareTo(axis, toward))
  if (zero === null) throw new RangeError('an axis of length 1 is never along both the vertical and forward')
  return { from: isSteep ? 'front' : 'top', zero, quarter: directionCross(axis, zero) }
}

/** The direction out of the tube's centre line at an angle round it, length 1. */
export const clockDirection = ({ zero, quarter }: ClockLines, clockDeg: number): Direction =>
  directionSum(directionScaled(zero, cosDeg(clockDeg)), quarter, sinDeg(clockDeg))

/** Where something sits round a tube. */
export interface Clock {
  readonly from: ClockLines['from']
  /** From the zero line, clockwise for somebody who looks along the tube from its first point, range (-180°, 180°]. */
  readonly clockDeg: number
  /**
   * How far the zero line is from plumb (from straight forward on an upright tube), range [0°, 90°]: 0 on a level tube, the tube's own
   * slope on others. Where it is not small the angle is not one from plumb, but one round the tube.
   */
  readonly zeroOffDeg: number
  /** The way it is turned to from the zero line: "38° toward the front". The size of that angle is |clockDeg|. */
  readonly toward: Way
}

/** Where a direction out of a tube's centre line points round it; null for one along the tube. */
export const clockOf = (axis: Direction, outward: Direction): Clock | null => {
  const lines = clockLines(axis)
  const unit = unitDirection(squareTo(axis, outward))
  if (unit === null) return null
  const clockDeg = atan2Deg(directionDot(unit, lines.quarter), directionDot(unit, lines.zero))
  return {
    from: lines.from,
    clockDeg,
    zeroOffDeg: acosDeg(lines.from === 'top' ? lines.zero.z : -lines.zero.x),
    toward: wayOf(clockDeg < 0 ? directionScaled(lines.quarter, -1) : lines.quarter),
  }
}
