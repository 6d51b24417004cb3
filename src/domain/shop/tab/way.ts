import type { Direction } from '../../geometry/point'
import { atan2Deg } from '../../units/angle'

/** Where something points or lies, as it is said in the shop: the eight ways of the plan, and up and down. */
const WAYS = [
  'rear',
  'rear right',
  'right',
  'front right',
  'front',
  'front left',
  'left',
  'rear left',
  'up',
  'down',
] as const
export type Way = (typeof WAYS)[number]

/** The level ways in the order of the angle from rearward, + to the right, an eighth of a turn each. */
const LEVEL_WAYS = WAYS.slice(0, 8)

/** Steeper than this from level is said to point up or down: halfway between level and plumb. Our judgement. */
const STEEP_RISE = Math.SQRT1_2

/**
 * The way that a direction comes nearest to: up or down where it is steeper than 45°, else one of eight in plan. A direction
 * without length gives rear. Exactly between two ways it is the one further round to the right.
 */
export const wayOf = ({ x, y, z }: Direction): Way => {
  const length = Math.hypot(x, y, z)
  if (length > 0 && Math.abs(z) > STEEP_RISE * length) return z > 0 ? 'up' : 'down'
  const eighths = Math.floor(atan2Deg(y, x) / 45 + 0.5)
  return LEVEL_WAYS[((eighths % 8) + 8) % 8] ?? 'rear'
}
