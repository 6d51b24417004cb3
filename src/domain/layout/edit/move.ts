import { bodyOf } from '../../body/body'
import { seatPoint, vehiclePoint } from '../../body/pose'
import type { PointMm } from '../../geometry/point'
import { acosDeg, asinDeg, atan2Deg, cosDeg, sinDeg } from '../../units/angle'
import { hipToShoulderLimits } from '../document/bodyContradictions'
import type { Layout, Place } from '../document/layout'
import { limited, LIMITS } from '../document/limits'
import { withAnchorMoved } from './anchorMove'
import type { HandleRef } from './handle'
import { drawnPose, reclinePoint, shoulderMidPoint, tubeMiddle } from './handles'
import { mirrorSlot } from './mirror'
import { withPlaceChanged, withReplaced } from './replace'
import { withShellPointMoved } from './shellPoints'
import { limitedPoint, withTubePointMoved, withTubeRaised } from './tubeMove'

/**
 * The layout with one handle moved: the same function for a drag, an arrow key and a typed number. Coordinates that are not
 * given stay; a handle that cannot go where it is asked goes to the nearest it can. Unknown references change nothing.
 * The result is always a layout that `parseLayout` accepts when the given one was.
 */
export const movedHandle = (layout: Layout, ref: HandleRef, asked: Partial<PointMm>): Layout => {
  const to = finiteOnly(asked)
  switch (ref.kind) {
    case 'hip':
      return withPlaceChanged(layout, ref.placeId, (place) => ({
        ...place,
        // The seat frame hangs on the hip point, so outline, rim and slots come along; anchors are on the car and stay.
        seat: { ...place.seat, hipPoint: limitedPoint({ ...place.seat.hipPoint, ...to }) },
      }))
    case 'recline':
      return withPlaceChanged(layout, ref.placeId, (place) =>
        reclinedPlace(place, askedReclineDeg(place, to)),
      )
    case 'shoulder-point':
      return withPlaceChanged(layout, ref.placeId, (place) => withShoulderMoved(place, to))
    case 'anchor':
      return withAnchorMoved(layout, ref.placeId, ref.anchorId, to)
    case 'slot':
      return withPlaceChanged(layout, ref.placeId, (place) => withSlotMoved(place, ref.slotId, to))
    case 'tube-point': {
      const tube = layout.tubes.find((candidate) => candidate.id === ref.tubeId)
      const point = tube?.points[ref.index]
      return point === undefined
        ? layout
        : withTubePointMoved(layout, ref.tubeId, ref.index, { ...point, ...to })
    }
    case 'tube-height': {
      const tube = layout.tubes.find((candidate) => candidate.id === ref.tubeId)
      if (tube === undefined || to.zMm === undefined) return layout
      return withTubeRaised(layout, ref.tubeId, to.zMm - tubeMiddle(tube).zMm)
    }
    case 'shell-point':
      return withShellPointMoved(layout, ref.placeId, ref, to)
  }
}

/** Coordinates that are no number, as from an empty field, count as not given. */
const finiteOnly = (point: Partial<PointMm>): Partial<PointMm> =>
  Object.fromEntries(Object.entries(point).filter(([, value]) => Number.isFinite(value)))

/**
 * A place with another recline. A back that reclines stays inside its range; a fixed back is mounted at the new angle, so both
 * ends of its range go along.
 */
export const reclinedPlace = (place: Place, askedDeg: number): Place => {
  const { seat } = place
  const { uprightDeg, reclinedDeg } = seat.reclineRange
  if (uprightDeg === reclinedDeg) {
    const reclineDeg = limited(askedDeg, LIMITS.reclineDeg)
    const reclineRange = { uprightDeg: reclineDeg, reclinedDeg: reclineDeg }
    return { ...place, seat: { ...seat, reclineDeg, reclineRange } }
  }
  const reclineDeg = limited(askedDeg, { min: uprightDeg, max: reclinedDeg, unit: '°' })
  return { ...place, seat: { ...seat, reclineDeg } }
}

