import { projected, type Elevation } from '../geometry/plane'
import type { Region } from '../geometry/polygon'
import type { QuantityRule } from '../rules/rule'
import { type Cells, reachBox, regionInCells } from './cells'
import { joinedRegion } from './joined'
import { ruleCells } from './ruleCells'
import { type StrapModel, strapModel } from './strapModel'
import { scenesOfRule } from './subject'
import { WITHHELD } from './traced'
import type { AnchorZone, ZoneCase, ZoneScene } from './zone'

/** The square every region of a case is cut to: about the hip point of its first sitting. */
export const caseBox = (zoneCase: ZoneCase, elevation: Elevation): Region => {
  const first = zoneCase.scenes[0]
  return first === undefined ? [] : reachBox(projected(first.scene.body.hip, elevation))
}

/** What a rule allows in one sitting. */
interface SittingCells {
  readonly sittingId: string
  readonly cells: Cells
}

type CellsByPlane = Partial<Record<Elevation, readonly SittingCells[]>>

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

/** Whether a rule's region could be traced and is not, in either elevation. */
export const isWithheld = (rule: QuantityRule, zoneCase: ZoneCase): boolean =>
  zoneCase.tracing === 'withheld' &&
  (['side', 'top'] as const).some((elevation) =>
    allCells(rule, zoneCase, elevation).some(({ cells }) => cells === WITHHELD),
  )

/**
 * What a rule allows in each sitting in which it speaks and in which the anchor's position in this plane matters to it. Empty
 * for a rule that is withheld.
 */
export const sittingCells = (
  rule: QuantityRule,
  zoneCase: ZoneCase,
  elevation: Elevation,
): readonly SittingCells[] => (isWithheld(rule, zoneCase) ? [] : allCells(rule, zoneCase, elevation))

const allCells = (rule: QuantityRule, zoneCase: ZoneCase, elevation: Elevation): readonly SittingCells[] => {
  const { models, cells } = knownOf(zoneCase)
  const done = cells.get(rule) ?? {}
  const all =
    done[elevation] ??
    scenesOfRule(rule, zoneCase).flatMap((zoneScene) => {
      const model = models.get(zoneScene)
      const here = model && ruleCells({ rule, zoneScene, zoneCase, model }, elevation)
      return here === null || here === undefined ? [] : [{ sittingId: zoneScene.sittingId, cells: here }]
    })
  cells.set(rule, { ...done, [elevation]: all })
  return all
}

/** The same without saying which sitting each is of. */
export const cellsBySitting = (
  rule: QuantityRule,
  zoneCase: ZoneCase,
  elevation: Elevation,
): readonly Cells[] => sittingCells(rule, zoneCase, elevation).map(({ cells }) => cells)

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

/** The overlap over all rules and sittings. Rules that no position decides, or that are withheld, do not narrow it. */
export const anchorZone = (rules: readonly QuantityRule[], zoneCase: ZoneCase): AnchorZone => {
  const zoneIn = (elevation: Elevation): Region =>
    overlap(
      caseBox(zoneCase, elevation),
      rules.flatMap((rule) => cellsBySitting(rule, zoneCase, elevation)),
    )
  return { anchorId: zoneCase.anchor.id, side: zoneIn('side'), top: zoneIn('top') }
}
