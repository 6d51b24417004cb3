import { seatPoint, vehiclePoint } from '../../body/pose'
import type { Elevation } from '../../geometry/plane'
import { pointMm, type PointMm } from '../../geometry/point'
import type { Seat } from '../../straps/seat'
import { seatPose } from '../../straps/seatPose'
import type { Layout, Place } from '../document/layout'
import { COUNTS, limited, LIMITS } from '../document/limits'
import { withPlaceChanged } from './replace'

/**
 * The outline points of one elevation in the seat frame, with 0 for the coordinate that the outline does not have: y in the side
 * outline, z in the top outline.
 */
export const shellPoints = (seat: Seat, elevation: Elevation): readonly PointMm[] =>
  elevation === 'side'
    ? seat.sideOutline.map(({ xMm, zMm }) => pointMm(xMm, 0, zMm))
    : seat.topOutline.map(({ xMm, yMm }) => pointMm(xMm, yMm, 0))

const withPoints = (seat: Seat, elevation: Elevation, points: readonly PointMm[]): Seat =>
  elevation === 'side'
    ? { ...seat, sideOutline: points.map(({ xMm, zMm }) => ({ xMm, zMm })) }
    : { ...seat, topOutline: points.map(({ xMm, yMm }) => ({ xMm, yMm })) }

/** The pose an outline is drawn in: the side outline turns with the recline, the top outline is defined at recline 0. */
const outlinePose = (place: Place, elevation: Elevation) =>
  elevation === 'side'
    ? seatPose(place.seat, 0, place.seat.reclineDeg)
    : { hip: place.seat.hipPoint, reclineDeg: 0 }

/** Where the outline points are drawn, vehicle frame, at the drawn slide and recline. */
export const drawnShellPoints = (place: Place, elevation: Elevation): readonly PointMm[] =>
  shellPoints(place.seat, elevation).map((point) => vehiclePoint(outlinePose(place, elevation), point))

/** Points of the top outline this close to mirror images of each other are a pair: far below what a tape can tell. */
const PAIR_MM = 1e-6

/** The point of the top outline across the seat's mid-plane; −1 for a point on it, without a counterpart, or in the side outline. */
const twinIndex = (points: readonly PointMm[], index: number, elevation: Elevation): number => {
  const point = points[index]
  if (elevation === 'side' || point === undefined || Math.abs(point.yMm) <= PAIR_MM) return -1
  return points.findIndex(
    (other) => Math.abs(other.xMm - point.xMm) <= PAIR_MM && Math.abs(other.yMm + point.yMm) <= PAIR_MM,
  )
}

const limitedToSeat = (point: PointMm): PointMm => ({
  xMm: limited(point.xMm, LIMITS.seatCoordinateMm),
  yMm: limited(point.yMm, LIMITS.seatCoordinateMm),
  zMm: limited(point.zMm, LIMITS.seatCoordinateMm),
})

/**
 * The layout with one outline point put at seat-frame coordinates; those not given stay. A point of the top outline takes its
 * mirror image along, so that a shell alike on both sides stays so. Unchanged when there is no such point.
 */
export const withShellPoint = (
  layout: Layout,
  placeId: string,
  point: { readonly elevation: Elevation; readonly index: number },
  to: Partial<PointMm>,
): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const { elevation, index } = point
    const points = shellPoints(place.seat, elevation)
    const old = points[index]
    if (old === undefined) return place
    const moved = limitedToSeat({ ...old, ...to })
    const twin = twinIndex(points, index, elevation)
    const changed = points.map((other, at) => {
      if (at === index) return moved
      return at === twin ? { ...moved, yMm: 0 - moved.yMm } : other
    })
    return { ...place, seat: withPoints(place.seat, elevation, changed) }
  })

/** The same for a place asked for on the drawing, vehicle frame. */
export const withShellPointMoved = (
  layout: Layout,
  placeId: string,
  point: { readonly elevation: Elevation; readonly index: number },
  to: Partial<PointMm>,
): Layout => {
  const place = layout.places.find((candidate) => candidate.id === placeId)
  const drawn = place === undefined ? undefined : drawnShellPoints(place, point.elevation)[point.index]
  if (place === undefined || drawn === undefined) return layout
  const { xMm, yMm, zMm } = seatPoint(outlinePose(place, point.elevation), { ...drawn, ...to })
  // What an outline has no coordinate for is left out, not rounded into it.
  return withShellPoint(layout, placeId, point, point.elevation === 'side' ? { xMm, zMm } : { xMm, yMm })
}

/** One more outline point, half way from the given one to the next. Unchanged when the outline holds as many as a layout may. */
export const addShellPoint = (
  layout: Layout,
  placeId: string,
  elevation: Elevation,
  afterIndex: number,
): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const points = shellPoints(place.seat, elevation)
    const from = points[afterIndex]
    const to = points[(afterIndex + 1) % points.length]
    if (from === undefined || to === undefined || points.length >= COUNTS.outlinePoints.max) return place
    const middle = pointMm((from.xMm + to.xMm) / 2, (from.yMm + to.yMm) / 2, (from.zMm + to.zMm) / 2)
    return {
      ...place,
      seat: withPoints(place.seat, elevation, points.toSpliced(afterIndex + 1, 0, middle)),
    }
  })

/** The outline without one of its points; three stay, because fewer enclose nothing. */
export const removeShellPoint = (
  layout: Layout,
  placeId: string,
  elevation: Elevation,
  index: number,
): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const points = shellPoints(place.seat, elevation)
    if (points[index] === undefined || points.length <= COUNTS.outlinePoints.min) return place
    return { ...place, seat: withPoints(place.seat, elevation, points.toSpliced(index, 1)) }
  })
