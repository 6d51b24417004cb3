import { vehiclePoint } from '../body/pose'
import { planeDistanceMm, projected, type Elevation } from '../geometry/plane'
import { slotOf } from '../straps/slotGate'
import type { QuantityRule } from '../rules/rule'
import type { Triangle } from './lattice'
import type { Limit } from './limit'
import type { ZoneCase } from './zone'

/** One degree of arc on a circle is 1/57.3 of its radius. */
const DEG_PER_RADIAN = 180 / Math.PI

/** Nearer to a slot than this a bend is looked at as finely as this. */
const NEAREST_MM = 20

/**
 * The most that a slot's bend can change per mm of the anchor's way, degrees: the run beyond the slot turns about a point of its
 * edge, and no part of the opening of any sitting is nearer than this lets be. Null without a slot.
 */
const slotSteepness = (
  { scenes, anchor }: ZoneCase,
  elevation: Elevation,
): ((triangle: Triangle) => number) | null => {
  const openings = scenes.flatMap(({ scene }) => {
    const slot = slotOf(scene.seat, anchor.strap)
    if (slot === null) return []
    const at = projected(vehiclePoint(scene.pose, slot.centre), elevation)
    return [{ at, halfMm: Math.hypot(slot.lengthMm, slot.heightMm) / 2 }]
  })
  if (openings.length === 0) return null
  return ({ middle, acrossMm }) => {
    const nearestMm = Math.min(
      ...openings.map(({ at, halfMm }) => planeDistanceMm(middle.at, at) - halfMm - acrossMm / 2),
    )
    return DEG_PER_RADIAN / Math.max(NEAREST_MM, nearestMm)
  }
}

/** The most that a rule's number changes per mm of the anchor's way, where it has creases; null where it is smooth. */
export const steepnessOf = (
  { quantity }: Pick<QuantityRule, 'quantity'>,
  zoneCase: ZoneCase,
  elevation: Elevation,
): Limit['steepest'] => {
  return quantity === 'slot-bend' ? slotSteepness(zoneCase, elevation) : null
}
