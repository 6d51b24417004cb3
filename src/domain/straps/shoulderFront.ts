import type { PosedBody } from '../body/posedBody'
import {
  circleEllipseTangent,
  ellipseArcMm,
  type EllipseMm,
  ellipseParameter,
  ellipseTangentPoint,
  isEllipseCut,
} from '../geometry/ellipse'
import { planeDistanceMm, projected, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { tangentPoint } from '../geometry/tangent'
import { cosDeg, sinDeg } from '../units/angle'
import { leftOfLineMm } from './aroundArc'
import { circleArc, type Touch, type TouchArc } from './strapPath'

type ChestArc = TouchArc & { readonly lengthMm: number }

/** The front part of the shoulder straps in the side plane, from where they leave the shoulder arc to their buckle. */
export interface FrontRun {
  readonly buckle: PointMm
  readonly leaves: PlanePointMm
  /** Where the straps lie on the chest; null when they pass it straight. */
  readonly chest: {
    readonly on: PlanePointMm
    readonly off: PlanePointMm
    readonly arc: ChestArc
    /** Length in the side plane from the shoulder arc to the chest. */
    readonly beforeMm: number
    readonly section: EllipseMm
  } | null
  /** Length in the side plane from the shoulder arc to the buckle. */
  readonly lengthMm: number
}

const chestEllipse = ({ chest, reclineDeg }: PosedBody): EllipseMm => ({
  centre: chest.centre,
  aMm: chest.acrossMm,
  bMm: chest.alongMm,
  // The half-axis across points rearward and, reclined, down.
  cos: cosDeg(reclineDeg),
  sin: -sinDeg(reclineDeg),
})

const chestArc = (ellipse: EllipseMm, on: PlanePointMm, off: PlanePointMm): ChestArc | null => {
  const { centre, aMm, bMm, cos, sin } = ellipse
  const turn = 2 * Math.PI
  const fromRad = (ellipseParameter(ellipse, on) + turn) % turn
  const toRad = (ellipseParameter(ellipse, off) + turn) % turn
  const sweepRad = (toRad - fromRad + turn) % turn
  // More than half round would be up the back: the chest is not in the strap's way then.
  if (sweepRad > Math.PI) return null
  return {
    middle: { xMm: centre.uMm, yMm: 0, zMm: centre.vMm },
    first: { x: aMm * cos, y: 0, z: aMm * sin },
    second: { x: -bMm * sin, y: 0, z: bMm * cos },
    fromRad,
    sweepRad,
    lengthMm: ellipseArcMm(aMm, bMm, toRad) - ellipseArcMm(aMm, bMm, fromRad),
    across: 'even',
  }
}

/**
 * Over the shoulder arc and, where the straight line to the buckle would cut it, over the chest. Null when the buckle is in the
 * shoulder arc. Walked down the front the body lies on the left.
 */
export const frontRun = (body: PosedBody, buckle: PointMm): FrontRun | null => {
  const end = projected(buckle, 'side')
  const straight = tangentPoint(body.shoulderArc, end, 'right')
  if (straight === null) return null
  const direct: FrontRun = {
    buckle,
    leaves: straight,
    chest: null,
    lengthMm: planeDistanceMm(straight, end),
  }
  const ellipse = chestEllipse(body)
  if (!isEllipseCut(ellipse, straight, end)) return direct
  const off = ellipseTangentPoint(ellipse, end, 'right')
  const upper = off && circleEllipseTangent(body.shoulderArc, ellipse, off)
  const arc = upper && off && chestArc(ellipse, upper.onEllipse, off)
  if (upper === null || off === null || arc === null) return direct
  const beforeMm = planeDistanceMm(upper.onCircle, upper.onEllipse)
  return {
    buckle,
    leaves: upper.onCircle,
    chest: { on: upper.onEllipse, off, arc, beforeMm, section: ellipse },
    lengthMm: beforeMm + arc.lengthMm + planeDistanceMm(off, end),
  }
}

/**
 * How far a strap pulled straight from `from`, which would touch the shoulder arc at `onArc`, on to the buckle or to the chest where that
 * is in the way, passes clear of the arc, mm ≥ 0; null when it bears on it: it leaves the arc's front ahead of where it meets its rear.
 */
export const clearOfShoulderMm = (
  body: PosedBody,
  from: PlanePointMm,
  onArc: PlanePointMm,
  { chest, buckle, leaves }: FrontRun,
): number | null => {
  const { centre, radiusMm } = body.shoulderArc
  if (chest === null) {
    const clearMm = leftOfLineMm(from, projected(buckle, 'side'), centre) - radiusMm
    return clearMm >= 0 ? clearMm : null
  }
  if (sweepRad(centre, onArc, leaves) <= Math.PI) return null
  const overChest = ellipseTangentPoint(chest.section, from, 'left') ?? chest.on
  return Math.max(0, leftOfLineMm(from, overChest, centre) - radiusMm)
}

const contactAt = (at: PlanePointMm, yMm: number, arcToNext: TouchArc | null): Touch => ({
  on: 'body',
  point: { xMm: at.uMm, yMm, zMm: at.vMm },
  bendDeg: arcToNext === null ? 0 : (Math.abs(arcToNext.sweepRad) * 180) / Math.PI,
  arcToNext,
})

/** Adds the contacts from the rear touching point of the shoulder arc to the buckle; y changes evenly from the arc's front on. */
export const addFrontTouches = (
  touches: Touch[],
  body: PosedBody,
  rear: PointMm,
  { leaves, chest, lengthMm, buckle }: FrontRun,
): void => {
  const arc = body.shoulderArc
  const at = projected(rear, 'side')
  touches.push(contactAt(at, rear.yMm, circleArc(arc, at, sweepRad(arc.centre, at, leaves))))
  touches.push(contactAt(leaves, rear.yMm, null))
  if (chest !== null) {
    const perMm = (buckle.yMm - rear.yMm) / lengthMm
    touches.push(contactAt(chest.on, rear.yMm + chest.beforeMm * perMm, chest.arc))
    touches.push(contactAt(chest.off, rear.yMm + (chest.beforeMm + chest.arc.lengthMm) * perMm, null))
  }
  touches.push({ on: 'buckle', point: buckle, bendDeg: 0, arcToNext: null })
}

/** Anticlockwise angle between two points as seen from a third, radians in [0, 2π). */
const sweepRad = (centre: PlanePointMm, from: PlanePointMm, to: PlanePointMm): number => {
  const a = { u: from.uMm - centre.uMm, v: from.vMm - centre.vMm }
  const b = { u: to.uMm - centre.uMm, v: to.vMm - centre.vMm }
  const turn = Math.atan2(a.u * b.v - a.v * b.u, a.u * b.u + a.v * b.v)
  return turn < 0 ? turn + 2 * Math.PI : turn
}

/** Adds the contacts up to the top of the shoulder, for a strap whose buckle nobody knows. */
export const addTopTouches = (touches: Touch[], body: PosedBody, rear: PointMm, top: PointMm): void => {
  const arc = body.shoulderArc
  const at = projected(rear, 'side')
  const end = projected(top, 'side')
  const upRad = sweepRad(arc.centre, at, end)
  // A strap that reaches the arc ahead of its top turns back to it in name only: the top is then the arc's contact itself.
  if (upRad > Math.PI) {
    touches.push(contactAt(at, rear.yMm, null))
    return
  }
  touches.push(contactAt(at, rear.yMm, circleArc(arc, at, upRad)), contactAt(end, rear.yMm, null))
}