/**
 * The recline that brings its handle to the asked point: the direction from the hip point to it. With only x or only z given,
 * the recline at which the handle has exactly that coordinate (its distance from the hip point is fixed).
 */
const askedReclineDeg = (place: Place, to: Partial<PointMm>): number => {
  const { hipPoint, reclineDeg } = place.seat
  const handle = reclinePoint(place)
  const lengthMm = Math.hypot(handle.xMm - hipPoint.xMm, handle.zMm - hipPoint.zMm)
  const dxMm = (to.xMm ?? handle.xMm) - hipPoint.xMm
  const dzMm = (to.zMm ?? handle.zMm) - hipPoint.zMm
  if (to.xMm === undefined && to.zMm === undefined) return reclineDeg
  if (to.zMm === undefined) return asinDeg(dxMm / lengthMm)
  if (to.xMm === undefined) {
    const sizeDeg = acosDeg(dzMm / lengthMm)
    // 0 − 0 is 0: a file cannot hold −0.
    return reclineDeg < 0 ? 0 - sizeDeg : sizeDeg
  }
  return dxMm === 0 && dzMm === 0 ? reclineDeg : atan2Deg(dxMm, dzMm)
}

/** A torso line closer than this to square with a coordinate cannot be set by that coordinate: about 3°. Our judgement. */
const STEADY_SHARE = 0.05

/**
 * The first occupant with the hip-to-shoulder length that brings the shoulder point, along the torso line, to the asked point, or
 * as near to it as the person's other measures let it.
 */
const withShoulderMoved = (place: Place, to: Partial<PointMm>): Place => {
  const [occupant, ...others] = place.occupants
  const current = shoulderMidPoint(place)
  if (occupant === undefined || current === null) return place
  const s = sinDeg(place.seat.reclineDeg)
  const c = cosDeg(place.seat.reclineDeg)
  const dxMm = (to.xMm ?? current.xMm) - current.xMm
  const dzMm = (to.zMm ?? current.zMm) - current.zMm
  // One coordinate alone is met exactly; two are projected on the torso line.
  const isXOnly = to.zMm === undefined
  const isZOnly = to.xMm === undefined
  const share = isXOnly ? s : isZOnly ? c : 1
  const limits = hipToShoulderLimits(occupant)
  if (Math.abs(share) < STEADY_SHARE || limits === null) return place
  const alongMm = isXOnly ? dxMm / s : isZOnly ? dzMm / c : dxMm * s + dzMm * c
  const hipToShoulderMm = limited(bodyOf(occupant).hipToShoulderMm + alongMm, limits)
  const measured = { ...occupant.measured, hipToShoulderMm }
  return { ...place, occupants: [{ ...occupant, measured }, ...others] }
}

const withSlotMoved = (place: Place, slotId: string, to: Partial<PointMm>): Place => {
  const slot = place.seat.slots.find((candidate) => candidate.id === slotId)
  if (slot === undefined) return place
  const pose = drawnPose(place)
  const asked = { ...vehiclePoint(pose, slot.centre), ...to }
  const centre = limitedSeatPoint(seatPoint(pose, asked))
  const partner = mirrorSlot(place, slot)
  const slots = withReplaced(place.seat.slots, slotId, (old) => ({ ...old, centre }))
  const both =
    partner === null
      ? slots
      : withReplaced(slots, partner.id, (old) => ({ ...old, centre: { ...centre, yMm: 0 - centre.yMm } }))
  return { ...place, seat: { ...place.seat, slots: both } }
}

const limitedSeatPoint = (point: PointMm): PointMm => ({
  xMm: limited(point.xMm, LIMITS.seatCoordinateMm),
  yMm: limited(point.yMm, LIMITS.seatCoordinateMm),
  zMm: limited(point.zMm, LIMITS.seatCoordinateMm),
})
