import type { Direction } from '../geometry/point'
import { cosDeg, sinDeg } from '../units/angle'
import type { EyeMount } from './anchor'

/**
 * The axis of an eye bolt's shank, outward, length 1: rearward, raised by `riseDeg` and turned by `planDeg` to the occupant's right.
 * Source: spherical coordinates.
 */
export const shankAxis = ({ planDeg, riseDeg }: Pick<EyeMount, 'planDeg' | 'riseDeg'>): Direction => ({
  x: cosDeg(riseDeg) * cosDeg(planDeg),
  y: cosDeg(riseDeg) * sinDeg(planDeg),
  z: sinDeg(riseDeg),
})
