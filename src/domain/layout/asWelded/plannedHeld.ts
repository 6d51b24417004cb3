import type { PointMm } from '../../geometry/point'
import type { Tube } from '../../geometry/tube'
import type { MeasuredAnchor } from '../../measure/asWeldedRecord'
import { heldPoint } from '../../shop/tape/heldPoint'

/** Where the tape was to be held by the plan that an entry was begun with, from the datum; older records leave it to the bars of now. */
export const plannedHeldPoint = (
  { planned, plannedHeld }: Pick<MeasuredAnchor, 'planned' | 'plannedHeld'>,
  tubes: readonly Tube[],
): PointMm => plannedHeld ?? heldPoint(planned, tubes)
