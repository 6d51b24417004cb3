import { type SeatPose, vehiclePoint } from '../../body/pose'
import { type Elevation, type PlanePointMm, planePoint, projected } from '../../geometry/plane'
import { pointMm } from '../../geometry/point'
import type { Seat, Slot } from '../../straps/seat'
import { slotCorners } from '../../straps/slotGate'
import type { Place } from '../document/layout'
import { handleId } from '../edit/handles'
import type { LineStyle, Primitive } from './primitive'

/**
 * The shell as the elevation shows it. Side: turned with the recline. Top: the plan outline is drawn at recline 0 (its definition)
 * and only moves with the hip point; the side elevation is the one to measure a reclined shell in.
 */
const seatOutline = (seat: Seat, pose: SeatPose, elevation: Elevation): readonly PlanePointMm[] =>
  elevation === 'side'
    ? seat.sideOutline.map((corner) =>
        projected(vehiclePoint(pose, pointMm(corner.xMm, 0, corner.zMm)), elevation),
      )
    : seat.topOutline.map((corner) => planePoint(pose.hip.xMm + corner.xMm, pose.hip.yMm + corner.yMm))

/** Closed outline of the shell in the given line. */
export const seatShellPrimitives = (
  place: Place,
  pose: SeatPose,
  elevation: Elevation,
  style: LineStyle,
): Primitive[] => {
  const points = seatOutline(place.seat, pose, elevation)
  if (points.length < 2) return []
  const part = handleId({ kind: 'hip', placeId: place.id })
  return [{ kind: 'polyline', key: `${place.id}/seat/${style}`, part, points, closed: true, style }]
}

const slotPrimitives = (place: Place, slot: Slot, pose: SeatPose, elevation: Elevation): Primitive[] => [
  {
    kind: 'polyline',
    key: `${place.id}/slot/${slot.id}`,
    part: handleId({ kind: 'slot', placeId: place.id, slotId: slot.id }),
    points: slotCorners(slot).map((corner) => projected(vehiclePoint(pose, corner), elevation)),
    closed: true,
    style: 'outline',
  },
]

/** Seat shell, strap slots as rectangles in space, and the backrest rim. */
export const seatPrimitives = (place: Place, pose: SeatPose, elevation: Elevation): Primitive[] => {
  const rim = vehiclePoint(pose, pointMm(place.seat.backrestRim.xMm, 0, place.seat.backrestRim.zMm))
  return [
    ...seatShellPrimitives(place, pose, elevation, 'outline'),
    ...place.seat.slots.flatMap((slot) => slotPrimitives(place, slot, pose, elevation)),
    {
      kind: 'mark',
      key: `${place.id}/rim`,
      part: null,
      at: projected(rim, elevation),
      mark: 'rim',
      verdict: 'none',
    },
  ]
}
