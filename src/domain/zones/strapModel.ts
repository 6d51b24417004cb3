import { projected } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import type { Anchor } from '../straps/anchor'
import { chestLineDeg } from '../straps/subQuantities'
import { gateOf, type Gate, type StrapScene } from '../straps/scene'
import { strapFamily, strapSide } from '../straps/strap'
import type { QuantityRule } from '../rules/rule'
import type { Lane, SideLimit } from './lane'
import { lapLanes } from './lapLanes'
import { shoulderLanes } from './shoulderLanes'
import {
  bendLimit,
  fallLimit,
  fromHipLimit,
  lapAngleLimit,
  lapRunLimit,
  lapShiftedLimit,
  overHipBoneLimit,
  rearwardLimit,
} from './sideLimit'
import { subLanes } from './subLanes'
import type { ZoneScene } from './zone'

/** One strap in one sitting, as far as it does not depend on where its anchor is in the drawn plane. */
export interface StrapModel {
  readonly scene: StrapScene
  readonly anchor: Anchor
  readonly buckle: PointMm | null
  readonly gate: Gate | null
  /** Null where no straight-line description holds: regions are then traced point by point. */
  readonly lanes: readonly Lane[] | null
}

export const strapModel = ({ scene, solved }: ZoneScene, anchor: Anchor): StrapModel => {
  const gate = gateOf(scene, anchor.strap)
  const { buckle } = solved
  const lanes = (): readonly Lane[] | null => {
    switch (strapFamily(anchor.strap)) {
      case 'shoulder':
        return shoulderLanes(scene, anchor, gate, buckle)
      case 'lap':
        return lapLanes(scene, anchor, gate)
      case 'sub':
        return subLanes(scene, anchor, gate, buckle)
    }
  }
  return { scene, anchor, buckle, gate, lanes: lanes() }
}

/** Whether the ends of the strap's slot can hold it across the seat. */
export const isHeldAcross = ({ gate }: StrapModel): boolean => gate !== null && gate.yMinMm !== null

/** Everything that has a path at all. */
export const ANY_PATH: SideLimit = {
  unbent: ({ fromDeg, toDeg }) => [{ fromDeg, toDeg, cell: [] }],
  bent: () => ({ cell: [], holdsClean: true }),
}

/** Nowhere: the quantity has no number wherever the anchor is. */
const NO_PATH: SideLimit = { unbent: () => [], bent: () => null }

/** Whether a limit on a lap angle reaches down to straps that the thigh holds up. */
const reachesThigh = ({ scene }: StrapModel, { min }: QuantityRule): boolean =>
  min === null || min < scene.body.lapLowestDeg

const bonePoint = ({ scene, anchor }: StrapModel) =>
  projected(scene.body.frontHipBone[strapSide(anchor.strap) === 'left' ? 'left' : 'right'], 'side')

/**
 * What a rule asks of the strap in the side plane. Null where that has no straight-line description; undefined for quantities
 * that are no matter of the side plane alone.
 */
export const sideLimitOf = (rule: QuantityRule, model: StrapModel): SideLimit | null | undefined => {
  const { scene, anchor, buckle } = model
  const isWrap = anchor.mount.kind === 'wrap'
  switch (rule.quantity) {
    case 'shoulder-drop':
      return fallLimit(rule, 0)
    case 'shoulder-to-spine':
      return fallLimit(rule, scene.body.reclineDeg)
    case 'lap-angle':
      return (isWrap || isHeldAcross(model)) && reachesThigh(model, rule) ? null : lapAngleLimit(scene, rule)
    case 'lap-run-angle':
      return lapRunLimit(scene, rule)
    case 'lap-shifted-angle':
      return isWrap || isHeldAcross(model) ? null : lapShiftedLimit(scene, rule)
    case 'lap-over-asis':
      return overHipBoneLimit(scene, rule, bonePoint(model))
    case 'sub-to-vertical':
      return rearwardLimit(rule, 0)
    case 'sub-to-chest': {
      const chestDeg = buckle && chestLineDeg(scene, buckle)
      return chestDeg === null ? NO_PATH : rearwardLimit(rule, chestDeg)
    }
    case 'slot-bend':
      return rule.min === null && rule.max !== null && !isHeldAcross(model) ? bendLimit(rule.max) : undefined
    case 'shoulder-above-hip':
      return isWrap || isHeldAcross(model) ? null : fromHipLimit(scene, rule, 'v')
    case 'shoulder-behind-hip':
      return isWrap || isHeldAcross(model) ? null : fromHipLimit(scene, rule, 'u')
    case 'shoulder-behind-fk':
    case 'shoulder-reference-plan':
    case 'lap-off-centre':
    case 'shoulder-rim-drop':
    case 'shoulder-height':
    case 'shoulder-plan':
    case 'shoulder-spacing':
    case 'shoulder-free-length':
    case 'shoulder-length-behind-seat':
    case 'spine-load-share':
    case 'lap-spacing':
    case 'lap-mirror':
    case 'sub-spacing':
    case 'wrap-square':
    case 'tab-twist':
    case 'shank-angle':
    case 'shoulder-junction':
    case 'adjuster-clearance':
    case 'tube-clearance':
    case 'helmet-clearance':
    case 'strap-length':
      return undefined
  }
}
