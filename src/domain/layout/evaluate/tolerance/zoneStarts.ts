import { projected, type Elevation, type PlanePointMm } from '../../../geometry/plane'
import { boxRegion, regionDifference } from '../../../geometry/region'
import type { Region } from '../../../geometry/polygon'
import type { WeldTolerance } from '../../../rules/tolerance'
import type { QuantityRule } from '../../../rules/rule'
import { homeElevation } from '../../../zones/rulePlane'
import { ruleRegion } from '../../../zones/ruleRegion'
import type { ZoneCase } from '../../../zones/zone'
import type { ErrorVariable } from './errorVariables'
import type { Shares } from './offSitting'

/** Half-widths of the errors along u and v of an elevation, mm. */
export const planeErrors = (tolerance: WeldTolerance, elevation: Elevation): readonly [number, number] => [
  tolerance.xMm,
  elevation === 'side' ? tolerance.zMm : tolerance.yMm,
]

/** Stands in for ± 0 where a box must have a breadth. A thousandth of what a tape shows; our judgement. */
export const LEAST_ERROR_MM = 1e-3

/** The rule's region in the plane where it lives, everything else as drawn; null where no position decides. */
export const homeRegion = (
  rule: QuantityRule,
  zoneCase: ZoneCase,
): { readonly elevation: Elevation; readonly region: Region } | null => {
  const elevation = homeElevation(rule, zoneCase.mirrored)
  const region = ruleRegion(rule, zoneCase, elevation)
  return region && { elevation, region }
}

/** At most this many places are looked at; the box is in few pieces. */
const MOST_STARTS = 24

const middle = (polygon: Region[number]): PlanePointMm => ({
  uMm: polygon.reduce((sum, { uMm }) => sum + uMm, 0) / polygon.length,
  vMm: polygon.reduce((sum, { vMm }) => sum + vMm, 0) / polygon.length,
})

/**
 * Errors of the anchor that bring it outside the rule's region: the corners and the middles of what the box of ± mm has outside.
 * Empty when the whole box is inside. This is exact, and it is what a search by corners could miss; the strap solver decides there.
 */
export const zoneStarts = (
  rule: QuantityRule,
  zoneCase: ZoneCase,
  tolerance: WeldTolerance,
  variables: readonly ErrorVariable[],
): readonly Shares[] => {
  const home = homeRegion(rule, zoneCase)
  if (home === null) return []
  const at = projected(zoneCase.anchor.mount.point, home.elevation)
  const [uTypedMm, vTypedMm] = planeErrors(tolerance, home.elevation)
  const uMm = Math.max(uTypedMm, LEAST_ERROR_MM)
  const vMm = Math.max(vTypedMm, LEAST_ERROR_MM)
  const box = boxRegion({ uMm: at.uMm - uMm, vMm: at.vMm - vMm }, { uMm: at.uMm + uMm, vMm: at.vMm + vMm })
  const outside = regionDifference(box, home.region)
  const vAxis = home.elevation === 'side' ? 'zMm' : 'yMm'
  return outside
    .flatMap((polygon) => [middle(polygon), ...polygon])
    .slice(0, MOST_STARTS)
    .map((point) =>
      variables.map((variable) => {
        if (variable.kind !== 'anchor' || variable.anchorId !== zoneCase.anchor.id) return 0
        if (variable.axis === 'xMm') return Math.min(1, Math.max(-1, (point.uMm - at.uMm) / uMm))
        return variable.axis === vAxis ? Math.min(1, Math.max(-1, (point.vMm - at.vMm) / vMm)) : 0
      }),
    )
}
