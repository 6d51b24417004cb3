import type { CircleMm } from '../geometry/circle'
import type { PlanePointMm } from '../geometry/plane'
import { ellipseArcMm } from '../geometry/ellipse'
import { directionLength, pointDistanceMm, type Direction, type PointMm } from '../geometry/point'
import { atan2Deg } from '../units/angle'
import type { Anchor } from './anchor'
import type { PathContact, StrapPath } from './path'
import type { Portal } from './portal'
import type { StrapId } from './strap'

/**
 * A piece of strap that lies on a round part of the body: the points middle + cos φ·first + sin φ·second, φ in radians from `fromRad` on.
 */
export interface TouchArc {
  readonly middle: PointMm
  readonly first: Direction
  readonly second: Direction
  readonly fromRad: number
  readonly sweepRad: number
  /** Its length in its own plane; null for an arc that ends at φ = 0, whose length is worked out when somebody asks: `touchLengthMm`. */
  readonly lengthMm: number | null
  /** `even`: y changes evenly along the unrolled arc to that of the next contact; `own`: as the arc itself says. */
  readonly across: 'even' | 'own'
}

/** A contact and, where the strap lies on the body from here to the next contact, that arc. */
export interface Touch extends PathContact {
  readonly arcToNext: TouchArc | null
}

/** Where a strap passes its slot or the rim, in 3-D. */
export interface GatePass {
  readonly gate: Portal
  readonly point: PointMm
  /** It bears on an edge. */
  readonly touches: boolean
}

/** One solved strap with what its quantities need beyond the path. */
export interface SolvedStrap {
  readonly anchor: Anchor
  readonly path: StrapPath
  /** The path's contacts with the arcs between them. */
  readonly touches: readonly Touch[]
  /** Where it or, of joined shoulder straps, their tail leaves the mount. */
  readonly anchorContact: PointMm
  /** Null when the strap has no slot or rim or ends before it. */
  readonly pass: GatePass | null
}

/** Spacing of the points an arc is drawn by. Judgement: the chord is then within 0.2 mm of an arc of 150 mm radius. */
const ARC_STEP_RAD = Math.PI / 30

/** Change of direction at `at` of a strap through three points, seen in side view, degrees ≥ 0. */
export const sideTurnDeg = (from: PointMm, at: PointMm, to: PointMm): number => {
  const u1 = at.xMm - from.xMm
  const v1 = at.zMm - from.zMm
  const u2 = to.xMm - at.xMm
  const v2 = to.zMm - at.zMm
  return Math.abs(atan2Deg(u1 * v2 - v1 * u2, u1 * u2 + v1 * v2))
}

/** Points along an arc after its first, up to but without its last. */
const addArcPoints = (points: PointMm[], from: PointMm, to: PointMm, arc: TouchArc): void => {
  const { middle, first, second } = arc
  const steps = Math.ceil(Math.abs(arc.sweepRad) / ARC_STEP_RAD)
  if (steps < 2) return
  const turnCos = Math.cos(arc.sweepRad / steps)
  const turnSin = Math.sin(arc.sweepRad / steps)
  let cosine = Math.cos(arc.fromRad)
  let sine = Math.sin(arc.fromRad)
  for (let step = 1; step < steps; step += 1) {
    const next = cosine * turnCos - sine * turnSin
    sine = sine * turnCos + cosine * turnSin
    cosine = next
    points.push({
      xMm: middle.xMm + cosine * first.x + sine * second.x,
      yMm:
        arc.across === 'even'
          ? from.yMm + (step / steps) * (to.yMm - from.yMm)
          : middle.yMm + cosine * first.y + sine * second.y,
      zMm: middle.zMm + cosine * first.z + sine * second.z,
    })
  }
}

/** An arc of a circle in the side plane along which y changes evenly. */
export const circleArc = (circle: CircleMm, from: PlanePointMm, sweepRad: number): TouchArc => ({
  middle: { xMm: circle.centre.uMm, yMm: 0, zMm: circle.centre.vMm },
  // From the arc's own start: no angle of it is needed.
  first: { x: from.uMm - circle.centre.uMm, y: 0, z: from.vMm - circle.centre.vMm },
  second: { x: circle.centre.vMm - from.vMm, y: 0, z: from.uMm - circle.centre.uMm },
  fromRad: 0,
  sweepRad,
  lengthMm: circle.radiusMm * Math.abs(sweepRad),
  across: 'even',
})

/** Length from one contact to the next; where y changes evenly along an arc, that of the unrolled straight line. */
export const touchLengthMm = (from: Touch, to: Touch): number => {
  const arc = from.arcToNext
  if (arc === null) return pointDistanceMm(from.point, to.point)
  const arcMm =
    arc.lengthMm ?? ellipseArcMm(directionLength(arc.first), directionLength(arc.second), arc.fromRad)
  const acrossMm = arc.across === 'own' ? 0 : to.point.yMm - from.point.yMm
  return Math.sqrt(arcMm * arcMm + acrossMm * acrossMm)
}

/** A path whose length and drawn points are worked out when somebody asks for them: most paths are only looked at for an angle. */
class TautPath implements StrapPath {
  readonly strap: StrapId
  readonly contacts: readonly [Touch, ...Touch[]]
  readonly effectiveAnchor: PointMm
  readonly bodyContact: PointMm

  constructor(strap: StrapId, contacts: readonly [Touch, ...Touch[]]) {
    let index = 0
    let onBody = contacts[0]
    let outside = onBody
    while (index < contacts.length && onBody.on !== 'body' && onBody.on !== 'buckle') {
      outside = onBody
      index += 1
      onBody = contacts[index] ?? onBody
    }
    this.strap = strap
    this.contacts = contacts
    this.effectiveAnchor = outside.point
    this.bodyContact = onBody.point
  }

  get lengthMm(): number {
    let lengthMm = 0
    let before: Touch | null = null
    for (const touch of this.contacts) {
      if (before !== null) lengthMm += touchLengthMm(before, touch)
      before = touch
    }
    return lengthMm
  }

  get polyline(): readonly PointMm[] {
    const points: PointMm[] = []
    let before: Touch | null = null
    for (const touch of this.contacts) {
      if (before?.arcToNext) addArcPoints(points, before.point, touch.point, before.arcToNext)
      points.push(touch.point)
      before = touch
    }
    return points
  }
}

/** The path through contacts in order from the anchor on, at least one of them `body` or `buckle`. */
export const strapPath = (strap: StrapId, touches: readonly [Touch, ...Touch[]]): StrapPath =>
  new TautPath(strap, touches)
