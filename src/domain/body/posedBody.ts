import type { CircleMm } from '../geometry/circle'
import type { PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'

/** A part of the body as the elevations draw it; a closed outline in mm of that drawn plane. */
export interface BodyOutline {
  readonly part: 'trunk' | 'thigh' | 'shank' | 'helmet' | 'shoulders' | 'hips'
  readonly points: readonly PlanePointMm[]
}

/**
 * The front of the chest as a lateral elliptic cylinder over which the shoulder straps run down: its section in the side plane, turned
 * with the torso line. Half-axes of 0 stand for a chest that nothing touches.
 */
export interface ChestSection {
  readonly centre: PlanePointMm
  /** Half-axis square to the torso line. */
  readonly acrossMm: number
  /** Half-axis along the torso line. */
  readonly alongMm: number
}

/** A piece of a person that is surely body: everything within `radiusMm` of the straight line between two points. */
export interface BodyCore {
  readonly part: 'pelvis' | 'belly' | 'chest' | 'shoulders' | 'thigh'
  readonly from: PointMm
  readonly to: PointMm
  readonly radiusMm: number
}

/** One occupant in one sitting, in the vehicle frame. */
export interface PosedBody {
  /** The occupant's own hip point in the mid-plane: the seat's, shifted up the torso line by the hip height difference. */
  readonly hip: PointMm
  readonly reclineDeg: number
  /** Top of the shoulder where the strap bears, each side: on the shoulder arc, straight up the torso line. */
  readonly shoulderPoint: { readonly left: PointMm; readonly right: PointMm }
  /** Side-plane circle over which the shoulder strap lies. */
  readonly shoulderArc: CircleMm
  readonly chest: ChestSection
  /** Front upper hip-bone point (ASIS), each side. */
  readonly frontHipBone: { readonly left: PointMm; readonly right: PointMm }
  /** Side-plane circle about the hip point on which the lap strap lies. */
  readonly lapArc: CircleMm
  /** The lowest angle above horizontal, seen from the hip point forward, at which the lap strap can lie: the thigh is below it. */
  readonly lapLowestDeg: number
  /** Side-plane circle about the hip point round which an anti-submarine strap passes the groin. */
  readonly groinArc: CircleMm
  readonly hipHalfBreadthMm: number
  /** What of the person no tube can be in; without arms, shanks and head. */
  readonly core: readonly BodyCore[]
  readonly helmet: { readonly centre: PointMm; readonly radiusMm: number }
  readonly outlines: { readonly side: readonly BodyOutline[]; readonly top: readonly BodyOutline[] }
}
