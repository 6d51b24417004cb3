import type { PointMm } from '../geometry/point'
import type { WeldTolerance } from '../rules/tolerance'
import type { Mount } from '../straps/anchor'
import type { StrapId } from '../straps/strap'
import type { Measurement, Readings } from './measurement'

/** One anchor as it was measured on the car, beside the mount that was planned when it was measured. */
export interface MeasuredAnchor {
  readonly placeId: string
  readonly anchorId: string
  /** The strap it holds, so that it can be named when the layout has no such anchor any more. */
  readonly strap: StrapId
  /** As planned when the anchor was taken into the record; a later change of the plan does not reach it. */
  readonly planned: Mount
  /**
   * Of a wrap: where on the outside of its bar the tape was to be held by the plan of then, from the datum. Left out for other mounts, whose
   * own point it is, and by older records: then the bars as they are now tell it.
   */
  readonly plannedHeld?: PointMm
  /** Null while nothing was measured. */
  readonly measurement: Measurement | null
  /** Turn of a tab's plane in plan and its lean, as `TabMount`; left out where they were not measured: then the planned ones count. */
  readonly planDeg?: Readings
  readonly leanDeg?: Readings
}

/** Who closed a record and when. A signed record is never changed; what is measured later goes into another. */
export interface Signature {
  readonly name: string
  /** ISO 8601 calendar date. */
  readonly date: string
  /** What the layout allowed then, which the deviations are held against for good; left out where nothing was typed. */
  readonly tolerance?: WeldTolerance
  /** The rule set that the car was held against then. */
  readonly ruleSetId: string
}

/** What was really welded, measured once. The planned layout is never changed by it. */
export interface AsWeldedRecord {
  readonly id: string
  readonly name: string
  /** ISO 8601 calendar date of the measuring, or empty. */
  readonly date: string
  readonly measuredBy: string
  readonly notes: string
  /** Revision of the mount sheet that was welded from. */
  readonly plannedRevision: string
  /** The variant that was drawn when it was begun, as it was called then; left out where the car had only one. */
  readonly plannedVariant?: { readonly id: string; readonly name: string }
  /** At most one for each anchor. */
  readonly anchors: readonly MeasuredAnchor[]
  /** Left out while the record is open. */
  readonly signed?: Signature
}
