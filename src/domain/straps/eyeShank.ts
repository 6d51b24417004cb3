import type { Direction } from '../geometry/point'
import { cosDeg, sinDeg } from '../units/angle'
import type { EyeMount } from './anchor'

/**
 * The axis of an eye bolt's shank, length 1, pointing outward: from what it is screwed into to the eye.
 * Source: spherical coordinates of a right-handed frame (x rearward, y right, z up); plan 0 and rise 0 point rearward.
 */
export const shankAxis = ({ planDeg, riseDeg }: Pick<EyeMount, 'planDeg' | 'riseDeg'>): Direction => ({
  x: cosDeg(riseDeg) * cosDeg(planDeg),
  y: cosDeg(riseDeg) * sinDeg(planDeg),
  z: sinDeg(riseDeg),
})

/**
 * The normal of the eye's plane as it is drawn, length 1: level and square to the shank. The eye can be screwed to any turn about
 * its shank and the layout holds none, so this is a drawing convention of ours.
 */
export const eyeNormal = ({ planDeg }: Pick<EyeMount, 'planDeg'>): Direction => ({
  x: -sinDeg(planDeg),
  y: cosDeg(planDeg),
  z: 0,
})
