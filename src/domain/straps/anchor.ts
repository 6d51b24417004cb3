import type { PointMm } from '../geometry/point'
import type { StrapId } from './strap'

/** A welded or bolted tab with a hole for the strap's end fitting. */
export interface TabMount {
  readonly kind: 'tab'
  /** Centre of the hole in the middle of the plate, from the datum. */
  readonly point: PointMm
  /** Turn of the tab's plane about the vertical, from fore-and-aft; + turns the rearward edge to the occupant's right. */
  readonly planDeg: number
  /** Lean of the plane from upright (0) to flat (±90), about its own fore-and-aft line; + leans the normal on its right side upward. */
  readonly leanDeg: number
  readonly thicknessMm: number
  readonly holeDiameterMm: number
  readonly shear: 'single' | 'double'
  /** The tube it is welded to; the tab moves with that tube. Null: to the floor or another structure. */
  readonly tubeId: string | null
}

/** A strap looped round a tube through a three-bar slide. */
export interface WrapMount {
  readonly kind: 'wrap'
  readonly tubeId: string
  /** On the tube's centre line where the middle of the webbing lies, from the datum. */
  readonly point: PointMm
  /** Whether the strap reaches the tube over its top or under its bottom. */
  readonly over: 'over' | 'under'
  /** Welded guide hoops keep the loop from sliding along the tube. */
  readonly guideHoops: boolean
}

export interface Anchor {
  readonly id: string
  readonly strap: StrapId
  readonly mount: TabMount | WrapMount
}
