import { vehiclePoint } from '../body/pose'
import { planeDistanceMm, projected, type Elevation } from '../geometry/plane'
import type { QuantityRule } from '../rules/rule'
import type { QuantityId } from '../straps/quantity'
import { slotOf } from '../straps/slotGate'
import type { Creases } from './limit'
import type { ZoneCase } from './zone'

/** One degree of arc on a circle is 1/57.3 of its radius. */
const DEG_PER_RADIAN = 180 / Math.PI

/** Nearer to a slot than this a bend is looked at as finely as this. */
const NEAREST_MM = 20

/** Creases of bends are looked for down to this. Our judgement: no strap's slot is so small that its edges hide in less. */
const BEND_SEEN_MM = 100

/**
 * The most that a slot's bend can change per mm of the anchor's way, degrees: the run beyond the slot turns about a point of its
 * edge, and no part of the opening of any sitting is nearer than this lets be. Null without a slot.
 */
const bendCreases = ({ scenes, anchor }: ZoneCase, elevation: Elevation): Creases | null => {
  const openings = scenes.flatMap(({ scene }) => {
    const slot = slotOf(scene.seat, anchor.strap)
    if (slot === null) return []
    const at = projected(vehiclePoint(scene.pose, slot.centre), elevation)
    return [{ at, halfMm: Math.hypot(slot.lengthMm, slot.heightMm) / 2 }]
  })
  if (openings.length === 0) return null
  return {
    steepest: ({ middle, acrossMm }) => {
      const nearestMm = Math.min(
        ...openings.map(({ at, halfMm }) => planeDistanceMm(middle.at, at) - halfMm - acrossMm / 2),
      )
      return DEG_PER_RADIAN / Math.max(NEAREST_MM, nearestMm)
    },
    seenMm: BEND_SEEN_MM,
    grazing: 0,
    grazingSeenMm: BEND_SEEN_MM,
  }
}

/** Where the strap bears last before the body: between one edge and another, or none, these numbers jump. */
const JUMPING: ReadonlySet<QuantityId> = new Set<QuantityId>([
  'shoulder-above-hip',
  'shoulder-behind-hip',
  'shoulder-behind-fk',
  'shoulder-reference-plan',
])

/**
 * Numbers that jump by any amount: triangles whose corners differ much are halved down to 64 mm before they are trusted. Our judgement: about
 * what a strap that passes its slot clean leaves between one edge and the other.
 */
const JUMPS: Creases = { steepest: () => Infinity, seenMm: 64, grazing: 0, grazingSeenMm: 16 }

/** Where a rule's number has creases or jumps; null where it is smooth. */
export const creasesOf = (
  { quantity }: Pick<QuantityRule, 'quantity'>,
  zoneCase: ZoneCase,
  elevation: Elevation,
): Creases | null => {
  if (JUMPING.has(quantity)) return JUMPS
  return quantity === 'slot-bend' ? bendCreases(zoneCase, elevation) : null
}
