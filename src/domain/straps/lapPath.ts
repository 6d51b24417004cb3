import type { CircleMm } from '../geometry/circle'
import { planeDistanceMm, projected, type PlanePointMm } from '../geometry/plane'
import { pointBetween, type PointMm } from '../geometry/point'
import type { PosedBody } from '../body/posedBody'
import { err, ok, type Result } from '../result'
import { atan2Deg, cosDeg, sinDeg } from '../units/angle'
import type { Anchor } from './anchor'
import { CONTACT_MM } from './aroundArc'
import { gateCrossing, type GateCrossing } from './gateCrossing'
import { gatePass, passTouches } from './gatePass'
import { mountCircle, mountContact } from './mount'
import type { PathProblem } from './path'
import { gateOf, type Gate, type StrapScene } from './scene'
import { strapPath, type GatePass, type SolvedStrap, type Touch } from './strapPath'

/** Angle above horizontal of the line from `from` forward to `to` in the side plane: 0° level, 90° straight up, (−180°, 180°]. */
export const forwardAngleDeg = (from: PlanePointMm, to: PlanePointMm): number =>
  atan2Deg(to.vMm - from.vMm, from.uMm - to.uMm)

/** The point of the lap arc at an angle above horizontal, seen from the hip point forward. */
export const lapFrontAt = (body: PosedBody, angleDeg: number): PlanePointMm => ({
  uMm: body.lapArc.centre.uMm - body.lapArc.radiusMm * cosDeg(angleDeg),
  vMm: body.lapArc.centre.vMm + body.lapArc.radiusMm * sinDeg(angleDeg),
})

/** Where a lap strap from an effective anchor is headed. */
interface LapAim {
  /** Angle of the anchor-to-hip line above horizontal. */
  readonly lineDeg: number
  /** The front contact on the lap arc. */
  readonly front: PlanePointMm
  /** The point the straight strap is aimed at: the hip point, or the front contact held up by the thigh. */
  readonly target: PlanePointMm
}

/**
 * The line of pull of a loop round the pelvis passes through the hip point, the middle of the lap arc, unless the thigh holds
 * the strap higher. Derivation in straps/README.md.
 */
export const lapAim = (body: PosedBody, from: PlanePointMm): LapAim => {
  const hip = projected(body.hip, 'side')
  const lineDeg = forwardAngleDeg(from, hip)
  if (lineDeg >= body.lapLowestDeg) return { lineDeg, front: lapFrontAt(body, lineDeg), target: hip }
  const front = lapFrontAt(body, body.lapLowestDeg)
  return { lineDeg, front, target: front }
}

interface LapRun {
  readonly onAnchor: PlanePointMm
  readonly aim: LapAim
  readonly gate: Gate | null
  readonly crossing: GateCrossing | null
}

/** The straight strap from its mount, aimed first at the hip and then, if the thigh is in the way, at the front contact. */
const straightContact = (scene: StrapScene, anchor: Anchor, circle: CircleMm): PlanePointMm | null => {
  const towardHip = mountContact(anchor.mount, circle, projected(scene.body.hip, 'side'))
  return towardHip && mountContact(anchor.mount, circle, lapAim(scene.body, towardHip).target)
}

const lapRun = (scene: StrapScene, anchor: Anchor): Result<LapRun, PathProblem> => {
  const strap = anchor.strap
  const circle = mountCircle(anchor.mount, scene.tubes)
  if (circle === null) return err({ kind: 'anchor-missing', strap })
  const straight = straightContact(scene, anchor, circle)
  if (straight === null) {
    const insideMm = circle.radiusMm - planeDistanceMm(circle.centre, projected(scene.body.hip, 'side'))
    return err({ kind: 'anchor-inside-body', strap, insideMm: Math.max(0, insideMm) })
  }
  const aim = lapAim(scene.body, straight)
  const gate = gateOf(scene, strap)
  const crossing = gate && gateCrossing(gate, straight, aim.target)
  if (crossing?.bent !== true) return ok({ onAnchor: straight, aim, gate, crossing })
  const onAnchor = mountContact(anchor.mount, circle, crossing.at)
  if (onAnchor === null) {
    const insideMm = circle.radiusMm - planeDistanceMm(crossing.at, circle.centre)
    return err({ kind: 'slot-blocked', strap, by: 'tube', insideMm })
  }
  return ok({ onAnchor, aim: lapAim(scene.body, crossing.at), gate, crossing })
}

/**
 * Why a lap strap cannot hold the pelvis from here, or null: the anchor is in the body or across it, or the line of pull runs
 * rearward.
 * Straight below the hip point (90°) is the last place that counts as behind.
 */
