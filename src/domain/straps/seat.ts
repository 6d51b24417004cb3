import type { PointMm } from '../geometry/point'
import type { StrapId } from './strap'

/**
 * Which surface of the shell a slot is cut in: the backrest (long side across the seat), a side wall (seen full-on in side
 * elevation) or the cushion (long side across the seat).
 */
export type SlotFace = 'back' | 'side' | 'cushion'

/** A rectangular opening in the seat shell. Coordinates are in the seat frame (see body/pose.ts), origin at the hip point. */
export interface Slot {
  readonly id: string
  /** The straps that pass through it; a strap passes at most one slot. */
  readonly straps: readonly StrapId[]
  readonly face: SlotFace
  readonly centre: PointMm
  /** Long side. Along seat y for `back` and `cushion`, along seat x for `side`, before turning. */
  readonly lengthMm: number
  /** Short side. Along seat z for `back` and `side`, along seat x for `cushion`, before turning. */
  readonly heightMm: number
  /** Turn of the rectangle in its own face, degrees: from seat y towards z (back), x towards z (side), y towards x (cushion). */
  readonly turnDeg: number
}

interface SeatOutlinePoint {
  readonly xMm: number
  readonly zMm: number
}

interface SeatPlanPoint {
  readonly xMm: number
  readonly yMm: number
}

/** A seat as fitted at one place. Everything but the hip point is in the seat frame and turns with the recline. */
export interface Seat {
  /** The hip point with the slide at 0, from the datum. */
  readonly hipPoint: PointMm
  /** Height of that hip point above the compressed cushion; an occupant whose own hip height differs sits higher or lower. */
  readonly hipHeightMm: number
  /** Torso line from vertical, + rearward, as drawn. */
  readonly reclineDeg: number
  /** Travel from the drawn position, both ≥ 0; 0 and 0 is a fixed seat. */
  readonly slide: { readonly forwardMm: number; readonly rearwardMm: number }
  /** Recline range that holds the drawn recline; equal ends mean a fixed back. */
  readonly reclineRange: { readonly uprightDeg: number; readonly reclinedDeg: number }
  /** Closed outline of the shell in side elevation, seat frame. */
  readonly sideOutline: readonly SeatOutlinePoint[]
  /** Closed outline of the shell seen from above, seat frame at recline 0. */
  readonly topOutline: readonly SeatPlanPoint[]
  /** Upper rim of the backrest, over which a shoulder strap without a slot passes. */
  readonly backrestRim: SeatOutlinePoint
  /** Thickness of the shell where its slots are cut, half of it on each side of their middle; 0, a thin sheet, when it is not said. */
  readonly shellThicknessMm?: number
  readonly slots: readonly Slot[]
}
