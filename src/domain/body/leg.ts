import type { CircleMm } from '../geometry/circle'
import { planePoint, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { cosDeg, sinDeg } from '../units/angle'
import type { Body } from './occupant'

/**
 * The thigh's rise from hip to knee in a seat, and the shank's fall from knee to ankle. They are the same at every recline: the
 * feet stay where they are. Source: our judgement; the drawn leg is an illustration, except for the thigh's top line, which
 * bounds where a lap strap can lie.
 */
export const THIGH_RISE_DEG = 10
const SHANK_FALL_DEG = 50

/** Hip joint ahead of the compressed back, mm. Source: 150 and 147 in the published models of two frontal dummies; their middle. */
export const HIP_AHEAD_OF_BACK_MM = 148

/** Half thickness of a knee and of an ankle as shares of half the thigh's. Source: our judgement by eye, for the drawing only. */
const KNEE_SHARE = 0.72
const ANKLE_SHARE = 0.5

/** One leg in side view, as circles to be joined. */
export interface Leg {
  readonly thighTop: CircleMm
  readonly knee: CircleMm
  readonly ankle: CircleMm
}

/**
 * The leg of a seated body. The thigh is as thick as its clearance above the cushion and its top is clearance − hip height
 * square above the hip point; it reaches as far as buttock-to-knee length says, less the hip's distance from the back.
 */
export const legOf = (body: Body, hip: PointMm): Leg => {
  const halfThighMm = body.thighClearanceMm / 2
  const kneeRadiusMm = halfThighMm * KNEE_SHARE
  const along: PlanePointMm = planePoint(-cosDeg(THIGH_RISE_DEG), sinDeg(THIGH_RISE_DEG))
  // Square to the thigh, upward.
  const across: PlanePointMm = planePoint(sinDeg(THIGH_RISE_DEG), cosDeg(THIGH_RISE_DEG))
  const placed = (alongMm: number, acrossMm: number): PlanePointMm =>
    planePoint(
      hip.xMm + along.uMm * alongMm + across.uMm * acrossMm,
      hip.zMm + along.vMm * alongMm + across.vMm * acrossMm,
    )
  const topMm = body.thighClearanceMm - body.hipHeightMm
  const kneeAlongMm = Math.max(halfThighMm, body.buttockKneeMm - HIP_AHEAD_OF_BACK_MM - kneeRadiusMm)
  // The knee keeps the thigh's top line, so that the line by which the lap strap is bounded is the one drawn.
  const knee = placed(kneeAlongMm, topMm - kneeRadiusMm)
  const shankMm = Math.max(kneeRadiusMm, body.kneeHeightMm - 2 * kneeRadiusMm)
  return {
    thighTop: { centre: placed(0, topMm - halfThighMm), radiusMm: halfThighMm },
    knee: { centre: knee, radiusMm: kneeRadiusMm },
    ankle: {
      centre: planePoint(
        knee.uMm - shankMm * cosDeg(SHANK_FALL_DEG),
        knee.vMm - shankMm * sinDeg(SHANK_FALL_DEG),
      ),
      radiusMm: halfThighMm * ANKLE_SHARE,
    },
  }
}

/** How far the toes reach ahead of the ankle, as a share of knee height. Source: our judgement by eye, for the drawing only. */
const TOE_SHARE = 0.33

/**
 * Shank and foot in side view, one closed outline: round the knee from the calf to the shin, down the shin, along the foot to the
 * toes and back under the sole. `d` runs down the shank from the knee, `f` square to it, forward along the foot.
 */
export const shankOutline = (leg: Leg, kneeHeightMm: number): readonly PlanePointMm[] => {
  const { knee, ankle } = leg
  const kneeMm = knee.radiusMm * 0.9
  const ankleMm = ankle.radiusMm
  const lengthMm = Math.hypot(ankle.centre.uMm - knee.centre.uMm, ankle.centre.vMm - knee.centre.vMm)
  const toeMm = Math.max(2 * ankleMm, TOE_SHARE * kneeHeightMm)
  const placed = (dMm: number, fMm: number): PlanePointMm =>
    planePoint(
      knee.centre.uMm - cosDeg(SHANK_FALL_DEG) * dMm - sinDeg(SHANK_FALL_DEG) * fMm,
      knee.centre.vMm - sinDeg(SHANK_FALL_DEG) * dMm + cosDeg(SHANK_FALL_DEG) * fMm,
    )
  const roundKnee = Array.from({ length: 9 }, (_, step) => {
    const angleDeg = 180 + (step * 180) / 8
    return placed(kneeMm * sinDeg(angleDeg), kneeMm * cosDeg(angleDeg))
  })
  const soleMm = lengthMm + 1.1 * ankleMm
  return [
    ...roundKnee,
    placed(lengthMm - 0.9 * ankleMm, 0.9 * ankleMm),
    placed(lengthMm - 0.3 * ankleMm, 1.3 * ankleMm),
    placed(lengthMm + 0.3 * ankleMm, toeMm - 0.3 * ankleMm),
    placed(lengthMm + 0.6 * ankleMm, toeMm),
    placed(soleMm, toeMm - 0.1 * ankleMm),
    placed(soleMm, -0.9 * ankleMm),
    placed(lengthMm + 0.6 * ankleMm, -1.2 * ankleMm),
    placed(lengthMm - 0.4 * ankleMm, -0.9 * ankleMm),
  ]
}
