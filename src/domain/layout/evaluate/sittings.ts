import type { Place } from '../document/layout'
import type { Sitting } from './evaluation'

const distinct = (values: readonly number[]): readonly number[] => [...new Set(values)]

const sittingId = (place: Place, occupantId: string, slideMm: number, reclineDeg: number): string =>
  `${place.id}/${occupantId}/${slideMm}/${reclineDeg}`

/**
 * Every sitting of a place: each occupant in each distinct position of the slide (front end, as drawn, rear end) with each
 * distinct recline (upright end, as drawn, reclined end). Positions between those are not looked at: a limit that is kept at
 * the ends and as drawn but broken in between would go unseen. Each occupant's drawn position comes before the others, and the first occupant's comes first of all.
 */
export const sittingsOf = (place: Place): readonly Sitting[] => {
  const { slide, reclineDeg, reclineRange } = place.seat
  // Sums with 0, so that a slide of 0 does not give a second position called -0.
  const slidesMm = distinct([0, 0 - slide.forwardMm, slide.rearwardMm])
  const reclinesDeg = distinct([reclineDeg, reclineRange.uprightDeg, reclineRange.reclinedDeg])
  return place.occupants.flatMap((occupant) =>
    slidesMm.flatMap((slideMm) =>
      reclinesDeg.map((recline) => ({
        id: sittingId(place, occupant.id, slideMm, recline),
        placeId: place.id,
        occupantId: occupant.id,
        slideMm,
        reclineDeg: recline,
      })),
    ),
  )
}

/** Whether the seat slides or its back reclines. */
export const isSeatAdjustable = ({ slide, reclineRange }: Place['seat']): boolean =>
  slide.forwardMm > 0 || slide.rearwardMm > 0 || reclineRange.uprightDeg !== reclineRange.reclinedDeg
