import { planePoint } from '../geometry/plane'
import type { Direction, PointMm } from '../geometry/point'
import { HIP_AHEAD_OF_BACK_MM } from './leg'
import type { Body } from './occupant'
import type { ChestSection } from './posedBody'

/** How far up from the hip to the shoulder the chest is deepest, as a share. Source: our judgement by eye, as the drawn trunk has it. */
const CHEST_UP = 0.64

/** Half the height of the chest's curve as a share of hip-to-shoulder length. Source: our judgement. */
const CHEST_ALONG = 0.25

/** The back of the chest ahead of the compressed back of the seat, mm. Source: our judgement by eye, as the drawn trunk has it. */
const CHEST_BACK_MM = 10

/**
 * The same section in the torso frame (u rearward, v up the torso line from the hip), where its half-axes lie along the axes.
 */
export const chestInTorsoFrame = (body: Body): ChestSection => {
  const acrossMm = body.chestDepthMm / 2
  return {
    centre: planePoint(HIP_AHEAD_OF_BACK_MM - CHEST_BACK_MM - acrossMm, CHEST_UP * body.hipToShoulderMm),
    acrossMm,
    alongMm: CHEST_ALONG * body.hipToShoulderMm,
  }
}

/**
 * The chest's section in the side plane, `up` the torso line: half as deep as the chest, its rear end 138 mm behind the torso line
 * (the hip's 148 mm ahead of the seat's back less 10 mm), so that its front is where the drawn trunk's is.
 */
export const chestOf = (body: Body, hip: PointMm, up: Direction): ChestSection => {
  const section = chestInTorsoFrame(body)
  const { uMm: rearMm, vMm: upMm } = section.centre
  return {
    ...section,
    centre: planePoint(hip.xMm + upMm * up.x + rearMm * up.z, hip.zMm + upMm * up.z - rearMm * up.x),
  }
}
