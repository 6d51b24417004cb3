import { STRAP_IDS, type StrapId } from '../../../straps/strap'
import type { StrapPath } from '../../../straps/path'
import type { Explanation, ExplainScene } from './explanation'
import { explainAdjuster } from './adjuster'
import { explainHelmet, explainTubeClearance } from './clearances'
import { explainShankAngle, explainTabTwist, explainWrapSquare } from './hardware'
import {
  explainAcross,
  explainJunction,
  explainLapMirror,
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

/** What is measured on one strap. */
const strapExplanation = (scene: ExplainScene, path: StrapPath): Explanation | null => {
  switch (scene.id) {
    case 'shoulder-drop':
      return explainShoulderDrop(scene, path)
    case 'shoulder-to-spine':
      return explainShoulderToSpine(scene, path)
    case 'shoulder-rim-drop':
      return explainRimDrop(scene, path)
    case 'shoulder-plan':
      return explainShoulderPlan(scene, path)
    case 'shoulder-height':
      return explainShoulderHeight(scene, path)
    case 'shoulder-free-length':
      return explainFreeLength(scene, path)
    case 'shoulder-length-behind-seat':
      return explainBehindSeat(scene, path)
    case 'shoulder-above-hip':
    case 'shoulder-behind-hip':
      return explainFromHip(scene, path)
    case 'shoulder-behind-fk':
      return explainBehindFk(scene, path)
    case 'shoulder-reference-plan':
      return explainReferencePlan(scene, path)
    case 'lap-angle':
    case 'lap-run-angle':
    case 'lap-shifted-angle':
      return explainLapAngle(scene, path)
    case 'lap-over-asis':
      return explainLapOverHipBone(scene, path)
    case 'sub-to-vertical':
      return explainSubToVertical(scene, path)
    case 'sub-to-chest':
      return explainSubToChest(scene, path)
    case 'slot-bend':
      return explainSlotBend(scene, path)
    case 'wrap-square':
      return explainWrapSquare(scene, path)
    case 'tab-twist':
      return explainTabTwist(scene, path)
    case 'shank-angle':
      return explainShankAngle(scene, path)
    case 'tube-clearance':
      return explainTubeClearance(scene, path)
    case 'adjuster-clearance':
      return explainAdjuster(scene, path)
    case 'strap-length':
      return explainStrapLength(scene, path)
    case 'shoulder-spacing':
    case 'spine-load-share':
    case 'lap-spacing':
    case 'lap-mirror':
    case 'lap-off-centre':
    case 'sub-spacing':
    case 'shoulder-junction':
    case 'helmet-clearance':
      return null
  }
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
      return explainLapMirror(scene)
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
  return path && strapExplanation(scene, path)
}
