import type { Elevation } from '../geometry/plane'
import type { Region } from '../geometry/polygon'
import type { Contradiction } from '../rules/finding'
import type { QuantityRule } from '../rules/rule'
import { type Cells, regionCells, regionInCells } from './cells'
import { joinedRegion } from './joined'
import { caseBox, sittingRegions } from './ruleRegion'
import type { ZoneCase } from './zone'

/** One rule in one sitting and where it allows the anchor. */
export interface Demand {
  readonly ruleId: string
  readonly sittingId: string
  readonly cells: Cells
}

const narrowed = (region: Region, { cells }: Demand): Region =>
  region.length === 0 ? region : joinedRegion(regionInCells(region, cells))

const overlap = (box: Region, demands: readonly Demand[]): Region => demands.reduce(narrowed, box)

/**
 * A group of demands that together leave no place, none of which can be left out; null where all of them together leave one. Of
 * several such groups it is one that comes early in the list. Each pass adds demands until nothing is left: the one that took the last place belongs to the
 * group, and those after it are not needed.
 */
export const contradictingDemands = (box: Region, demands: readonly Demand[]): readonly Demand[] | null => {
  let core: readonly Demand[] = []
  let candidates = demands
  for (;;) {
    let region = overlap(box, core)
    if (region.length === 0) return core
    let last: number | null = null
    for (const [index, demand] of candidates.entries()) {
      region = narrowed(region, demand)
      if (region.length > 0) continue
      last = index
      break
    }
    const found = last === null ? undefined : candidates[last]
    if (last === null || found === undefined) return null
    core = [...core, found]
    candidates = candidates.slice(0, last)
  }
}

/** The demands of some rules on one anchor in one plane, rule by rule. */
const demandsOf = (
  rules: readonly QuantityRule[],
  zoneCase: ZoneCase,
  elevation: Elevation,
): readonly Demand[] =>
  rules.flatMap((rule) =>
    sittingRegions(rule, zoneCase, elevation).map(({ sittingId, region }) => ({
      ruleId: rule.id,
      sittingId,
      cells: regionCells(region),
    })),
  )

/**
 * Which smallest group of rules and sittings contradict each other about one anchor in one drawn plane, with everything else as
 * drawn: the rule by itself if it already leaves no place, else with the rules that are kept as drawn. Null where a place is left.
 */
export const contradictionOf = (
  rule: QuantityRule,
  keptRules: readonly QuantityRule[],
  zoneCase: ZoneCase,
  elevation: Elevation,
): Contradiction | null => {
  const box = caseBox(zoneCase, elevation)
  const own = demandsOf([rule], zoneCase, elevation)
  if (own.length === 0) return null
  const group =
    contradictingDemands(box, own) ??
    contradictingDemands(box, [...own, ...demandsOf(keptRules, zoneCase, elevation)])
  if (group === null) return null
  return {
    anchorId: zoneCase.anchor.id,
    rules: group.map(({ ruleId, sittingId }) => ({ ruleId, sittingId })),
  }
}
