import { seatPoint } from '../../body/pose'
import type { Slot, SlotFace } from '../../straps/seat'
import { mirroredStrap, type StrapFamily, strapFamily, type StrapId, strapSide } from '../../straps/strap'
import type { Layout, Place } from '../document/layout'
import { COUNTS } from '../document/limits'
import { freshId } from './change'
import { drawnPose, shoulderMidPoint } from './handles'
import { mirroredOpening, mirrorSlot } from './mirror'
import { withPlaceChanged } from './replace'

const FACES: Readonly<Record<StrapFamily, SlotFace>> = { shoulder: 'back', lap: 'side', sub: 'cushion' }

/** Spare length of a slot beside the webbing, and its height. Starting values, our judgement. */
const SPARE_MM = 15
const SLOT_HEIGHT_MM = 25

/** Where slots start in the seat frame. Starting values, our judgement: shoulder slots just below the shoulder, lap slots beside
 * and behind the hip, thigh slots under it. */
const BELOW_SHOULDER_MM = 30
const BELOW_RIM_MM = 30
const LAP_SLOT = { xMm: 70, zMm: -60 }
const SUB_SLOT_AHEAD_MM = 60
const HALF_SHOULDER_SLOTS_MM = 80
const HALF_SUB_SLOTS_MM = 55

/** Turn of a lap slot across a strap that falls rearward at about 52° on a seat that is upright. */
const LAP_SLOT_TURN_DEG = 38

/**
 * One more slot for a strap that passes none, sized to its webbing; the other side of a pair that moves as one gets its mirror
 * image.
 */
export const addSlot = (layout: Layout, placeId: string, strap: StrapId): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const other = place.mirrored[strapFamily(strap)] ? mirroredStrap(strap) : null
    const straps = [strap, ...(other === null ? [] : [other])].filter((id) => !passesSlot(place, id))
    if (!straps.includes(strap) || place.seat.slots.length + straps.length > COUNTS.slots.max) return place
    const slots = straps.reduce(
      (made, id) => [...made, { ...startingSlot(place, id), id: freshId('slot', made) }],
      place.seat.slots,
    )
    return { ...place, seat: { ...place.seat, slots } }
  })

const passesSlot = (place: Place, strap: StrapId): boolean =>
  place.seat.slots.some((slot) => slot.straps.includes(strap))

const startingSlot = (place: Place, strap: StrapId): Omit<Slot, 'id'> => {
  const family = strapFamily(strap)
  const side = { left: -1, centre: 0, right: 1 }[strapSide(strap)]
  return {
    straps: [strap],
    face: FACES[family],
    centre: startingCentre(place, family, side),
    lengthMm: place.belt.webbingMm[family] + SPARE_MM,
    heightMm: SLOT_HEIGHT_MM,
    turnDeg: family === 'lap' ? LAP_SLOT_TURN_DEG : 0,
  }
}

const startingCentre = (place: Place, family: StrapFamily, side: number): Slot['centre'] => {
  const { seat } = place
  switch (family) {
    case 'shoulder': {
      const shoulder = shoulderMidPoint(place)
      const rimMm = seat.backrestRim.zMm - BELOW_RIM_MM
      const shoulderMm =
        shoulder === null ? rimMm : seatPoint(drawnPose(place), shoulder).zMm - BELOW_SHOULDER_MM
      return {
        xMm: seat.backrestRim.xMm,
        yMm: side * HALF_SHOULDER_SLOTS_MM,
        zMm: Math.min(rimMm, shoulderMm),
      }
    }
    case 'lap': {
      const halfWidthMm = Math.max(...seat.topOutline.map((point) => Math.abs(point.yMm)))
      return { ...LAP_SLOT, yMm: side * halfWidthMm }
    }
    case 'sub':
      return { xMm: 0 - SUB_SLOT_AHEAD_MM, yMm: side * HALF_SUB_SLOTS_MM, zMm: 0 - seat.hipHeightMm }
  }
}

export const removeSlot = (layout: Layout, placeId: string, slotId: string): Layout =>
  withPlaceChanged(layout, placeId, (place) => ({
    ...place,
    seat: { ...place.seat, slots: place.seat.slots.filter((slot) => slot.id !== slotId) },
  }))

/**
 * The layout with fields of a slot changed; the opening of its mirror slot follows. A strap given to it leaves the slot it was
 * in before, because a strap passes one slot at most; a slot left without straps goes.
 */
export const withSlot = (
  layout: Layout,
  placeId: string,
  slotId: string,
  patch: Partial<Omit<Slot, 'id'>>,
): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const slot = place.seat.slots.find((candidate) => candidate.id === slotId)
    if (slot === undefined) return place
    const changed: Slot = { ...slot, ...patch }
    const partner = mirrorSlot(place, changed)
    const slots = place.seat.slots.flatMap((old): readonly Slot[] => {
      if (old === slot) return changed.straps.length === 0 ? [] : [changed]
      if (old === partner) return [{ ...old, ...mirroredOpening(changed) }]
      const straps = old.straps.filter((strap) => !changed.straps.includes(strap))
      return straps.length === 0 ? [] : [{ ...old, straps }]
    })
    return { ...place, seat: { ...place.seat, slots } }
  })
