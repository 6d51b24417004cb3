import type { PointMm } from '../geometry/point'
import { cosDeg, sinDeg } from '../units/angle'

/**
 * Where the seat frame is in one sitting: its origin (the seat's hip point) in the vehicle frame and the recline of the
 * torso line from vertical (+ rearward). Seat-frame axes: x square to the torso line and rearward, y right, z up the torso line.
 */
export interface SeatPose {
  readonly hip: PointMm
  readonly reclineDeg: number
}

/** A seat-frame point in the vehicle frame. Rotation by the recline about the lateral axis through the hip point. */
export const vehiclePoint = (pose: SeatPose, seatPoint: PointMm): PointMm => {
  const c = cosDeg(pose.reclineDeg)
  const s = sinDeg(pose.reclineDeg)
  return {
    xMm: pose.hip.xMm + seatPoint.xMm * c + seatPoint.zMm * s,
    yMm: pose.hip.yMm + seatPoint.yMm,
    zMm: pose.hip.zMm - seatPoint.xMm * s + seatPoint.zMm * c,
  }
}

/** A vehicle point in the seat frame: the inverse of `vehiclePoint`. */
export const seatPoint = (pose: SeatPose, point: PointMm): PointMm => {
  const c = cosDeg(pose.reclineDeg)
  const s = sinDeg(pose.reclineDeg)
  const dxMm = point.xMm - pose.hip.xMm
  const dzMm = point.zMm - pose.hip.zMm
  return { xMm: dxMm * c - dzMm * s, yMm: point.yMm - pose.hip.yMm, zMm: dxMm * s + dzMm * c }
}
