import { projected, type Elevation } from '../geometry/plane'
import type { Region } from '../geometry/polygon'
import type { QuantityRule } from '../rules/rule'
import { type Cells, reachBox, regionInCells } from './cells'
import { joinedRegion } from './joined'
import { ruleCells } from './ruleCells'
import { type StrapModel, strapModel } from './strapModel'
import { scenesOfRule } from './subject'
import type { AnchorZone, ZoneCase, ZoneScene } from './zone'

/** The square every region of a case is cut to: about the hip point of its first sitting. */
export const caseBox = (zoneCase: ZoneCase, elevation: Elevation): Region => {
  const first = zoneCase.scenes[0]
  return first === undefined ? [] : reachBox(projected(first.scene.body.hip, elevation))
}

type CellsByPlane = Partial<Record<Elevation, readonly Cells[]>>

/**
 * What was worked out for a case: zones, rooms and remedies of one frame ask for the same. The case is the key and is never
 * changed, so this remembers and does not decide anything.
 */
interface Known {
  readonly models: ReadonlyMap<ZoneScene, StrapModel>
  readonly cells: Map<QuantityRule, CellsByPlane>
}

const KNOWN = new WeakMap<ZoneCase, Known>()

const knownOf = (zoneCase: ZoneCase): Known => {
  const known = KNOWN.get(zoneCase)
  if (known !== undefined) return known
  const models = new Map(
    zoneCase.scenes.map((zoneScene) => [zoneScene, strapModel(zoneScene, zoneCase.anchor)] as const),
  )
  const fresh: Known = { models, cells: new Map() }
  KNOWN.set(zoneCase, fresh)
  return fresh
}

/** What a rule allows in each sitting in which it speaks and in which the anchor's position in this plane matters to it. */
export const cellsBySitting = (
  rule: QuantityRule,
  zoneCase: ZoneCase,
  elevation: Elevation,
): readonly Cells[] => {
  const { models, cells } = knownOf(zoneCase)
  const done = cells.get(rule) ?? {}
  const all =
    done[elevation] ??
    scenesOfRule(rule, zoneCase).flatMap((zoneScene) => {
      const model = models.get(zoneScene)
      const here = model && ruleCells({ rule, zoneScene, zoneCase, model }, elevation)
      return here === null || here === undefined ? [] : [here]
    })
  cells.set(rule, { ...done, [elevation]: all })
  return all
}

const overlap = (box: Region, all: readonly Cells[]): Region => {
  let region = box
  for (const cells of all) {
    if (region.length === 0) break
    region = joinedRegion(regionInCells(region, cells))
  }
  return region
}

/**
 * Where an anchor keeps a rule in every sitting in which the rule speaks, everything else as drawn, cut to 3 m about the hip
 * point. Null when no position in that plane decides the rule. For a wrap: where the tube's centre may be.
 */
export const ruleRegion = (rule: QuantityRule, zoneCase: ZoneCase, elevation: Elevation): Region | null => {
  const all = cellsBySitting(rule, zoneCase, elevation)
  return all.length === 0 ? null : overlap(caseBox(zoneCase, elevation), all)
}

/** The overlap over all rules and sittings. Rules that no position decides do not narrow it. */
export const anchorZone = (rules: readonly QuantityRule[], zoneCase: ZoneCase): AnchorZone => {
  const zoneIn = (elevation: Elevation): Region =>
    overlap(
      caseBox(zoneCase, elevation),
      rules.flatMap((rule) => cellsBySitting(rule, zoneCase, elevation)),
    )
  return { anchorId: zoneCase.anchor.id, side: zoneIn('side'), top: zoneIn('top') }
}
