import type { CircleMm } from '../geometry/circle'
import { planeDistanceMm, projected, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { commonTangent, tangentPoint } from '../geometry/tangent'
import { err, ok, type Result } from '../result'
import type { Anchor } from './anchor'
import { CONTACT_MM, leftOfLineMm } from './aroundArc'
import { gateCrossing, type GateCrossing } from './gateCrossing'
import { gatePass, passTouches } from './gatePass'
import { mountCircle, otherSide, wrapSide } from './mount'
import type { PathProblem } from './path'
import { gateOf, type Gate, type StrapScene } from './scene'
import { strapPath, sweepDeg, type SolvedStrap, type Touch } from './strapPath'

/** The rear part of a shoulder strap in the side plane. */
interface RearRun {
  readonly onAnchor: PlanePointMm
  readonly onBody: PlanePointMm
  readonly gate: Gate | null
  readonly crossing: GateCrossing | null
}

/** The run bent over an end of the gate: tangent from there to the shoulder arc and to the mount. */
const bentRun = (
  scene: StrapScene,
  anchor: Anchor,
  circle: CircleMm,
  gate: Gate,
  crossing: GateCrossing,
): Result<RearRun, PathProblem> => {
  const arc = scene.body.shoulderArc
  const strap = anchor.strap
  const beyondMm = planeDistanceMm(crossing.at, arc.centre) - arc.radiusMm
  const onBody = tangentPoint(arc, crossing.at, 'left')
  if (beyondMm < CONTACT_MM || onBody === null)
    return err({ kind: 'slot-blocked', strap, by: 'body', insideMm: Math.max(0, -beyondMm) })
  const onAnchor = tangentPoint(circle, crossing.at, otherSide(wrapSide(anchor.mount, arc.centre)))
  if (onAnchor === null) {
    const insideMm = circle.radiusMm - planeDistanceMm(crossing.at, circle.centre)
    return err({ kind: 'slot-blocked', strap, by: 'tube', insideMm })
  }
  return ok({ onAnchor, onBody, gate, crossing })
}

/**
 * From the anchor to the shoulder arc: straight, tangent to both, unless that misses the gate. Walked from the anchor forward
 * the arc lies on the left, below the strap.
 */
const rearRun = (scene: StrapScene, anchor: Anchor): Result<RearRun, PathProblem> => {
  const strap = anchor.strap
  const arc = scene.body.shoulderArc
  const circle = mountCircle(anchor.mount, scene.tubes)
  if (circle === null) return err({ kind: 'anchor-missing', strap })
  const apartMm = planeDistanceMm(circle.centre, arc.centre) - arc.radiusMm - circle.radiusMm
  const straight = commonTangent(circle, arc, wrapSide(anchor.mount, arc.centre), 'left')
  if (apartMm < CONTACT_MM || straight === null)
    return err({ kind: 'anchor-inside-body', strap, insideMm: Math.max(0, -apartMm) })
  const gate = gateOf(scene, strap)
  const crossing = gate && gateCrossing(gate, straight.onA, straight.onB)
  if (gate !== null && crossing?.bent === true) return bentRun(scene, anchor, circle, gate, crossing)
  return ok({ onAnchor: straight.onA, onBody: straight.onB, gate, crossing })
}

/** From the shoulder arc to the buckle, or to the top of the shoulder while there is no buckle. */
const frontTouches = (
  scene: StrapScene,
  anchor: Anchor,
  rear: { readonly end: PlanePointMm; readonly onBody: PlanePointMm },
  buckle: PointMm | null,
): Result<readonly [Touch, ...Touch[]], PathProblem> => {
  const strap = anchor.strap
  const arc = scene.body.shoulderArc
  const shoulder = strap === 'shoulder-left' ? scene.body.shoulderPoint.left : scene.body.shoulderPoint.right
  const onBody = (at: PlanePointMm): PointMm => ({ xMm: at.uMm, yMm: shoulder.yMm, zMm: at.vMm })
  const touch = (at: PlanePointMm, arcSweepDeg: number | null): Touch => ({
    on: 'body',
    point: onBody(at),
    bendDeg: arcSweepDeg === null ? 0 : Math.abs(arcSweepDeg),
    arcToNext: arcSweepDeg === null ? null : { circle: arc, sweepDeg: arcSweepDeg },
  })
  if (buckle === null) {
    const top = projected(shoulder, 'side')
    const upDeg = sweepDeg(arc, rear.onBody, top)
    // A strap that reaches the arc ahead of its top turns back to it in name only: the top is then the arc's contact itself.
    return ok(upDeg > 180 ? [touch(rear.onBody, null)] : [touch(rear.onBody, upDeg), touch(top, null)])
  }
  const end = projected(buckle, 'side')
  const front = tangentPoint(arc, end, 'right')
  if (front === null) return err({ kind: 'buckle-unknown', strap })
  const clearMm = leftOfLineMm(rear.end, end, arc.centre) - arc.radiusMm
  if (clearMm >= 0) return err({ kind: 'clear-of-shoulder', strap, clearMm })
  const overDeg = sweepDeg(arc, rear.onBody, front)
  return ok([
    touch(rear.onBody, overDeg),
    touch(front, null),
    { on: 'buckle', point: buckle, bendDeg: 0, arcToNext: null },
  ])
}

/**
 * The taut shoulder strap: anchor, gate where it bears on it, rear touching point of the shoulder arc, over the arc to its front
 * touching point, buckle. Straight in plan between body and anchor, as far as a slot lets it. Fails with the reason when the
 * anchor is in the body or not behind it, or when a straight strap would not bear on the shoulder.
 */
export const shoulderPath = (
  scene: StrapScene,
  anchor: Anchor,
  buckle: PointMm | null,
): Result<SolvedStrap, PathProblem> => {
  const run = rearRun(scene, anchor)
  if (!run.ok) return run
  const { onAnchor, onBody, gate, crossing } = run.value
  const rearEnd = crossing?.bent === true ? crossing.at : onAnchor
  const behindMm = rearEnd.uMm - onBody.uMm
  if (behindMm < CONTACT_MM)
    return err({ kind: 'anchor-ahead-of-shoulder', strap: anchor.strap, aheadMm: Math.max(0, -behindMm) })
  const front = frontTouches(scene, anchor, { end: rearEnd, onBody }, buckle)
  if (!front.ok) return front
  const anchorYMm = anchor.mount.point.yMm
  const bodyYMm = front.value[0].point.yMm
  const pass =
    gate &&
    crossing &&
    gatePass(gate, crossing, { anchorEnd: onAnchor, anchorYMm, bodyEnd: onBody, bodyYMm, beyondBodyMm: 0 })
  const anchorContact = { xMm: onAnchor.uMm, yMm: anchorYMm, zMm: onAnchor.vMm }
  const start: Touch = { on: 'anchor', point: anchorContact, bendDeg: 0, arcToNext: null }
  const path = strapPath(anchor.strap, start, [...passTouches(pass, onAnchor, onBody), ...front.value])
  return ok({ anchor, path, anchorContact, pass })
}
