import { directionDot, type Direction } from '../geometry/point'
import { asinDeg, cosDeg, sinDeg } from '../units/angle'
import type { TabMount } from './anchor'

/**
 * The normal of a tab's plane, length 1: the lateral axis leaned about the fore-and-aft axis, then turned about the vertical,
 * Rz(plan)·Rx(lean)·ŷ. Upright and fore-and-aft (0, 0) it points to the occupant's right.
 * Source: rotation matrices of a right-handed frame (x rearward, y right, z up).
 */
export const tabNormal = (mount: Pick<TabMount, 'planDeg' | 'leanDeg'>): Direction => ({
  x: -sinDeg(mount.planDeg) * cosDeg(mount.leanDeg),
  y: cosDeg(mount.planDeg) * cosDeg(mount.leanDeg),
  z: sinDeg(mount.leanDeg),
})

/** Angle of a line of pull out of a tab's plane, 0°…90°. Formula: the complement of the angle to the normal, asin|d·n|. */
export const tabTwistDeg = (mount: Pick<TabMount, 'planDeg' | 'leanDeg'>, pull: Direction): number =>
  asinDeg(Math.abs(directionDot(pull, tabNormal(mount))))

/** A tab's plane with its turn told the short way. */
export interface PlainPlane {
  /** Range [-90°, 90°]. */
  readonly planDeg: number
  readonly leanDeg: number
}

/**
 * The same plane with a turn of at most a quarter: half a turn about the vertical puts a plane on itself with its lean reversed. Words
 * that speak of its right face are true only then. Formula: n(plan ± 180°, −lean) = −n(plan, lean), from `tabNormal`.
 */
export const plainPlane = ({ planDeg, leanDeg }: Pick<TabMount, 'planDeg' | 'leanDeg'>): PlainPlane =>
  Math.abs(planDeg) <= 90
    ? { planDeg, leanDeg }
    : { planDeg: planDeg - Math.sign(planDeg) * 180, leanDeg: leanDeg === 0 ? 0 : -leanDeg }
