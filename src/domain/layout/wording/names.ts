import type { Tube } from '../../geometry/tube'
import type { Finding } from '../../rules/finding'
import { type Anchor, type AnchorForm, anchorForm } from '../../straps/anchor'
import { type StrapId, strapFamily, strapSide } from '../../straps/strap'
import { angleText } from '../../units/angle'
import { lengthWithUnit } from '../../units/length'
import type { Layout, Place } from '../document/layout'
import { ruleOf } from '../document/ruleSetOf'
import { formWord } from '../edit/handles'
import type { Sitting } from '../evaluate/evaluation'
import { sittingOfId } from '../evaluate/sittings'

/** A family of straps as the adjective before strap, tab or wrap. */
export const familyWord = (strap: StrapId): string => {
  switch (strapFamily(strap)) {
    case 'shoulder':
      return 'shoulder'
    case 'lap':
      return 'lap'
    case 'sub':
      return 'anti-submarine'
  }
}

/** A strap as a lower-case name: "left lap strap". */
export const strapName = (strap: StrapId): string => `${strapSide(strap)} ${familyWord(strap)} strap`

/** What a strap is fixed by, for several: "tabs", "clevises". */
export const formsWord = (form: AnchorForm): string => (form === 'clevis' ? 'clevises' : `${formWord(form)}s`)

/** The same after "to": "a tab", "an insert". */
export const formWords = (form: AnchorForm): string =>
  `${form === 'insert' || form === 'eye' ? 'an' : 'a'} ${formWord(form)}`

/** An anchor by what it is: "left lap tab", "right shoulder wrap", "left lap eye bolt". */
export const anchorName = ({ strap, mount }: Pick<Anchor, 'strap' | 'mount'>): string =>
  `${strapSide(strap)} ${familyWord(strap)} ${formWord(anchorForm(mount))}`

/** What a finding is about as a lower-case name; tubes by the name the builder gave them. */
export const subjectName = (subject: Finding['subject'], layout: Layout): string => {
  switch (subject) {
    case 'shoulder-pair':
      return 'shoulder straps'
    case 'lap-pair':
      return 'lap straps'
    case 'sub-pair':
      return 'anti-submarine straps'
    case 'head':
      return 'helmet'
    case 'body':
      return 'person in the seat'
    case 'belt':
      return 'belt'
    case 'shoulder-left':
    case 'shoulder-right':
    case 'lap-left':
    case 'lap-right':
    case 'sub-left':
    case 'sub-right':
    case 'sub-centre':
      return strapName(subject)
    default:
      return tubeName(subject.slice('tube:'.length), layout)
  }
}

/** A tube by the name the builder gave it. */
export const tubeName = (
  tubeId: string,
  layout: { readonly tubes: readonly Pick<Tube, 'id' | 'name'>[] },
): string => {
  const name = layout.tubes.find((tube) => tube.id === tubeId)?.name.trim() ?? ''
  return name === '' ? `tube ${tubeId}` : name
}

/**
 * A position of the seat in words: "seat as drawn"; "seat 60 mm forward, back at 12°". `isJustPast`: what is said there holds from
 * just past that recline on.
 */
export const seatPositionName = (
  { slideMm, reclineDeg }: Pick<Sitting, 'slideMm' | 'reclineDeg'>,
  place: Place,
  layout: Layout,
  isJustPast = false,
): string => {
  const slide =
    slideMm === 0
      ? []
      : [
          `seat ${lengthWithUnit(Math.abs(slideMm), layout.units.length)} ${slideMm > 0 ? 'rearward' : 'forward'}`,
        ]
  const isAsDrawn = reclineDeg === place.seat.reclineDeg && !isJustPast
  const back = isAsDrawn ? [] : [`back ${isJustPast ? 'just past' : 'at'} ${angleText(reclineDeg)}`]
  const moved = [...slide, ...back]
  return moved.length === 0 ? 'seat as drawn' : moved.join(', ')
}

/** One sitting in words: who, and where the seat is: "Marla, seat 60 mm forward, back at 12°". */
export const sittingName = (sitting: Sitting, layout: Layout, isJustPast = false): string => {
  const place = layout.places.find(({ id }) => id === sitting.placeId)
  if (place === undefined) return sitting.id
  const occupant = place.occupants.find(({ id }) => id === sitting.occupantId)
  const name = occupant?.name.trim() ?? ''
  const who = name === '' ? `occupant ${sitting.occupantId}` : name
  return `${who}, ${seatPositionName(sitting, place, layout, isJustPast)}`
}

/**
 * The sitting that a rule speaks of, by its id, in words: "Marla, back just past 30°" where the rule is for seats reclined more
 * than that sitting; the id itself when the layout has no such place or person.
 */
export const sittingNameUnder = (ruleId: string, sittingId: string, layout: Layout): string => {
  const sitting = sittingOfId(layout, sittingId)
  if (sitting === null) return sittingId
  const isJustPast = ruleOf(layout, ruleId)?.when.reclineAboveDeg === sitting.reclineDeg
  return sittingName(sitting, layout, isJustPast)
}

/** A place by the name the builder gave it. */
export const placeName = (placeId: string, layout: Layout): string => {
  const name = layout.places.find(({ id }) => id === placeId)?.name.trim() ?? ''
  return name === '' ? `place ${placeId}` : name
}
