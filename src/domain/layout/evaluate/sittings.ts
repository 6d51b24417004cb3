import type { Layout, Place } from '../document/layout'
import { ruleSetsOf } from '../document/ruleSetOf'
import type { Sitting } from './evaluation'

const distinct = (values: readonly number[]): readonly number[] => [...new Set(values)]

/** One occupant of a place in one position of its seat. */
export const sittingAt = (
  place: Place,
  occupantId: string,
  slideMm: number,
  reclineDeg: number,
): Sitting => ({
  id: `${place.id}/${occupantId}/${slideMm}/${reclineDeg}`,
  placeId: place.id,
  occupantId,
  slideMm,
  reclineDeg,
})

/** The sitting of that id, at any position of a seat of the layout; null when the layout has no such place or occupant. */
export const sittingOfId = (layout: Layout, id: string): Sitting | null => {
  for (const place of layout.places)
    for (const occupant of place.occupants) {
      const start = `${place.id}/${occupant.id}/`
      const [slide, recline, ...others] = id.startsWith(start) ? id.slice(start.length).split('/') : []
      if (slide === undefined || recline === undefined || others.length > 0) continue
      const found = sittingAt(place, occupant.id, Number(slide), Number(recline))
      if (found.id === id) return found
    }
  return null
}

/** The reclines at which a rule of any set that the layout can choose starts or stops to speak. */
const turningReclinesDeg = (layout: Layout): readonly number[] =>
  ruleSetsOf(layout).flatMap(({ rules }) =>
    rules.flatMap(({ when }) =>
      [when.reclineAtMostDeg, when.reclineAboveDeg].filter((deg) => deg !== undefined),
    ),
  )

// Sums with 0, so that a slide of 0 does not give a second position called -0.
const slidesMm = ({ slide }: Place['seat']): readonly number[] =>
  distinct([0, 0 - slide.forwardMm, slide.rearwardMm])

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
 * The sittings that a place always has: each occupant in each distinct position of the slide (front end, as drawn, rear end) with
 * each distinct recline (as drawn, upright end, reclined end, and where a rule's own recline limit lies between them). Each
 * occupant's drawn position comes before the others, and the first occupant's comes first of all. They are the same whichever rule
 * set is chosen. What happens between those positions: `betweenSittings`.
 */
export const sittingsOf = (layout: Layout, place: Place): readonly Sitting[] => {
  const slides = slidesMm(place.seat)
  const reclines = reclinesDeg(layout, place.seat)
  return place.occupants.flatMap(({ id }) =>
    slides.flatMap((slideMm) => reclines.map((reclineDeg) => sittingAt(place, id, slideMm, reclineDeg))),
  )
}

/** The longest way between two positions of the slide that are looked at, mm. Our judgement. */
const SLIDE_STEP_MM = 50

/** The largest turn between two reclines that are looked at. Our judgement: it moves a head by some 65 mm. */
const RECLINE_STEP_DEG = 5

/** The values in order, with others at most `most` apart between them, at least one in each gap, as whole multiples of `unit`. */
const closeTogether = (values: readonly number[], most: number, unit: number): readonly number[] => {
  const ordered = values.toSorted((a, b) => a - b)
  return ordered.flatMap((value, index) => {
    const next = ordered[index + 1]
    if (next === undefined) return [value]
    const parts = Math.max(2, Math.ceil((next - value) / most))
    const between = Array.from({ length: parts - 1 }, (_, part) => {
      const exact = value + ((part + 1) / parts) * (next - value)
      return Number((Math.round(exact / unit) * unit).toFixed(1)) + 0
    })
    return [value, ...distinct(between).filter((each) => each > value && each < next)]
  })
}

/** All positions of a seat that are looked at, in order: those of `sittingsOf` and others between them. */
export interface SeatLattice {
  readonly slidesMm: readonly number[]
  readonly reclinesDeg: readonly number[]
}

/** Positions of a seat close enough together that nothing much happens between two of them. */
export const seatLattice = (layout: Layout, { seat }: Place): SeatLattice => ({
  slidesMm: closeTogether(slidesMm(seat), SLIDE_STEP_MM, 1),
  reclinesDeg: closeTogether(reclinesDeg(layout, seat), RECLINE_STEP_DEG, 0.1),
})

/** Every sitting of the lattice: each occupant by slide, then by recline. */
export const latticeSittings = (layout: Layout, place: Place): readonly Sitting[] => {
  const lattice = seatLattice(layout, place)
  return place.occupants.flatMap(({ id }) =>
    lattice.slidesMm.flatMap((slideMm) =>
      lattice.reclinesDeg.map((reclineDeg) => sittingAt(place, id, slideMm, reclineDeg)),
    ),
  )
}

/** Whether the seat slides or its back reclines. */
export const isSeatAdjustable = ({ slide, reclineRange }: Place['seat']): boolean =>
  slide.forwardMm > 0 || slide.rearwardMm > 0 || reclineRange.uprightDeg !== reclineRange.reclinedDeg
