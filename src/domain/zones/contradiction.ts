import type { Elevation, PlanePointMm } from '../geometry/plane'
import type { ConvexPolygon, Region } from '../geometry/polygon'
import { regionArea } from '../geometry/region'
import { isWithin } from '../rules/check'
import type { Contradiction } from '../rules/finding'
import type { QuantityRule } from '../rules/rule'
import { trialWithAnchorAt, valueAfter } from './afterMove'
import { type Cells, regionCells, regionInCells } from './cells'
import { joinedRegion } from './joined'
import { wantedIn } from './nearestMove'
import { caseBox, sittingRegions } from './ruleRegion'
import type { ZoneCase } from './zone'

/** One rule in one sitting and where it allows the anchor. */
export interface Demand {
  readonly ruleId: string
  readonly sittingId: string
  /** Worked out when it is first asked for: most demands are none of the group. */
  readonly cells: () => Cells
  /** The same asked of one place. */
  readonly isKeptAt: (at: PlanePointMm) => boolean
}

const narrowed = (region: Region, { cells }: Demand): Region =>
  region.length === 0 ? region : joinedRegion(regionInCells(region, cells()))

/** Places looked at in what a group of demands leaves. */
const MOST_PLACES = 24

const middleOf = (polygon: ConvexPolygon): PlanePointMm => ({
  uMm: polygon.reduce((sum, { uMm }) => sum + uMm, 0) / polygon.length,
  vMm: polygon.reduce((sum, { vMm }) => sum + vMm, 0) / polygon.length,
})

/** Places well inside a region: the middles of its largest pieces, and half way from there to their corners. */
const placesIn = (region: Region): readonly PlanePointMm[] =>
  region
    .toSorted((a, b) => regionArea([b]) - regionArea([a]))
    .flatMap((polygon) => {
      const middle = middleOf(polygon)
      const halfWay = polygon.map(({ uMm, vMm }) => ({
        uMm: (uMm + middle.uMm) / 2,
        vMm: (vMm + middle.vMm) / 2,
      }))
      return [middle, ...halfWay.slice(0, 4)]
    })
    .slice(0, MOST_PLACES)

/** Of some places the one that fewest demands outside a group forbid, by those demands. */
const leastForbidden = (
  places: readonly PlanePointMm[],
  demands: readonly Demand[],
  group: ReadonlySet<Demand>,
): readonly Demand[] => {
  let least: readonly Demand[] | null = null
  for (const at of places) {
    const forbidding = demands.filter((demand) => !group.has(demand) && !demand.isKeptAt(at))
    if (least === null || forbidding.length < least.length) least = forbidding
  }
  return least ?? []
}

/** A group of `size` at most that has one of each list, early ones first; null where there is none. */
const hitting = (lists: readonly (readonly Demand[])[], size: number): readonly Demand[] | null => {
  const [first] = lists
  if (first === undefined) return []
  if (size === 0) return null
  for (const demand of first) {
    const rest = hitting(
      lists.filter((list) => !list.includes(demand)),
      size - 1,
    )
    if (rest !== null) return [demand, ...rest]
  }
  return null
}

/**
 * A group of demands, in their order, that together leave no place, and no smaller group does; null where all of them together leave
 * one. Every contradicting group has, for each place, one demand that forbids it. So the smallest group that has one for each of
 * some places is no larger than the smallest that contradicts itself; it is either that, or leaves a place, which is added.
 * Method: smallest unsatisfiable sets by hitting sets (Ignatiev, Previti, Liffiton, Marques-Silva 2015; from memory).
 */
export const contradictingDemands = (box: Region, demands: readonly Demand[]): readonly Demand[] | null => {
  const forbidders: (readonly Demand[])[] = []
  let size = 0
  for (;;) {
    const group = hitting(forbidders, size)
    if (group === null) {
      size += 1
      if (size > demands.length) return null
      continue
    }
    const left = group.reduce(narrowed, box)
    if (left.length === 0) return demands.filter((demand) => group.includes(demand))
    const forbidding = leastForbidden(placesIn(left), demands, new Set(group))
    if (forbidding.length === 0) return null
    // Few first: they leave fewest ways to go on.
    const at = forbidders.findIndex((list) => list.length > forbidding.length)
    forbidders.splice(at < 0 ? forbidders.length : at, 0, forbidding)
  }
}

/** The demands of some rules on one anchor in one plane, rule by rule. */
const demandsOf = (
  rules: readonly QuantityRule[],
  zoneCase: ZoneCase,
  elevation: Elevation,
): readonly Demand[] =>
  wantedIn(rules, zoneCase, elevation).flatMap(({ rule, subject, scenes }) => {
    let regions: ReadonlyMap<string, Cells> | null = null
    const cellsIn = (sittingId: string): Cells => {
      regions ??= new Map(
        sittingRegions(rule, zoneCase, elevation).map((each) => [each.sittingId, regionCells(each.region)]),
      )
      return regions.get(sittingId) ?? []
    }
    return scenes.map((zoneScene): Demand => ({
      ruleId: rule.id,
      sittingId: zoneScene.sittingId,
      cells: () => cellsIn(zoneScene.sittingId),
      isKeptAt: (at) => {
        const value = valueAfter(
          zoneScene,
          trialWithAnchorAt(zoneCase, at, elevation),
          rule.quantity,
          subject,
        )
        return value !== null && isWithin(value, rule)
      },
    }))
  })

/**
 * Which smallest group of rules and sittings contradict each other about one anchor in one drawn plane, with everything else as
 * drawn: of a rule and those that are kept as drawn, and of several groups of one size any. Null where a place is left.
 */
export const contradictionOf = (
  rule: QuantityRule,
  keptRules: readonly QuantityRule[],
  zoneCase: ZoneCase,
  elevation: Elevation,
): Contradiction | null => {
  const demands = demandsOf([rule, ...keptRules], zoneCase, elevation)
  if (!demands.some(({ ruleId }) => ruleId === rule.id)) return null
  const group = contradictingDemands(caseBox(zoneCase, elevation), demands)
  if (group === null) return null
  return {
    anchorId: zoneCase.anchor.id,
    rules: group.map(({ ruleId, sittingId }) => ({ ruleId, sittingId })),
  }
}
