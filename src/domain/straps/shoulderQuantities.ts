import { vehiclePoint } from '../body/pose'
import { projected, type PlanePointMm } from '../geometry/plane'
import {
  directionBetween,
  pointDistanceMm,
  pointBetween,
  type Direction,
  type PointMm,
} from '../geometry/point'
import { atan2Deg, cosDeg, sinDeg } from '../units/angle'
import type { QuantityValue } from './quantity'
import type { StrapScene } from './scene'
import { strapSide, type StrapId } from './strap'
import type { SolvedStrap } from './strapPath'

/** Angle below horizontal of the line from `from` rearward to `to` in side view, + when it falls to the rear, (−180°, 180°]. */
const rearwardFallDeg = (from: PlanePointMm, to: PlanePointMm): number =>
  atan2Deg(from.vMm - to.vMm, to.uMm - from.uMm)

/** +1 when toward the seat's centre line is +y (left side), −1 on the right, 0 in the middle. */
const inwardSign = (strap: StrapId): 1 | -1 | 0 => {
  const side = strapSide(strap)
  if (side === 'centre') return 0
  return side === 'left' ? 1 : -1
}

/** Plan angle of the line from `from` rearward to `to`, + toward the seat's centre line. */
const planDeg = (strap: StrapId, from: PointMm, to: PointMm): number =>
  atan2Deg(inwardSign(strap) * (to.yMm - from.yMm), to.xMm - from.xMm)

/** Length from the body contact along the straight pieces to the anchor contact, mm. */
const freeLengthMm = ({ path, anchorContact }: SolvedStrap): number =>
  pointDistanceMm(path.bodyContact, path.effectiveAnchor) +
  pointDistanceMm(path.effectiveAnchor, anchorContact)

/**
 * Where the strap leaves the seat's back: its pass through the slot or over the rim. Through a strap that does not meet its slot,
 * the point above or below the backrest rim; null when the anchor is ahead of that.
 */
export const behindSeatFrom = (scene: StrapScene, strap: SolvedStrap): PointMm | null => {
  if (strap.pass !== null) return strap.pass.point
  const rim = vehiclePoint(scene.pose, { ...scene.seat.backrestRim, yMm: 0 })
  const { bodyContact } = strap.path
  const runMm = strap.anchorContact.xMm - bodyContact.xMm
  const share = (rim.xMm - bodyContact.xMm) / runMm
  if (!(share >= 0 && share <= 1)) return share < 0 ? bodyContact : null
  return pointBetween(bodyContact, strap.anchorContact, share)
}

/** Length of strap behind the seat, mm ≥ 0; 0 when the anchor is ahead of the backrest rim. */
const lengthBehindSeatMm = (scene: StrapScene, strap: SolvedStrap): number => {
  const from = behindSeatFrom(scene, strap)
  return from === null ? 0 : pointDistanceMm(from, strap.anchorContact)
}

/** The fall from the backrest to the anchor; from the rim itself, or from where the strap passes its slot. Null without a pass. */
const rimDropDeg = (strap: SolvedStrap): number | null => {
  const { pass } = strap
  if (pass === null) return null
  const from = pass.gate.on === 'rim' ? pass.gate.lower : projected(pass.point, 'side')
  return rearwardFallDeg(from, projected(strap.anchorContact, 'side'))
}

/** The quantities of one shoulder strap; formulas in straps/README.md. */
export const shoulderQuantities = (scene: StrapScene, strap: SolvedStrap): readonly QuantityValue[] => {
  const subject = strap.anchor.strap
  const { bodyContact, effectiveAnchor } = strap.path
  const dropDeg = rearwardFallDeg(projected(bodyContact, 'side'), projected(effectiveAnchor, 'side'))
  const shoulder =
    subject === 'shoulder-left' ? scene.body.shoulderPoint.left : scene.body.shoulderPoint.right
  const rimDeg = rimDropDeg(strap)
  return [
    { id: 'shoulder-drop', subject, value: dropDeg },
    { id: 'shoulder-to-spine', subject, value: dropDeg - scene.body.reclineDeg },
    ...(rimDeg === null ? [] : [{ id: 'shoulder-rim-drop', subject, value: rimDeg } as const]),
    { id: 'shoulder-height', subject, value: shoulder.zMm - strap.anchorContact.zMm },
    { id: 'shoulder-plan', subject, value: planDeg(subject, bodyContact, effectiveAnchor) },
    { id: 'shoulder-free-length', subject, value: freeLengthMm(strap) },
    { id: 'shoulder-length-behind-seat', subject, value: lengthBehindSeatMm(scene, strap) },
  ]
}

/**
 * Force pushed down the torso line by one shoulder strap, as a share of its tension: −u·(d_rear + d_front), u up the torso line,
 * d the directions in which the two legs leave the shoulder. The tension is taken equal in both legs (no friction on the
 * shoulder). Source: statics of a frictionless strap over a round support, derived here.
 */
export const downTorsoShare = (reclineDeg: number, rear: Direction, front: Direction): number =>
  -(sinDeg(reclineDeg) * (rear.x + front.x) + cosDeg(reclineDeg) * (rear.z + front.z))

const spineLoadShare = (scene: StrapScene, strap: SolvedStrap): number | null => {
  const { contacts, bodyContact, effectiveAnchor } = strap.path
  const buckle = contacts.at(-1)
  const front = contacts.at(-2)
  if (buckle?.on !== 'buckle' || front === undefined) return null
  const rearLeg = directionBetween(bodyContact, effectiveAnchor)
  const frontLeg = directionBetween(front.point, buckle.point)
  return rearLeg && frontLeg && downTorsoShare(scene.body.reclineDeg, rearLeg, frontLeg)
}

/** The quantities of the pair; only when both straps have a path. */
export const shoulderPairQuantities = (
  scene: StrapScene,
  straps: readonly SolvedStrap[],
): readonly QuantityValue[] => {
  const [left, right] = straps
  if (left === undefined || right === undefined) return []
  const subject = 'shoulder-pair'
  const spacingMm = pointDistanceMm(left.anchorContact, right.anchorContact)
  const shares = straps.flatMap((strap) => spineLoadShare(scene, strap) ?? [])
  const share = shares.reduce((sum, value) => sum + value, 0) / straps.length
  return [
    { id: 'shoulder-spacing', subject, value: spacingMm },
    ...(shares.length < straps.length ? [] : [{ id: 'spine-load-share', subject, value: share } as const]),
  ]
}
