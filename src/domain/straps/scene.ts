import type { SeatPose } from '../body/pose'
import type { PosedBody } from '../body/posedBody'
import type { Tube } from '../geometry/tube'
import type { Anchor } from './anchor'
import type { Seat } from './seat'
import type { Belt } from './strap'

/** All that the straps of one place depend on in one sitting. */
export interface StrapScene {
  readonly seat: Seat
  readonly pose: SeatPose
  readonly body: PosedBody
  readonly belt: Belt
  readonly anchors: readonly Anchor[]
  readonly tubes: readonly Tube[]
}
