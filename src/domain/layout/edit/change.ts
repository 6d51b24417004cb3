import type { Occupant } from '../../body/occupant'
import type { Seat } from '../../straps/seat'
import { startingOccupant } from '../document/empty'
import type { Job, Layout, Place } from '../document/layout'
import { COUNTS } from '../document/limits'
import { reclinedPlace } from './move'
import { withPlaceChanged, withReplaced } from './replace'

/*
 * Plain edits: each gives the layout with one thing changed, and the very same layout when there is nothing to change.
 * Values are taken as given; a form holds them to the limits in document/limits.ts before it asks.
 */

export const withJob = (layout: Layout, patch: Partial<Job>): Layout => ({
  ...layout,
  job: { ...layout.job, ...patch },
})

/** What concerns the car as a whole: datum, shown units, use and rule set. */
export const withSettings = (
  layout: Layout,
  patch: Partial<Pick<Layout, 'datum' | 'units' | 'dustyOrMuddyUse' | 'ruleSetId'>>,
): Layout => ({ ...layout, ...patch })

export const withPlace = (layout: Layout, placeId: string, patch: Partial<Pick<Place, 'name'>>): Layout =>
  withPlaceChanged(layout, placeId, (place) => ({ ...place, ...patch }))

/**
 * The layout with fields of a seat changed. Recline and recline range are kept in agreement: a new range draws the recline into
 * it, a new recline stays inside the range (or turns a fixed back as a whole).
 */
export const withSeat = (layout: Layout, placeId: string, patch: Partial<Seat>): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const { reclineDeg, reclineRange, ...plain } = patch
    const changed = { ...place, seat: { ...place.seat, ...plain } }
    const ranged = reclineRange === undefined ? changed : withReclineRange(changed, reclineRange)
    return reclineDeg === undefined ? ranged : reclinedPlace(ranged, reclineDeg)
  })

/** A range given backwards is turned round: both numbers are meant, only their order is not. */
const withReclineRange = (place: Place, asked: Seat['reclineRange']): Place => {
  const uprightDeg = Math.min(asked.uprightDeg, asked.reclinedDeg)
  const reclinedDeg = Math.max(asked.uprightDeg, asked.reclinedDeg)
  const reclineDeg = Math.min(reclinedDeg, Math.max(uprightDeg, place.seat.reclineDeg))
  return { ...place, seat: { ...place.seat, reclineRange: { uprightDeg, reclinedDeg }, reclineDeg } }
}

export const withOccupant = (
  layout: Layout,
  placeId: string,
  occupantId: string,
  patch: Partial<Omit<Occupant, 'id'>>,
): Layout =>
  withPlaceChanged(layout, placeId, (place) => ({
    ...place,
    occupants: withReplaced(place.occupants, occupantId, (occupant) => ({ ...occupant, ...patch })),
  }))

/** One more person at a place, with the starting body. Unchanged when the place holds as many as a layout may. */
export const addOccupant = (layout: Layout, placeId: string): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    if (place.occupants.length >= COUNTS.occupants.max) return place
    const id = freshId('occupant', place.occupants)
    return {
      ...place,
      occupants: [...place.occupants, startingOccupant(id, `Occupant ${place.occupants.length + 1}`)],
    }
  })

/** A place without this person; the last one stays, because a place is for somebody. */
export const removeOccupant = (layout: Layout, placeId: string, occupantId: string): Layout =>
  withPlaceChanged(layout, placeId, (place) =>
    place.occupants.length <= COUNTS.occupants.min
      ? place
      : { ...place, occupants: place.occupants.filter((occupant) => occupant.id !== occupantId) },
  )

/** Across the car from seat centre to seat centre. A starting value, our judgement: two 500 mm seats with a hand between. */
const NEXT_SEAT_MM = 620

/** One more place: the seat and belt of the last one, beside it to the right, with the starting body and no anchors. */
export const addPlace = (layout: Layout): Layout => {
  const last = layout.places.at(-1)
  if (last === undefined || layout.places.length >= COUNTS.places.max) return layout
  const { hipPoint } = last.seat
  const place: Place = {
    ...last,
    id: freshId('place', placeIdsInUse(layout)),
    name: `Place ${layout.places.length + 1}`,
    seat: { ...last.seat, hipPoint: { ...hipPoint, yMm: hipPoint.yMm + NEXT_SEAT_MM } },
    occupants: [startingOccupant('occupant-1', 'Occupant 1')],
    anchors: [],
  }
  return { ...layout, places: [...layout.places, place] }
}

/**
 * The places there are, those of other variants and those that records still name although they were removed: a new place must not come
 * into the belts or the measurements of another, nor be taken for another when variants are compared.
 */
const placeIdsInUse = ({
  places,
  variants,
  belts = [],
  asWelded = [],
}: Layout): readonly { readonly id: string }[] => [
  ...places,
  ...(variants?.others ?? []).flatMap((variant) => variant.places),
  ...belts.map(({ placeId }) => ({ id: placeId })),
  ...asWelded.flatMap(({ anchors }) => anchors.map(({ placeId }) => ({ id: placeId }))),
]

/** The layout without a place; the last one stays. Tubes and what records say of the place stay. */
export const removePlace = (layout: Layout, placeId: string): Layout =>
  layout.places.length <= COUNTS.places.min
    ? layout
    : { ...layout, places: layout.places.filter((place) => place.id !== placeId) }

/** The first of `prefix-1`, `prefix-2` … that no item has. */
export const freshId = (prefix: string, items: readonly { readonly id: string }[]): string => {
  for (let number = 1; ; number += 1) {
    const id = `${prefix}-${number}`
    if (items.every((item) => item.id !== id)) return id
  }
}