const lapProblem = (scene: StrapScene, anchor: Anchor, run: LapRun): PathProblem | null => {
  const { body } = scene
  const strap = anchor.strap
  const hip = projected(body.hip, 'side')
  const end = run.crossing?.bent === true ? run.crossing.at : run.onAnchor
  const behindMm = end.uMm - hip.uMm
  const isStraightBelow = Math.abs(behindMm) < CONTACT_MM && end.vMm < hip.vMm - CONTACT_MM
  if (behindMm < CONTACT_MM && !isStraightBelow)
    return { kind: 'lap-anchor-not-behind', strap, aheadMm: Math.max(0, -behindMm) }
  const outward = strap === 'lap-left' ? -1 : 1
  const acrossMm = -outward * (anchor.mount.point.yMm - body.hip.yMm)
  if (acrossMm > CONTACT_MM) return { kind: 'lap-anchor-across', strap, acrossMm }
  const outsideMm = planeDistanceMm(run.onAnchor, hip) - body.lapArc.radiusMm
  const isBeside = Math.abs(anchor.mount.point.yMm - body.hip.yMm) >= body.hipHalfBreadthMm
  if (outsideMm < 0 && !isBeside) return { kind: 'anchor-inside-body', strap, insideMm: -outsideMm }
  return null
}

/** One lap strap up to its front contact; the way on to the buckle follows when both sides are known. */
export interface LapHalf {
  readonly anchor: Anchor
  readonly run: LapRun
  readonly front: PointMm
}

/** Solves one lap strap in the side plane, from its anchor to the front contact. */
export const lapHalf = (scene: StrapScene, anchor: Anchor): Result<LapHalf, PathProblem> => {
  const run = lapRun(scene, anchor)
  if (!run.ok) return run
  const problem = lapProblem(scene, anchor, run.value)
  if (problem !== null) return err(problem)
  const bone = anchor.strap === 'lap-left' ? scene.body.frontHipBone.left : scene.body.frontHipBone.right
  const { front } = run.value.aim
  return ok({
    anchor,
    run: run.value,
    front: { xMm: front.uMm, yMm: bone.yMm, zMm: front.vMm },
  })
}

/** The strap's pass through its gate, for a body contact at `body`. */
const lapPass = (half: LapHalf, anchorYMm: number, body: PointMm): GatePass | null => {
  const { gate, crossing, onAnchor } = half.run
  if (gate === null || crossing === null) return null
  const bodyEnd = projected(body, 'side')
  return gatePass(gate, crossing, {
    anchorEnd: onAnchor,
    anchorYMm,
    bodyEnd,
    bodyYMm: body.yMm,
    beyondBodyMm: 0,
  })
}

/**
 * Beside the hip point, on the side of the hip, if the straight leg from `end` (the last contact before the body) to the front
 * contact would cut into the hip's breadth there; null if it stays outside or does not pass the hip point at all.
 */
const hipSideContact = (scene: StrapScene, half: LapHalf, end: PointMm): PointMm | null => {
  const { hip, hipHalfBreadthMm } = scene.body
  const share = (hip.xMm - half.front.xMm) / (end.xMm - half.front.xMm)
  if (!(share > 0 && share < 1)) return null
  const at = pointBetween(half.front, end, share)
  const outward = half.anchor.strap === 'lap-left' ? -1 : 1
  if (outward * (at.yMm - hip.yMm) >= hipHalfBreadthMm) return null
  return { ...at, yMm: hip.yMm + outward * hipHalfBreadthMm }
}

/**
 * The whole lap strap: anchor, slot where it bears on it, side of the hip where the straight line would cut into it, front
 * contact beside the front hip bone, buckle. From the front contact to the buckle the strap is taken straight across.
 */
export const lapPath = (scene: StrapScene, half: LapHalf, buckle: PointMm): SolvedStrap => {
  const { anchor, run, front } = half
  const anchorContact = { xMm: run.onAnchor.uMm, yMm: anchor.mount.point.yMm, zMm: run.onAnchor.vMm }
  const firstPass = lapPass(half, anchorContact.yMm, front)
  const hipSide = hipSideContact(scene, half, firstPass?.touches === true ? firstPass.point : anchorContact)
  const body = hipSide ?? front
  const bodyEnd = projected(body, 'side')
  const pass = hipSide === null ? firstPass : lapPass(half, anchorContact.yMm, hipSide)
  const touch = (on: Touch['on'], point: PointMm): Touch => ({ on, point, bendDeg: 0, arcToNext: null })
  const start = touch('anchor', anchorContact)
  const path = strapPath(anchor.strap, start, [
    ...passTouches(pass, run.onAnchor, bodyEnd),
    ...(hipSide === null ? [] : [touch('body', hipSide)]),
    touch('body', front),
    touch('buckle', buckle),
  ])
  return { anchor, path, anchorContact, pass }
}
