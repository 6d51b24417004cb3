import type { CircleMm } from '../geometry/circle'
import { planeDistanceMm, projected, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { commonTangent, tangentPoint } from '../geometry/tangent'
import { err, ok, type Result } from '../result'
import type { Anchor } from './anchor'
import { CONTACT_MM, isPassedOnRight } from './aroundArc'
import { gateCrossing, gateCrossingOnArc, gateSide, type GateCrossing } from './gateCrossing'
import { gatePass, passTouches } from './gatePass'
import { mountCircle, mountContact, wrapSide } from './mount'
import type { PathProblem } from './path'
import { gateOf, type Gate, type StrapScene } from './scene'
import { arcLengthMm, strapPath, sweepDeg, type SolvedStrap, type Touch, type TouchArc } from './strapPath'

/** The strap from the buckle down to `onEnd` (the mount or an end of the gate), round the groin where it has to. */
interface UpperRun {
  readonly onEnd: PlanePointMm
  readonly onGroin: {
    readonly low: PlanePointMm
    readonly high: PlanePointMm
    /** From `low` up the front to `high`: clockwise, so its sweep is negative. */
    readonly arc: TouchArc
  } | null
}

/**
 * The taut strap between a round or point end and the buckle. Walked from the anchor up, the middle of the groin arc lies on the
 * right, behind the strap. Null when an end lies in the arc.
 */
const upperRun = (
  groin: CircleMm,
  end: { readonly circle: CircleMm; readonly side: 'left' | 'right' },
  straightEnd: PlanePointMm,
  buckle: PlanePointMm,
): UpperRun | null => {
  if (isPassedOnRight(groin, straightEnd, buckle)) return { onEnd: straightEnd, onGroin: null }
  const lower = commonTangent(end.circle, groin, end.side, 'right')
  const high = tangentPoint(groin, buckle, 'left')
  if (lower === null || high === null) return null
  const arc = { circle: groin, sweepDeg: -sweepDeg(groin, high, lower.onB) }
  return { onEnd: lower.onA, onGroin: { low: lower.onB, high, arc } }
}

/**
 * The groin arc, drawn in to the buckle where a thin lap lets the buckle lie within it: the buckle is on the body, never in it.
 */
export const groinOf = (scene: StrapScene, buckle: PlanePointMm): CircleMm => {
  const { centre, radiusMm } = scene.body.groinArc
  return { centre, radiusMm: Math.min(radiusMm, planeDistanceMm(centre, buckle)) }
}

/**
 * Height of the lowest point of the groin. An anti-submarine strap holds the pelvis down only from an anchor below it; the point
 * itself does not count as below. Source: our judgement; common practice has the strap run down from the groin.
 */
export const groinBottomMm = ({ centre, radiusMm }: CircleMm): number => centre.vMm - radiusMm

/** Where the run passes the gate's line: on its straight piece, or on the arc if the body reaches through the gate. */
const runCrossing = (gate: Gate, run: UpperRun, buckle: PlanePointMm): GateCrossing | null => {
  if (!(gateSide(gate, run.onEnd) * gateSide(gate, buckle) < 0)) return null
  const low = run.onGroin?.low ?? buckle
  return (
    gateCrossing(gate, run.onEnd, low) ?? (run.onGroin && gateCrossingOnArc(gate, run.onGroin.arc.circle))
  )
}

interface SubRun {
  readonly onAnchor: PlanePointMm
  readonly upper: UpperRun
  readonly gate: Gate | null
  readonly crossing: GateCrossing | null
}

/** The run bent over an end of the gate. */
const bentRun = (
  scene: StrapScene,
  anchor: Anchor,
  circle: CircleMm,
  gate: Gate,
  crossing: GateCrossing,
  buckle: PlanePointMm,
): Result<SubRun, PathProblem> => {
  const strap = anchor.strap
  const groin = groinOf(scene, buckle)
  const beyondMm = planeDistanceMm(crossing.at, groin.centre) - groin.radiusMm
  const end = { circle: { centre: crossing.at, radiusMm: 0 }, side: 'left' } as const
  const upper = upperRun(groin, end, crossing.at, buckle)
  if (beyondMm < CONTACT_MM || upper === null)
    return err({ kind: 'slot-blocked', strap, by: 'body', insideMm: Math.max(0, -beyondMm) })
  const onAnchor = mountContact(anchor.mount, circle, crossing.at)
  if (onAnchor === null) {
    const insideMm = circle.radiusMm - planeDistanceMm(crossing.at, circle.centre)
    return err({ kind: 'slot-blocked', strap, by: 'tube', insideMm })
  }
  return ok({ onAnchor, upper, gate, crossing })
}

const subRun = (scene: StrapScene, anchor: Anchor, buckle: PlanePointMm): Result<SubRun, PathProblem> => {
  const strap = anchor.strap
  const groin = groinOf(scene, buckle)
  const circle = mountCircle(anchor.mount, scene.tubes)
  if (circle === null) return err({ kind: 'anchor-missing', strap })
  const apartMm = planeDistanceMm(circle.centre, groin.centre) - groin.radiusMm - circle.radiusMm
  const straightEnd = mountContact(anchor.mount, circle, buckle)
  const upper =
    straightEnd && upperRun(groin, { circle, side: wrapSide(anchor.mount, buckle) }, straightEnd, buckle)
  if (apartMm < CONTACT_MM || upper === null || planeDistanceMm(upper.onEnd, buckle) < CONTACT_MM)
    return err({ kind: 'anchor-inside-body', strap, insideMm: Math.max(0, -apartMm) })
  const gate = gateOf(scene, strap)
  const crossing = gate && runCrossing(gate, upper, buckle)
  if (gate !== null && crossing?.bent === true) return bentRun(scene, anchor, circle, gate, crossing, buckle)
  return ok({ onAnchor: upper.onEnd, upper, gate, crossing })
}

/** How far the anchor, or the slot's edge that bends the strap, is above the place it must be below, mm ≥ 0; null when below. */
const notBelowMm = (groin: CircleMm, run: SubRun, buckle: PlanePointMm): number | null => {
  const anchorMm = run.onAnchor.vMm - groinBottomMm(groin)
  const body = run.upper.onGroin?.low ?? buckle
  const edgeMm = run.crossing?.bent === true ? run.crossing.at.vMm - body.vMm : -Infinity
  const aboveMm = Math.max(anchorMm, edgeMm)
  return aboveMm > -CONTACT_MM ? Math.max(0, aboveMm) : null
}

/** The contacts on the groin and the buckle, y carried evenly along the unrolled strap from `end` to the buckle. */
const upperTouches = (upper: UpperRun, end: PointMm, buckle: PointMm): readonly Touch[] => {
  const last: Touch = { on: 'buckle', point: buckle, bendDeg: 0, arcToNext: null }
  if (upper.onGroin === null) return [last]
  const { low, high, arc } = upper.onGroin
  const lowMm = planeDistanceMm(projected(end, 'side'), low)
  const highMm = lowMm + arcLengthMm(arc)
  const allMm = highMm + planeDistanceMm(high, projected(buckle, 'side'))
  const at = (point: PlanePointMm, alongMm: number): PointMm => ({
    xMm: point.uMm,
    yMm: end.yMm + (alongMm / allMm) * (buckle.yMm - end.yMm),
    zMm: point.vMm,
  })
  return [
    { on: 'body', point: at(low, lowMm), bendDeg: Math.abs(arc.sweepDeg), arcToNext: arc },
    { on: 'body', point: at(high, highMm), bendDeg: 0, arcToNext: null },
    last,
  ]
}

/** Length of strap in the side plane from the lower contact of the body to the buckle, mm; 0 for a straight strap. */
const groinToBuckleMm = (upper: UpperRun, buckle: PlanePointMm): number =>
  upper.onGroin === null ? 0 : arcLengthMm(upper.onGroin.arc) + planeDistanceMm(upper.onGroin.high, buckle)

/**
 * The taut anti-submarine strap: anchor, slot where it bears on it, round the groin where it has to, buckle. When it clears the
 * groin it runs straight to the buckle, and the buckle is its contact with the body. Fails with the reason when the anchor is in
 * the body or not below it.
 */
export const subPath = (
  scene: StrapScene,
  anchor: Anchor,
  buckle: PointMm,
): Result<SolvedStrap, PathProblem> => {
  const buckleEnd = projected(buckle, 'side')
  const run = subRun(scene, anchor, buckleEnd)
  if (!run.ok) return run
  const { onAnchor, upper, gate, crossing } = run.value
  const aboveMm = notBelowMm(groinOf(scene, buckleEnd), run.value, buckleEnd)
  if (aboveMm !== null) return err({ kind: 'sub-anchor-not-below', strap: anchor.strap, aboveMm })
  const anchorYMm = anchor.mount.point.yMm
  const anchorContact = { xMm: onAnchor.uMm, yMm: anchorYMm, zMm: onAnchor.vMm }
  const bodyEnd = upper.onGroin?.low ?? buckleEnd
  const legs = {
    anchorEnd: onAnchor,
    anchorYMm,
    bodyEnd,
    bodyYMm: buckle.yMm,
    beyondBodyMm: groinToBuckleMm(upper, buckleEnd),
  }
  const pass = gate && crossing && gatePass(gate, crossing, legs)
  const start: Touch = { on: 'anchor', point: anchorContact, bendDeg: 0, arcToNext: null }
  const path = strapPath(anchor.strap, start, [
    ...passTouches(pass, onAnchor, bodyEnd),
    ...upperTouches(upper, pass?.touches === true ? pass.point : anchorContact, buckle),
  ])
  return ok({ anchor, path, anchorContact, pass })
}
