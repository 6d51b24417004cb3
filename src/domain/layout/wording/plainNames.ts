import type { PointMm } from '../../geometry/point'
import type { Tube } from '../../geometry/tube'
import { vehiclePoint } from '../../body/pose'
import type { Finding } from '../../rules/finding'
import { type AnchorForm, anchorForm } from '../../straps/anchor'
import type { Slot } from '../../straps/seat'
import { type StrapId, strapFamily, strapSide } from '../../straps/strap'
import { DATUM_PART, RULES_PART } from '../agreement/fingerprint'
import type { Layout, Place } from '../document/layout'
import { drawnPose, handleId, tubeMiddle } from '../edit/handles'
import { placeName, tubeName } from './names'
import type { TermId } from './terms'

/*
 * The parts of the car by names that need no knowledge of the trade.
 */

const FAMILY = { shoulder: 'shoulder belt', lap: 'lap belt', sub: 'crotch belt' } as const

/** "left lap belt", "crotch belt in the middle". */
export const plainBelt = (strap: StrapId): string => {
  const name = FAMILY[strapFamily(strap)]
  const side = strapSide(strap)
  return side === 'centre' ? `${name} in the middle` : `${side} ${name}`
}

/** What a finding is about. */
export const plainSubject = (subject: Finding['subject'], layout: Layout): string => {
  switch (subject) {
    case 'shoulder-pair':
      return 'both shoulder belts'
    case 'lap-pair':
      return 'both sides of the lap belt'
    case 'sub-pair':
      return 'both crotch belts'
    case 'head':
      return 'helmet'
    case 'body':
      return 'person in the seat'
    case 'belt':
      return 'all belts together'
    case 'shoulder-left':
    case 'shoulder-right':
    case 'lap-left':
    case 'lap-right':
    case 'sub-left':
    case 'sub-right':
    case 'sub-centre':
      return plainBelt(subject)
    default:
      return tubeName(subject.slice('tube:'.length), layout)
  }
}

/** The people of a place by name. */
const peopleNames = (place: Place): string =>
  listed(place.occupants.map(({ name }, index) => (name.trim() === '' ? `person ${index + 1}` : name.trim())))

/** "A", "A and B", "A, B and C" */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

/** A part of the drawing that can be pointed at and spoken about. */
export interface PlainPart {
  /** What comments are pinned to. */
  readonly partId: string
  readonly name: string
  /** What it is and what it is for, one or two sentences. */
  readonly about: string
  /** Where it is, vehicle frame. */
  readonly point: PointMm
  /** What the workshop calls it and what it hangs on, each explained with a drawing. */
  readonly terms: readonly TermId[]
}

const fittingWords = (form: AnchorForm): string => {
  switch (form) {
    case 'plate':
      return 'a flat metal tab with a bolt through it'
    case 'clevis':
      return 'two metal tabs that hold a bolt between them'
    case 'insert':
      return 'a bolt in a threaded piece that is welded into the tube'
    case 'eye':
      return 'a bolt with an eye'
    case 'wrap':
      return 'the belt itself, wrapped round the bar'
  }
}

const FORM_TERM: Readonly<Record<AnchorForm, TermId>> = {
  plate: 'tab',
  clevis: 'clevis',
  insert: 'insert',
  eye: 'eye-bolt',
  wrap: 'wrap',
}

const BELT_TERM = { shoulder: 'shoulder-strap', lap: 'lap-strap', sub: 'sub-strap' } as const

const BELT_TASK = {
  shoulder: 'It holds your shoulder back.',
  lap: 'It holds your hips down and back.',
  sub: 'It keeps the lap belt down and your hips from sliding under it.',
} as const

const placeParts = (place: Place, withPlace: (name: string) => string): readonly PlainPart[] => [
  {
    partId: handleId({ kind: 'hip', placeId: place.id }),
    name: withPlace(`who sits here: ${peopleNames(place)}`),
    about:
      'The picture shows a body of the measurements that were typed, with the hips where they belong in the seat.',
    point: place.seat.hipPoint,
    terms: [],
  },
  ...place.anchors.map(({ id, strap, mount }) => ({
    partId: handleId({ kind: 'anchor', placeId: place.id, anchorId: id }),
    name: withPlace(`where the ${plainBelt(strap)} is fixed`),
    about: `By ${fittingWords(anchorForm(mount))}. ${BELT_TASK[strapFamily(strap)]}`,
    point: mount.point,
    terms: [FORM_TERM[anchorForm(mount)], BELT_TERM[strapFamily(strap)]],
  })),
  ...place.seat.slots.map((slot) => ({
    partId: handleId({ kind: 'slot', placeId: place.id, slotId: slot.id }),
    name: withPlace(`opening in the seat for the ${slotBelts(slot)}`),
    about: 'The belt goes through the seat here. It should pass straight, without being bent by the edge.',
    point: vehiclePoint(drawnPose(place), slot.centre),
    terms: ['strap-slot'] as const,
  })),
]

const slotBelts = ({ straps }: Slot): string => listed(straps.map(plainBelt))

const TUBE_ABOUT: Readonly<Record<Tube['role'], string>> = {
  'harness-bar': 'The bar behind the seat that the shoulder belts are fixed to.',
  cage: 'A tube of the cage about you.',
  floor: 'A tube of the floor.',
}

/** Everything that a customer can point at, the people first. With several seats each is named with its own. */
export const plainParts = (layout: Layout): readonly PlainPart[] => {
  const isOnly = layout.places.length === 1
  return [
    ...layout.places.flatMap((place) =>
      placeParts(place, (name) => (isOnly ? name : `${placeName(place.id, layout)}: ${name}`)),
    ),
    ...layout.tubes.map((tube) => ({
      partId: `tube:${tube.id}`,
      name: tubeName(tube.id, layout),
      about: TUBE_ABOUT[tube.role],
      point: tubeMiddle(tube),
      terms: tube.role === 'harness-bar' ? (['harness-bar'] as const) : [],
    })),
  ]
}

const GONE = 'a part that is no longer drawn'

/** A part by the id that a comment or a kept fingerprint has, as the layout is now. */
export const plainPartName = (partId: string, layout: Layout): string => {
  if (partId === '') return 'the whole car'
  if (partId === DATUM_PART) return 'the point that everything is measured from'
  if (partId === RULES_PART) return 'the rules that it is checked against'
  const found = plainParts(layout).find((part) => part.partId === partId)
  if (found !== undefined) return found.name
  const [kind, placeId] = partId.split(':')
  const place = layout.places.find(({ id }) => id === placeId)
  if (place === undefined) return GONE
  if (kind === 'seat') return 'the seat'
  if (kind === 'people') return 'the people who sit there'
  return kind === 'belt' ? 'the belts themselves' : GONE
}
