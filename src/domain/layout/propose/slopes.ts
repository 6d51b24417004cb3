import { planeDistanceMm, projected, type PlanePointMm } from '../../geometry/plane'
import type { QuantityRule } from '../../rules/rule'
import type { QuantityId } from '../../straps/quantity'
import { trialWithAnchorAt, valueAfter } from '../../zones/afterMove'
import { homeElevation } from '../../zones/rulePlane'
import { ruleSubject } from '../../zones/subject'
import type { ZoneCase } from '../../zones/zone'

/** Numbers with creases, or that depend on more than what moves here. */
const NOT_SMOOTH: ReadonlySet<QuantityId> = new Set<QuantityId>([
  'slot-bend',
  'tube-clearance',
  'adjuster-clearance',
])

/** For slopes: small against bends, large against rounding, mm. Our judgement. */
const SLOPE_MM = 0.02

/** The nearest place on a limit is found to this, mm: a hundredth of what positions are rounded to. Our judgement. */
const FOUND_MM = 1e-3

/** Steps after which a limit that is still not found counts as not smooth. */
const MOST_STEPS = 10

/** A number as a margin: ≥ 0 where the limit is kept; null without a number. */
type MarginAt = (at: PlanePointMm) => number | null

interface Sloped {
  readonly margin: number
  readonly du: number
  readonly dv: number
}

const slopedAt = (marginAt: MarginAt, at: PlanePointMm): Sloped | null => {
  const margin = marginAt(at)
  const alongU = marginAt({ uMm: at.uMm + SLOPE_MM, vMm: at.vMm })
  const alongV = marginAt({ uMm: at.uMm, vMm: at.vMm + SLOPE_MM })
  if (margin === null || alongU === null || alongV === null) return null
  return { margin, du: (alongU - margin) / SLOPE_MM, dv: (alongV - margin) / SLOPE_MM }
}

/**
 * How far the place nearest to `from` is where a margin is 0, + where the limit is kept at `from`, mm. Null where that is not found by
 * following slopes: no number on the way, or no slope. Method: each step goes to where the margin, taken as even, is 0 nearest to
 * `from`: x ← from + g·(g·(x − from) − m)/|g|²; the foot on the linearised limit, general practice, derived here.
 */
export const nearestZeroMm = (marginAt: MarginAt, from: PlanePointMm): number | null => {
  let at = from
  let isKept: boolean | null = null
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const here = slopedAt(marginAt, at)
    if (here === null) return null
    isKept ??= here.margin >= 0
    const { margin, du, dv } = here
    const size = du * du + dv * dv
    if (!(size > 1e-18)) return null
    const share = (du * (at.uMm - from.uMm) + dv * (at.vMm - from.vMm) - margin) / size
    const next = { uMm: from.uMm + share * du, vMm: from.vMm + share * dv }
    const movedMm = planeDistanceMm(at, next)
    if (!Number.isFinite(movedMm)) return null
    at = next
    if (movedMm <= FOUND_MM) return (isKept ? 1 : -1) * planeDistanceMm(at, from)
  }
  return null
}

/**
 * The distance of an anchor to one limit of a rule in one sitting by following slopes, + where it is kept; many times sooner than its
 * room, of which it is a part: the room may also end where the strap has no path. Null where slopes do not lead there.
 */
export const followedMm = (rule: QuantityRule, zoneCase: ZoneCase): number | null => {
  const subject = ruleSubject(rule, zoneCase)
  const [zoneScene] = zoneCase.scenes
  const bound = rule.min ?? rule.max
  if (subject === null || zoneScene === undefined || bound === null || NOT_SMOOTH.has(rule.quantity))
    return null
  const elevation = homeElevation(rule, zoneCase.mirrored)
  const sign = rule.min === null ? -1 : 1
  return nearestZeroMm(
    (at) => {
      const value = valueAfter(zoneScene, trialWithAnchorAt(zoneCase, at, elevation), rule.quantity, subject)
      return value === null ? null : sign * (value - bound)
    },
    projected(zoneCase.anchor.mount.point, elevation),
  )
}
