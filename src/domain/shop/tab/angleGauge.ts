import { tanDeg } from '../../units/angle'
import type { FlatPoint } from '../flat/flatFigure'

/** A flat gauge to cut out: two edges with an angle between them. */
export interface AngleGauge {
  /** From level, rising to the right, degrees, 0 < a < 90. */
  readonly fromLevelDeg: number
  /** The edge that a bubble or a square is held to: the bottom edge, level, or the left edge, plumb. */
  readonly base: 'level' | 'plumb'
  /** Closed, anticlockwise. */
  readonly points: readonly FlatPoint[]
  /** The edge that takes the angle, from its lower end to its upper end. */
  readonly slant: readonly [FlatPoint, FlatPoint]
}

/** Length of the base edge and width of the narrow end, mm. Our judgement: half a degree is 0.7 mm at its end. */
const BASE_MM = 80
const NARROW_MM = 18

/** Nearer than this to level or plumb no gauge is needed: a level or a square does it. Half of the last place shown. */
const NO_ANGLE_DEG = 0.05

/**
 * A gauge for an angle from level; null where a level or a square does. Up to 45° its base is level, beyond that plumb, so that it
 * never becomes a needle.
 */
export const angleGauge = (fromLevelDeg: number): AngleGauge | null => {
  if (!(fromLevelDeg >= NO_ANGLE_DEG && fromLevelDeg <= 90 - NO_ANGLE_DEG)) return null
  const corner = { xMm: 0, yMm: 0 }
  if (fromLevelDeg <= 45) {
    const low = { xMm: 0, yMm: NARROW_MM }
    const high = { xMm: BASE_MM, yMm: NARROW_MM + BASE_MM * tanDeg(fromLevelDeg) }
    return {
      fromLevelDeg,
      base: 'level',
      points: [corner, { xMm: BASE_MM, yMm: 0 }, high, low],
      slant: [low, high],
    }
  }
  const low = { xMm: NARROW_MM, yMm: 0 }
  const high = { xMm: NARROW_MM + BASE_MM * tanDeg(90 - fromLevelDeg), yMm: BASE_MM }
  return {
    fromLevelDeg,
    base: 'plumb',
    points: [corner, low, high, { xMm: 0, yMm: BASE_MM }],
    slant: [low, high],
  }
}
