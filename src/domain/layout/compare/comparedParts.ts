import type { Tube } from '../../geometry/tube'
import type { Layout, Place } from '../document/layout'
import type { ComparedField, ComparedPart, Part, PartValue } from './comparedPart'
import { matched, type Matched } from './matched'
import {
  anchorValues,
  beltValues,
  occupantValues,
  placeValues,
  seatValues,
  slotValues,
  tubeValues,
} from './partValues'

type Built = Pick<Layout, 'tubes' | 'places'>

const byId = ({ id }: { readonly id: string }): string => id
const byName = ({ name }: { readonly name: string }): string => name.trim().toLowerCase()

/** Places of several variants, each beside the same one of the others: by id, else by name. */
export const matchedPlaces = (variants: readonly Built[]): readonly Matched<Place>[] =>
  matched(
    variants.map(({ places }) => places),
    [byId, byName],
  )

const fieldKey = ({ field, of }: Pick<PartValue, 'field' | 'of'>): string => `${field}/${of ?? ''}`

const comparedFields = (parts: Matched<Part>): readonly ComparedField[] => {
  const keys = new Map<string, PartValue>()
  for (const value of parts.flatMap((part) => part?.values ?? [])) {
    if (!keys.has(fieldKey(value))) keys.set(fieldKey(value), value)
  }
  return [...keys].map(([key, { field, of }]) => ({
    field,
    of,
    values: parts.map((part) => part?.values.find((value) => fieldKey(value) === key)?.value ?? null),
  }))
}

const compared = (rows: readonly Matched<Part>[]): readonly ComparedPart[] =>
  rows.flatMap((parts) => {
    const kind = parts.find((part) => part !== null)?.kind
    return kind === undefined ? [] : [{ kind, parts, fields: comparedFields(parts) }]
  })

/** The parts of one place that there may be several of, beside those of the same place of the other variants. */
const comparedList = (
  places: Matched<Place>,
  partsOf: (place: Place, index: number) => readonly Part[],
  keys: readonly ((part: Part) => string)[],
): readonly ComparedPart[] =>
  compared(
    matched(
      places.map((place, index) => (place === null ? [] : partsOf(place, index))),
      keys,
    ),
  )

const comparedOne = (places: Matched<Place>, partOf: (place: Place) => Part): ComparedPart[] => [
  ...compared([places.map((place) => (place === null ? null : partOf(place)))]),
]

const plain = (place: Place) => ({ id: place.id, placeId: place.id, strap: null, points: [] })

/** What a tube is called in every variant, so that a tube by another name is still the same one; two of one name are told apart. */
type TubeWords = (variant: number, tubeId: string | null) => string

const tubeWordsOf = (rows: readonly Matched<Tube>[]): TubeWords => {
  const words = rows.map((row) => {
    const tube = row.find((each) => each !== null)
    return tube === undefined || tube === null ? '' : tube.name.trim() || `tube ${tube.id}`
  })
  return (variant, tubeId) => {
    const at = rows.findIndex((row) => row[variant]?.id === tubeId)
    const word = words[at]
    if (tubeId === null || word === undefined) return ''
    const ordinal = words.slice(0, at).filter((other) => other === word).length
    return ordinal === 0 ? word : `${word} (${ordinal + 1})`
  }
}

const anchorParts = (place: Place, tubeWord: (tubeId: string | null) => string): readonly Part[] =>
  place.anchors.map((anchor) => ({
    kind: 'anchor',
    id: anchor.id,
    name: anchor.strap,
    placeId: place.id,
    strap: anchor.strap,
    points: [anchor.mount.point],
    values: anchorValues(anchor, tubeWord(anchor.mount.tubeId)),
  }))

const slotParts = ({ id: placeId, seat }: Place): readonly Part[] =>
  seat.slots.map((slot) => ({
    kind: 'slot',
    id: slot.id,
    name: slot.straps.join(' '),
    placeId,
    strap: null,
    points: [slot.centre],
    values: slotValues(slot),
  }))

const occupantParts = ({ id: placeId, occupants }: Place): readonly Part[] =>
  occupants.map((occupant) => ({
    kind: 'occupant',
    id: occupant.id,
    name: occupant.name,
    placeId,
    strap: null,
    points: [],
    values: occupantValues(occupant),
  }))

const comparedPlace = (places: Matched<Place>, tubeWords: TubeWords): readonly ComparedPart[] => [
  // A strap has at most one anchor, so it is the strap that tells which anchor is the same, whatever its id.
  ...comparedList(places, (place, variant) => anchorParts(place, (tubeId) => tubeWords(variant, tubeId)), [
    byName,
  ]),
  ...comparedOne(places, (place) => ({
    ...plain(place),
    kind: 'seat',
    name: place.name,
    points: [place.seat.hipPoint],
    values: seatValues(place.seat),
  })),
  ...comparedList(places, slotParts, [byId, byName]),
  ...comparedOne(places, (place) => ({
    ...plain(place),
    kind: 'belt',
    name: place.name,
    values: beltValues(place.belt),
  })),
  ...comparedList(places, occupantParts, [byId, byName]),
  ...comparedOne(places, (place) => ({
    ...plain(place),
    kind: 'place',
    name: place.name,
    values: placeValues(place),
  })),
]

const tubePart = (tube: Tube): Part => ({
  kind: 'tube',
  id: tube.id,
  name: tube.name,
  placeId: null,
  strap: null,
  points: tube.points,
  values: tubeValues(tube),
})

/** Tubes of several variants, each beside the same one of the others: by id, else by name. */
export const matchedTubes = (variants: readonly Built[]): readonly Matched<Tube>[] =>
  matched(
    variants.map(({ tubes }) => tubes),
    [byId, byName],
  )

/**
 * Every part of several variants beside the same part of the others, place by place and then the tubes. Parts are the same by id, else by
 * name; anchors by their strap, because a strap has at most one.
 */
export const comparedParts = (variants: readonly Built[]): readonly ComparedPart[] => {
  const tubes = matchedTubes(variants)
  const tubeWords = tubeWordsOf(tubes)
  return [
    ...matchedPlaces(variants).flatMap((places) => comparedPlace(places, tubeWords)),
    ...compared(tubes.map((row) => row.map((tube) => (tube === null ? null : tubePart(tube))))),
  ]
}
