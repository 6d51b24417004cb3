import type { SeatPose } from '../body/pose'
import type { Seat } from './seat'

/**
 * The seat frame of one sitting. The slide moves the seat along the floor (`slideMm` from the drawn position, + rearward);
 * the recline turns the shell about its hip point, so the hip point does not move when the seat is reclined.
 */
export const seatPose = (seat: Seat, slideMm: number, reclineDeg: number): SeatPose => ({
  hip: { ...seat.hipPoint, xMm: seat.hipPoint.xMm + slideMm },
  reclineDeg,
})
