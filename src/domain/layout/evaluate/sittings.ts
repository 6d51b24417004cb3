import type { Layout, Place } from '../document/layout'
import { ruleSetsOf } from '../document/ruleSetOf'
import type { Sitting } from './evaluation'

const distinct = (values: readonly number[]): readonly number[] => [...new Set(values)]

const sittingId = (place: Place, occupantId: string, slideMm: number, reclineDeg: number): string =>
  `${place.id}/${occupantId}/${slideMm}/${reclineDeg}`

/** The reclines at which a rule of any set that the layout can choose starts or stops to speak. */
const turningReclinesDeg = (layout: Layout): readonly number[] =>
  ruleSetsOf(layout).flatMap(({ rules }) =>
    rules.flatMap(({ when }) =>
      [when.reclineAtMostDeg, when.reclineAboveDeg].filter((deg) => deg !== undefined),
    ),
  )

/**
 * The reclines looked at: as drawn, the most upright, the most reclined, and in between each at which some rule starts or stops to
 * speak. There both speak, the one for seats up to that recline and the one for seats beyond it (see `ruleContext`).
 */
const reclinesDeg = (layout: Layout, { reclineDeg, reclineRange }: Place['seat']): readonly number[] => {
  const { uprightDeg, reclinedDeg } = reclineRange
  const ends = [reclineDeg, uprightDeg, reclinedDeg]
  if (uprightDeg === reclinedDeg) return distinct(ends)
  const turning = turningReclinesDeg(layout).filter((deg) => deg > uprightDeg && deg < reclinedDeg)
  return distinct([...ends, ...turning])
}

/**
 * Every sitting of a place: each occupant in each distinct position of the slide (front end, as drawn, rear end) with each
 * distinct recline (as drawn, upright end, reclined end, and where a rule's own recline limit lies between them). Positions
 * between those are not looked at: a limit that is kept there but broken in between would go unseen. Each occupant's drawn
 * position comes before the others, and the first occupant's comes first of all. They are the same whichever rule set is chosen.
 */
export const sittingsOf = (layout: Layout, place: Place): readonly Sitting[] => {
  const { slide } = place.seat
  // Sums with 0, so that a slide of 0 does not give a second position called -0.
  const slidesMm = distinct([0, 0 - slide.forwardMm, slide.rearwardMm])
  const reclines = reclinesDeg(layout, place.seat)
  return place.occupants.flatMap((occupant) =>
    slidesMm.flatMap((slideMm) =>
      reclines.map((recline) => ({
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
