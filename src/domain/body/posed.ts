import { planePoint } from '../geometry/plane'
import { pointSum, type Direction, type PointMm } from '../geometry/point'
import { asinDeg, cosDeg, sinDeg } from '../units/angle'
import { chestOf } from './chest'
import { bodyCore } from './core'
import { THIGH_RISE_DEG } from './leg'
import { outlinesOf } from './outlines'
import type { Body } from './occupant'
import type { SeatPose } from './pose'
import type { PosedBody } from './posedBody'

/**
 * Front hip bone from the hip joint in the standing pelvis, as shares of the breadth between the two front hip bones: ahead and
 * above. Source: Bell, Pedersen and Brand 1990 (J. Biomech. 23), hip joint centre regression as printed in published code; mean
 * error about 19 mm.
 */
const BELL_AHEAD = 0.19
const BELL_ABOVE = 0.3

/** Where the front hip bone lies from the hip point in the side plane, mm. */
export interface HipBoneOffset {
  readonly aheadMm: number
  readonly aboveMm: number
}

/**
 * Front hip bone from the hip joint with the pelvis leaning `pelvisTiltDeg` rearward from its standing attitude.
 * Formula: the standing offset (x ahead, y above) turned: ahead = x·cos φ − y·sin φ, above = x·sin φ + y·cos φ. Source: plane rotation.
 */
export const hipBoneOffset = (frontHipBoneBreadthMm: number, pelvisTiltDeg: number): HipBoneOffset => {
  const xMm = BELL_AHEAD * frontHipBoneBreadthMm
  const yMm = BELL_ABOVE * frontHipBoneBreadthMm
  const c = cosDeg(pelvisTiltDeg)
  const s = sinDeg(pelvisTiltDeg)
  return { aheadMm: xMm * c - yMm * s, aboveMm: xMm * s + yMm * c }
}

/**
 * The lowest angle above horizontal, forward of the hip point, at which a lap strap can lie on an arc of `lapRadiusMm`: lower
 * down the thigh is in the way. Range [0°, 90°]; 90° when the thigh is thicker than the arc is high.
 * Formula: the thigh's top line rises forward at THIGH_RISE_DEG, t = thigh clearance − hip height square above the hip point;
 * the arc crosses it where R·sin(θ − rise) = t. Source: derived here.
 */
export const lapLowestDeg = (body: Body, lapRadiusMm: number): number => {
  const thighTopMm = body.thighClearanceMm - body.hipHeightMm
  if (lapRadiusMm <= 0) return 90
  return Math.min(90, Math.max(0, THIGH_RISE_DEG + asinDeg(thighTopMm / lapRadiusMm)))
}

/** The two sides of the body at one place of the mid-plane; left is −y. */
const pair = (middle: PointMm, breadthMm: number): { readonly left: PointMm; readonly right: PointMm } => ({
  left: { ...middle, yMm: middle.yMm - breadthMm / 2 },
  right: { ...middle, yMm: middle.yMm + breadthMm / 2 },
})

/** A body in the seat without the outlines that only drawings need: all that straps and rules look at. */
type StrappedBody = Omit<PosedBody, 'outlines'>

/**
 * What straps touch of a body in the seat. The trunk and the head lie along the torso line; the pelvis keeps its tilt and the
 * thighs their rise at every recline. `seatHipHeightMm` is the hip height the seat's own hip point was drawn for.
 */
export const strappedBody = (body: Body, pose: SeatPose, seatHipHeightMm: number): StrappedBody => {
  const { reclineDeg } = pose
  const up: Direction = { x: sinDeg(reclineDeg), y: 0, z: cosDeg(reclineDeg) }
  const hip = pointSum(pose.hip, up, body.hipHeightMm - seatHipHeightMm)
  const shoulderTop = pointSum(hip, up, body.hipToShoulderMm)
  const shoulderCentre = pointSum(hip, up, body.hipToShoulderMm - body.shoulderArcRadiusMm)
  const head = pointSum(hip, up, body.headCentreAboveHipMm)
  const bone = hipBoneOffset(body.frontHipBoneBreadthMm, body.pelvisTiltDeg)
  const boneMiddle: PointMm = { ...hip, xMm: hip.xMm - bone.aheadMm, zMm: hip.zMm + bone.aboveMm }
  const hipInPlane = planePoint(hip.xMm, hip.zMm)
  const lapRadiusMm = Math.hypot(bone.aheadMm, bone.aboveMm) + body.lapTissueMm

  const rounded = {
    hip,
    shoulderPoint: pair(shoulderTop, body.shoulderStrapSpacingMm),
    shoulderArc: {
      centre: planePoint(shoulderCentre.xMm, shoulderCentre.zMm),
      radiusMm: body.shoulderArcRadiusMm,
    },
    chest: chestOf(body, hip, up),
    lapArc: { centre: hipInPlane, radiusMm: lapRadiusMm },
    hipHalfBreadthMm: body.hipBreadthMm / 2,
  }

  return {
    ...rounded,
    reclineDeg,
    frontHipBone: pair(boneMiddle, body.frontHipBoneBreadthMm),
    lapLowestDeg: lapLowestDeg(body, lapRadiusMm),
    // Below the hip point the flesh reaches down to the compressed cushion; that ahead of it is no thicker is our judgement.
    groinArc: { centre: hipInPlane, radiusMm: body.hipHeightMm },
    core: bodyCore(body, rounded),
    helmet: { centre: head, radiusMm: body.helmetRadiusMm },
  }
}

/** A body in the seat, with the outlines to draw it by: made when somebody draws it and then kept, since most are never drawn. */
export const posedBody = (body: Body, pose: SeatPose, seatHipHeightMm: number): PosedBody => {
  const strapped = strappedBody(body, pose, seatHipHeightMm)
  let drawn: PosedBody['outlines'] | null = null
  return {
    ...strapped,
    get outlines() {
      return (drawn ??= outlinesOf(body, strapped))
    },
  }
}
