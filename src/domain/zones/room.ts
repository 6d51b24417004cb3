import { projected } from '../geometry/plane'
import { regionDistanceMm } from '../geometry/region'
import type { QuantityRule } from '../rules/rule'
import { cellsContain, distanceToOutsideMm, regionInCells } from './cells'
import { homeElevation } from './ruleCells'
import { caseBox, cellsBySitting } from './ruleRegion'
import { ruleSubject, scenesOfRule } from './subject'
import { isKeptNow } from './trial'
import type { ZoneCase } from './zone'

/** Rounding: a point this close to a limit counts as on it, where both answers are room 0. Our judgement. */
const ON_LIMIT_MM = 1e-6

/**
 * How far the anchor can move in the plane where the rule lives before the rule is broken in some sitting, mm; negative: how far
 * it must move until it is kept in all of them. A mirrored pair moves together. Null where no position decides the rule, where
 * it holds everywhere within reach, and where it holds nowhere. 0 where the anchor stands in a strip that the zones leave out
 * although the rule is kept there: nothing is promised about the next millimetre.
 */
export const ruleRoomMm = (rule: QuantityRule, zoneCase: ZoneCase): number | null => {
  const elevation = homeElevation(rule, zoneCase.mirrored)
  const subject = ruleSubject(rule, zoneCase)
  const all = cellsBySitting(rule, zoneCase, elevation)
  if (all.length === 0 || subject === null) return null
  const point = projected(zoneCase.anchor.mount.point, elevation)
  const box = caseBox(zoneCase, elevation)
  if (all.every((cells) => cellsContain(cells, point, ON_LIMIT_MM))) {
    const distances = all.flatMap((cells) => distanceToOutsideMm(cells, point, box) ?? [])
    return distances.length === 0 ? null : Math.min(...distances)
  }
  if (scenesOfRule(rule, zoneCase).every((zoneScene) => isKeptNow(rule, subject, zoneScene))) return 0
  const region = all.reduce((rest, cells) => regionInCells(rest, cells), box)
  const distanceMm = regionDistanceMm(region, point)
  return Number.isFinite(distanceMm) ? -distanceMm : null
}
