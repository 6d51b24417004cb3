import { vehiclePoint } from '../body/pose'
import { projected, type PlanePointMm } from '../geometry/plane'
import { directionBetween, pointDistanceMm, type Direction, type PointMm } from '../geometry/point'
import { atan2Deg, cosDeg, sinDeg } from '../units/angle'
import { beyondMm } from './portal'
import type { QuantitySink } from './quantity'
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
const freeLengthMm = ({ path }: SolvedStrap): number => {
  let lengthMm = 0
  let before: PointMm | null = null
  for (const { on, point } of path.contacts) {
    if (before !== null) lengthMm += pointDistanceMm(before, point)
    if (on === 'body' || on === 'buckle') break
    before = point
  }
  return lengthMm
}

/**
 * The strap behind the seat, from where it leaves the seat's back to its anchor contact, over the junction of joined straps where that
 * lies behind the seat too. It leaves at its pass through the slot or over the rim or, where the shoulder itself is behind the
 * rim, at the shoulder. Empty when the anchor is ahead of the rim.
 */
export const behindSeatPoints = (scene: StrapScene, { path, pass }: SolvedStrap): readonly PointMm[] => {
  const outside: PointMm[] = []
  for (const { on, point } of path.contacts) {
    if (on === 'body' || on === 'buckle') break
    const isBehind =
      pass === null || ((on === 'anchor' || on === 'junction') && beyondMm(pass.gate, point) > 0)
    if (isBehind) outside.unshift(point)
  }
  if (pass !== null) return [pass.point, ...outside]
  const rim = vehiclePoint(scene.pose, { ...scene.seat.backrestRim, yMm: 0 })
  return path.bodyContact.xMm >= rim.xMm ? [path.bodyContact, ...outside] : []
}

/** Length of strap behind the seat, its tail included, mm ≥ 0; 0 when the anchor is ahead of the backrest rim. */
const lengthBehindSeatMm = (scene: StrapScene, strap: SolvedStrap): number => {
  let lengthMm = 0
  let before: PointMm | null = null
  for (const point of behindSeatPoints(scene, strap)) {
    if (before !== null) lengthMm += pointDistanceMm(before, point)
    before = point
  }
  return lengthMm
}

/** The fall from the backrest to the anchor; from the rim itself, or from where the strap passes its slot. Null without a pass. */
const rimDropDeg = (strap: SolvedStrap): number | null => {
  const { pass } = strap
  if (pass === null) return null
  const from = pass.gate.on === 'rim' ? pass.gate.centre : pass.point
  return rearwardFallDeg(projected(from, 'side'), projected(strap.anchorContact, 'side'))
}

/** Adds the quantities of one shoulder strap; formulas in straps/README.md. */
export const addShoulderQuantities = (sink: QuantitySink, scene: StrapScene, strap: SolvedStrap): void => {
  const subject = strap.anchor.strap
  const { bodyContact, effectiveAnchor } = strap.path
  const dropDeg = rearwardFallDeg(projected(bodyContact, 'side'), projected(effectiveAnchor, 'side'))
  const { left, right } = scene.body.shoulderPoint
  const shoulder = subject === 'shoulder-left' ? left : right
  const rimDeg = rimDropDeg(strap)
  if (sink.wants('shoulder-drop')) sink.put('shoulder-drop', subject, dropDeg)
  if (sink.wants('shoulder-to-spine')) sink.put('shoulder-to-spine', subject, dropDeg - scene.body.reclineDeg)
  if (rimDeg !== null) sink.put('shoulder-rim-drop', subject, rimDeg)
  if (sink.wants('shoulder-height'))
    sink.put('shoulder-height', subject, shoulder.zMm - strap.anchorContact.zMm)
  if (sink.wants('shoulder-plan'))
    sink.put('shoulder-plan', subject, planDeg(subject, bodyContact, effectiveAnchor))
  if (sink.wants('shoulder-free-length')) sink.put('shoulder-free-length', subject, freeLengthMm(strap))
  if (sink.wants('shoulder-length-behind-seat'))
    sink.put('shoulder-length-behind-seat', subject, lengthBehindSeatMm(scene, strap))
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
  const buckle = contacts[contacts.length - 1]
  const front = contacts[contacts.length - 2]
  if (buckle?.on !== 'buckle' || front === undefined) return null
  const rearLeg = directionBetween(bodyContact, effectiveAnchor)
  const frontLeg = directionBetween(front.point, buckle.point)
  return rearLeg && frontLeg && downTorsoShare(scene.body.reclineDeg, rearLeg, frontLeg)
}

/** How far the junction of joined shoulder straps lies behind the back of the neck: the rearmost point of the shoulder arc. */
const behindNeckMm = ({ body }: StrapScene, { path }: SolvedStrap): number | null => {
  const junction = path.contacts[1]
  if (junction?.on !== 'junction') return null
  return junction.point.xMm - (body.shoulderArc.centre.uMm + body.shoulderArc.radiusMm)
}

/** Adds the quantities of the pair; only when both straps have a path. */
export const addShoulderPairQuantities = (
  sink: QuantitySink,
  scene: StrapScene,
  left: SolvedStrap,
  right: SolvedStrap,
): void => {
  const subject = 'shoulder-pair'
  if (sink.wants('shoulder-spacing'))
    sink.put('shoulder-spacing', subject, pointDistanceMm(left.anchorContact, right.anchorContact))
  const first = spineLoadShare(scene, left)
  const second = spineLoadShare(scene, right)
  if (first !== null && second !== null) sink.put('spine-load-share', subject, (first + second) / 2)
  const neckMm = behindNeckMm(scene, left)
  if (neckMm !== null) sink.put('shoulder-junction', subject, neckMm)
}
