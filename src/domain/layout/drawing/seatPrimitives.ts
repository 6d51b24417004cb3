import { type SeatPose, vehiclePoint } from '../../body/pose'
import {
  type Elevation,
  type PlanePointMm,
  planePoint,
  projected,
  type ViewPlane,
} from '../../geometry/plane'
import { pointMm, type PointMm } from '../../geometry/point'
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

/** A slot as a rectangle in space, in a shell with thickness at both of its faces. */
export const slotPrimitives = (place: Place, slot: Slot, pose: SeatPose, plane: ViewPlane): Primitive[] => {
  const key = `${place.id}/slot/${slot.id}`
  const part = handleId({ kind: 'slot', placeId: place.id, slotId: slot.id })
  const halfMm = (place.seat.shellThicknessMm ?? 0) / 2
  const rectangle = (offsetMm: number, ownKey: string): Primitive => ({
    kind: 'polyline',
    key: ownKey,
    part,
    points: slotCorners(slot).map((corner) =>
      projected(vehiclePoint(pose, besideFace(slot, corner, offsetMm)), plane),
    ),
    closed: true,
    style: 'outline',
  })
  return halfMm === 0
    ? [rectangle(0, key)]
    : [rectangle(halfMm, key), rectangle(-halfMm, `${key}/other-face`)]
}

/** A point moved square to the face that the slot is cut in, seat frame. */
const besideFace = ({ face }: Slot, point: PointMm, byMm: number): PointMm => {
  switch (face) {
    case 'back':
      return { ...point, xMm: point.xMm + byMm }
    case 'side':
      return { ...point, yMm: point.yMm + byMm }
    case 'cushion':
      return { ...point, zMm: point.zMm + byMm }
  }
}

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
