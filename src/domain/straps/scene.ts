import { vehiclePoint, type SeatPose } from '../body/pose'
import type { PosedBody } from '../body/posedBody'
import { projected, type PlanePointMm } from '../geometry/plane'
import type { Tube } from '../geometry/tube'
import { atan2Deg, wrappedDeg } from '../units/angle'
import type { Anchor } from './anchor'
import type { Seat, Slot, SlotFace } from './seat'
import { slotCorners, slotOf } from './slotGate'
import { strapFamily, type Belt, type StrapId } from './strap'

/** All that the straps of one place depend on in one sitting. */
export interface StrapScene {
  readonly seat: Seat
  readonly pose: SeatPose
  readonly body: PosedBody
  readonly belt: Belt
  readonly anchors: readonly Anchor[]
  readonly tubes: readonly Tube[]
}

/**
 * What a strap has to pass through or over on its way from the anchor to the body, in the side plane. Turning from `lower` to
 * `upper` is anticlockwise seen from the body (u right, v up): for a shoulder strap they are the lower and upper edge, for a
 * slot in the cushion the front and rear edge.
 */
export interface Gate {
  readonly on: 'slot' | 'rim'
  /** The surface the slot is cut in; null for the rim. */
  readonly face: SlotFace | null
  readonly lower: PlanePointMm
  /** Null: open above, the strap passes over the rim. */
  readonly upper: PlanePointMm | null
  /** Where the middle of the webbing may lie across the seat; null where nothing limits it. */
  readonly yMinMm: number | null
  readonly yMaxMm: number | null
}

/** The point a slot is looked at from: the middle of the shoulder arc for shoulder straps, the hip point for the others. */
const viewpoint = (body: PosedBody, strap: StrapId): PlanePointMm =>
  strapFamily(strap) === 'shoulder' ? body.shoulderArc.centre : projected(body.hip, 'side')

/**
 * The two ends of a slot as the body sees it in the side plane: the corners at the two extreme angles. Null when the viewpoint
 * lies within the opening; then the slot cannot deflect the strap.
 */
const visibleEnds = (
  corners: readonly PlanePointMm[],
  from: PlanePointMm,
  towards: PlanePointMm,
): { readonly lower: PlanePointMm; readonly upper: PlanePointMm } | null => {
  const middleDeg = atan2Deg(towards.vMm - from.vMm, towards.uMm - from.uMm)
  const seen = corners
    .map((corner) => ({
      corner,
      angleDeg: wrappedDeg(atan2Deg(corner.vMm - from.vMm, corner.uMm - from.uMm) - middleDeg),
    }))
    .sort((a, b) => a.angleDeg - b.angleDeg)
  const first = seen.at(0)
  const last = seen.at(-1)
  if (first === undefined || last === undefined || last.angleDeg - first.angleDeg >= 180) return null
  return { lower: first.corner, upper: last.corner }
}

/** The lateral extent of a slot left for the middle of the webbing; where the webbing is wider than the slot, the slot's middle. */
const lateralLimits = (
  slot: Slot,
  scene: StrapScene,
  strap: StrapId,
): { readonly yMinMm: number | null; readonly yMaxMm: number | null } => {
  if (slot.face === 'side') return { yMinMm: null, yMaxMm: null }
  const ys = slotCorners(slot).map((corner) => scene.pose.hip.yMm + corner.yMm)
  const halfWebbingMm = scene.belt.webbingMm[strapFamily(strap)] / 2
  const low = Math.min(...ys) + halfWebbingMm
  const high = Math.max(...ys) - halfWebbingMm
  return low <= high ? { yMinMm: low, yMaxMm: high } : { yMinMm: (low + high) / 2, yMaxMm: (low + high) / 2 }
}

/**
 * The gate of a strap: its slot or, for a shoulder strap without one, the upper rim of the backrest. Null when there is none.
 * A side-wall slot limits the strap in side view only: where along the wall it passes follows from the straight plan line.
 */
export const gateOf = (scene: StrapScene, strap: StrapId): Gate | null => {
  const slot = slotOf(scene.seat, strap)
  if (slot === null) {
    if (strapFamily(strap) !== 'shoulder') return null
    const rim = vehiclePoint(scene.pose, { ...scene.seat.backrestRim, yMm: 0 })
    return { on: 'rim', face: null, lower: projected(rim, 'side'), upper: null, yMinMm: null, yMaxMm: null }
  }
  const corners = slotCorners(slot).map((corner) => projected(vehiclePoint(scene.pose, corner), 'side'))
  const middle = projected(vehiclePoint(scene.pose, slot.centre), 'side')
  const ends = visibleEnds(corners, viewpoint(scene.body, strap), middle)
  return ends && { on: 'slot', face: slot.face, ...ends, ...lateralLimits(slot, scene, strap) }
}
