import type { Slot } from '../../straps/seat'
import { mirroredStrap, strapFamily, type StrapId } from '../../straps/strap'
import type { Layout, Place } from '../document/layout'
import { COUNTS } from '../document/limits'
import { freshId } from './change'
import { mirroredOpening, mirrorSlot } from './mirror'
import { withPlaceChanged } from './replace'
import { startingSlot } from './startingSlot'

/**
 * One more slot for a strap that passes none, where its straight strap crosses the shell if it does; the other side of a pair that
 * moves as one gets its mirror image.
 */
export const addSlot = (layout: Layout, placeId: string, strap: StrapId): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const { slots } = place.seat
    if (passesSlot(place, strap)) return place
    const slot = { ...startingSlot(layout, place, strap), id: freshId('slot', slots) }
    const added = [...slots, slot, ...mirroredOnes(place, [...slots, slot], slot)]
    return added.length > COUNTS.slots.max ? place : { ...place, seat: { ...place.seat, slots: added } }
  })

/** The slot on the other side that comes with a new one; none where the pair is split or the other strap has a slot. */
const mirroredOnes = (place: Place, slots: readonly Slot[], slot: Slot): readonly Slot[] =>
  slot.straps.flatMap((strap): readonly Slot[] => {
    const other = place.mirrored[strapFamily(strap)] ? mirroredStrap(strap) : null
    if (other === null || passesSlot(place, other)) return []
    return [{ ...mirroredOpening(slot), straps: [other], id: freshId('slot', slots) }]
  })

const passesSlot = (place: Place, strap: StrapId): boolean =>
  place.seat.slots.some((slot) => slot.straps.includes(strap))

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
