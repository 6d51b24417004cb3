import type { CircleMm } from '../geometry/circle'
import { projected, type PlanePointMm } from '../geometry/plane'
import { pointDistanceMm, type PointMm } from '../geometry/point'
import { atan2Deg, cosDeg, sinDeg, wrappedDeg } from '../units/angle'
import type { Anchor } from './anchor'
import type { PathContact, StrapPath } from './path'
import type { Gate } from './scene'
import type { StrapId } from './strap'

/** A piece of strap that lies on a round part of the body in the side plane, + anticlockwise. */
export interface TouchArc {
  readonly circle: CircleMm
  readonly sweepDeg: number
}

/** A contact and, where the strap lies on the body from here to the next contact, that arc. */
export interface Touch extends PathContact {
  readonly arcToNext: TouchArc | null
}

/** Where a strap passes its gate, in 3-D. */
export interface GatePass {
  readonly gate: Gate
  readonly point: PointMm
  /** It bears on the gate: on an edge in side view, or on an end of the slot in plan view. */
  readonly touches: boolean
}

/** One solved strap with what its quantities need beyond the path. */
export interface SolvedStrap {
  readonly anchor: Anchor
  readonly path: StrapPath
  readonly anchorContact: PointMm
  /** Null when the strap has no gate or ends before it. */
  readonly pass: GatePass | null
}

/** Spacing of the points an arc is drawn by. Judgement: the chord is then within 0.2 mm of an arc of 150 mm radius. */
const ARC_STEP_DEG = 6

/** Angle of a point as seen from a circle's centre, degrees anticlockwise from rearward. */
const angleOnCircleDeg = (circle: CircleMm, point: PlanePointMm): number =>
  atan2Deg(point.vMm - circle.centre.vMm, point.uMm - circle.centre.uMm)

/** Anticlockwise sweep from one point of a circle to another, in [0°, 360°). */
export const sweepDeg = (circle: CircleMm, from: PlanePointMm, to: PlanePointMm): number => {
  const turnDeg = wrappedDeg(angleOnCircleDeg(circle, to) - angleOnCircleDeg(circle, from))
  return turnDeg < 0 ? turnDeg + 360 : turnDeg
}

/** Change of direction at `at` of a strap through three points, seen in side view, degrees ≥ 0. */
export const sideTurnDeg = (from: PlanePointMm, at: PlanePointMm, to: PlanePointMm): number =>
  Math.abs(
    wrappedDeg(atan2Deg(to.vMm - at.vMm, to.uMm - at.uMm) - atan2Deg(at.vMm - from.vMm, at.uMm - from.uMm)),
  )

/** Points along an arc after its first, up to but without its last, y carried evenly. */
const arcPoints = (from: PointMm, to: PointMm, arc: TouchArc): readonly PointMm[] => {
  const startDeg = angleOnCircleDeg(arc.circle, projected(from, 'side'))
  const steps = Math.ceil(Math.abs(arc.sweepDeg) / ARC_STEP_DEG)
  return Array.from({ length: Math.max(0, steps - 1) }, (_, index) => {
    const share = (index + 1) / steps
    const angleDeg = startDeg + share * arc.sweepDeg
    return {
      xMm: arc.circle.centre.uMm + arc.circle.radiusMm * cosDeg(angleDeg),
      yMm: from.yMm + share * (to.yMm - from.yMm),
      zMm: arc.circle.centre.vMm + arc.circle.radiusMm * sinDeg(angleDeg),
    }
  })
}

/** Length of an arc in the side plane, mm. Formula: the share of the circumference 2πr. */
export const arcLengthMm = (arc: TouchArc): number =>
  (2 * Math.PI * arc.circle.radiusMm * Math.abs(arc.sweepDeg)) / 360

/** Length from one contact to the next; on an arc the strap is a helix, whose length is that of its unrolled straight line. */
const touchLengthMm = (from: Touch, to: Touch): number =>
  from.arcToNext === null
    ? pointDistanceMm(from.point, to.point)
    : Math.hypot(arcLengthMm(from.arcToNext), to.point.yMm - from.point.yMm)

/** The path through the given contacts: the anchor's, then the others in order, at least one of them `body` or `buckle`. */
export const strapPath = (strap: StrapId, anchor: Touch, others: readonly Touch[]): StrapPath => {
  const touches = [anchor, ...others]
  const polyline: PointMm[] = []
  let lengthMm = 0
  for (const [index, touch] of touches.entries()) {
    polyline.push(touch.point)
    const next = touches[index + 1]
    if (next === undefined) break
    lengthMm += touchLengthMm(touch, next)
    if (touch.arcToNext !== null) polyline.push(...arcPoints(touch.point, next.point, touch.arcToNext))
  }
  const bodyIndex = touches.findIndex(({ on }) => on === 'body' || on === 'buckle')
  return {
    strap,
    contacts: touches.map(({ on, point, bendDeg }) => ({ on, point, bendDeg })),
    polyline,
    effectiveAnchor: (touches[bodyIndex - 1] ?? anchor).point,
    bodyContact: (touches[bodyIndex] ?? anchor).point,
    lengthMm,
  }
}
