import type { QuantityId } from '../../../straps/quantity'
import { STRAP_IDS, type StrapId } from '../../../straps/strap'
import type { StrapPath } from '../../../straps/path'
import type { Explanation, ExplainScene } from './explanation'
import { explainAdjuster } from './adjuster'
import { explainBodyClearance, explainHelmet, explainTubeClearance } from './clearances'
import { explainShankAngle, explainTabTwist, explainWrapSquare } from './hardware'
import {
  explainAcross,
  explainJunction,
  explainMirror,
  explainLapOverHipBone,
  explainShoulderHeight,
  explainShoulderSpacing,
} from './lengths'
import {
  explainLapAngle,
  explainRimDrop,
  explainShoulderDrop,
  explainShoulderPlan,
  explainShoulderToSpine,
  explainSubToChest,
  explainSubToVertical,
} from './sideAngles'
import { explainBehindFk, explainFromHip, explainOffCentre, explainReferencePlan } from './references'
import { explainSlotBend } from './slotBend'
import { explainSpineLoad } from './spineLoad'
import { pathOf } from './solvedStrap'
import { explainBehindSeat, explainFreeLength, explainStrapLength } from './strips'

const isStrap = (subject: string): subject is StrapId => STRAP_IDS.some((strap) => strap === subject)

type Explain = (scene: ExplainScene, path: StrapPath) => Explanation | null

/** What is measured on one strap; null for what belongs to a pair or the person. */
const OF_STRAP: Readonly<Record<QuantityId, Explain | null>> = {
  'shoulder-drop': explainShoulderDrop,
  'shoulder-to-spine': explainShoulderToSpine,
  'shoulder-rim-drop': explainRimDrop,
  'shoulder-plan': explainShoulderPlan,
  'shoulder-height': explainShoulderHeight,
  'shoulder-free-length': explainFreeLength,
  'shoulder-length-behind-seat': explainBehindSeat,
  'shoulder-above-hip': explainFromHip,
  'shoulder-behind-hip': explainFromHip,
  'shoulder-behind-fk': explainBehindFk,
  'shoulder-reference-plan': explainReferencePlan,
  'lap-angle': explainLapAngle,
  'lap-run-angle': explainLapAngle,
  'lap-shifted-angle': explainLapAngle,
  'lap-over-asis': explainLapOverHipBone,
  'sub-to-vertical': explainSubToVertical,
  'sub-to-chest': explainSubToChest,
  'slot-bend': explainSlotBend,
  'wrap-square': explainWrapSquare,
  'tab-twist': explainTabTwist,
  'shank-angle': explainShankAngle,
  'tube-clearance': explainTubeClearance,
  'adjuster-clearance': explainAdjuster,
  'strap-length': explainStrapLength,
  'shoulder-spacing': null,
  'spine-load-share': null,
  'lap-spacing': null,
  'lap-mirror': null,
  'shoulder-mirror': null,
  'sub-mirror': null,
  'body-clearance': null,
  'lap-off-centre': null,
  'sub-spacing': null,
  'shoulder-junction': null,
  'helmet-clearance': null,
}

/** What is measured on a pair or the head; null for what belongs to one strap. */
const otherExplanation = (scene: ExplainScene): Explanation | null => {
  switch (scene.id) {
    case 'shoulder-spacing':
      return explainShoulderSpacing(scene)
    case 'spine-load-share':
      return explainSpineLoad(scene)
    case 'lap-spacing':
      return explainAcross(scene, ['lap-left', 'lap-right'])
    case 'sub-spacing':
      return explainAcross(scene, ['sub-left', 'sub-right'])
    case 'lap-mirror':
      return explainMirror(scene, ['lap-left', 'lap-right'])
    case 'shoulder-mirror':
      return explainMirror(scene, ['shoulder-left', 'shoulder-right'])
    case 'sub-mirror':
      return explainMirror(scene, ['sub-left', 'sub-right'])
    case 'body-clearance':
      return explainBodyClearance(scene)
    case 'shoulder-junction':
      return explainJunction(scene)
    case 'helmet-clearance':
      return explainHelmet(scene)
    case 'shoulder-drop':
    case 'shoulder-to-spine':
    case 'shoulder-rim-drop':
    case 'shoulder-plan':
    case 'shoulder-height':
    case 'shoulder-free-length':
    case 'shoulder-length-behind-seat':
    case 'shoulder-above-hip':
    case 'shoulder-behind-hip':
    case 'shoulder-behind-fk':
    case 'shoulder-reference-plan':
    case 'lap-angle':
    case 'lap-run-angle':
    case 'lap-shifted-angle':
    case 'lap-over-asis':
    case 'lap-off-centre':
    case 'sub-to-vertical':
    case 'sub-to-chest':
    case 'slot-bend':
    case 'wrap-square':
    case 'tab-twist':
    case 'strap-length':
    case 'shank-angle':
    case 'adjuster-clearance':
    case 'tube-clearance':
      return null
  }
}

/**
 * What exactly a number is measured between, drawn for the strap and the sitting it belongs to. Null when the sitting has no such
 * number: then there is nothing to measure.
 */
export const explanationOf = (scene: ExplainScene): Explanation | null => {
  const { subject } = scene
  if (!isStrap(subject)) return otherExplanation(scene)
  if (scene.id === 'lap-off-centre') return explainOffCentre(scene, subject)
  const path = pathOf(scene, subject)
  return (path && OF_STRAP[scene.id]?.(scene, path)) ?? null
}
