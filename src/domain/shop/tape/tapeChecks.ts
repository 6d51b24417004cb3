import { pointDistanceMm, type PointMm } from '../../geometry/point'
import type { Tube } from '../../geometry/tube'
import type { Anchor } from '../../straps/anchor'
import { STRAP_IDS, type StrapId } from '../../straps/strap'
import { heldAt, heldPoint, type HeldAt } from './heldPoint'
import { chosenPlaces, isClear, type Told } from './chosenPlaces'
import { type TapePlace, tapePlaces } from './tapePlace'
import type { TapePoint } from './tapePoint'

/** What tape checks are made of: plain lists, in the order they are shown. */
export interface TapeCheckInput {
  readonly tapePoints: readonly TapePoint[]
  readonly tubes: readonly Tube[]
  readonly places: readonly { readonly id: string; readonly anchors: readonly Anchor[] }[]
}

/** A place that tapes start from, with the letter it has on the paper. */
export interface LetteredPlace extends TapePlace {
  /** A, B, C … without I and O, which look like figures; after Z comes AA. */
  readonly letter: string
}

/** A straight distance from a lettered place. */
interface DistanceToPlace {
  readonly letter: string
  /** mm > 0, between the points that the tape is held to. */
  readonly lengthMm: number
}

/** One anchor's distances. */
export interface AnchorChecks {
  readonly placeId: string
  readonly anchorId: string
  readonly strap: StrapId
  /** Other anchors that are the very same thing, as of joined shoulder straps. */
  readonly sameAs: readonly AnchorRef[]
  readonly heldAt: HeldAt
  /** Where the tape is held at the anchor, from the datum. */
  readonly held: PointMm
  /** In the order of the letters; four where there are so many places that a tape reaches. */
  readonly distances: readonly DistanceToPlace[]
  readonly told: Told
  /** How far the position worked out from these moves at most when every tape is off by 1 mm; null where it cannot be worked out. */
  readonly mmPerMm: number | null
}

export interface AnchorRef {
  readonly placeId: string
  readonly anchorId: string
  readonly strap: StrapId
}

/** A straight distance between two anchors of one place. */
interface AnchorPair {
  /** Left to right of one family of straps, or from one family to another across the car. */
  readonly kind: 'across' | 'diagonal'
  readonly from: AnchorRef
  readonly to: AnchorRef
  readonly lengthMm: number
}

/** A straight distance between two lettered places: whether the marks are where the paper says. */
interface PlacePair {
  readonly from: string
  readonly to: string
  readonly lengthMm: number
}

export interface TapeCheckTable {
  /** Only those that a distance to an anchor starts from. */
  readonly places: readonly LetteredPlace[]
  readonly placePairs: readonly PlacePair[]
  readonly rows: readonly AnchorChecks[]
  readonly pairs: readonly AnchorPair[]
}

/** Anchors this close are one thing: the one anchor of joined shoulder straps. Our judgement. */
const ONE_ANCHOR_MM = 1

/** A point nearer than this to another tells a tape nothing. Our judgement. */
const NOTHING_TO_MEASURE_MM = 20

interface HeldAnchor extends AnchorRef {
  readonly heldAt: HeldAt
  readonly held: PointMm
}

/**
 * Straight distances by which a tape alone shows whether every anchor is where the plan has it: from places on the car to each
 * anchor, and between anchors. Only distances whose straight line passes through no tube are given; whether the seat or anything
 * else is in the way is not known here. Pure geometry, derived here; what the tape is held to is told in `heldPoint.ts` and
 * `tapePlace.ts`, how the places are chosen in `chosenPlaces.ts`.
 */
export const tapeChecks = (input: TapeCheckInput): TapeCheckTable => {
  const { tubes } = input
  const all = tapePlaces(input)
  const anchors = input.places.map((place) => heldAnchors(place, tubes))
  const chosen = anchors.flatMap((ofPlace) =>
    firstsOf(ofPlace).map((anchor) => ({
      anchor,
      sameAs: ofPlace.filter((other) => other !== anchor && isSame(other, anchor)).map(anchorRef),
      choice: chosenPlaces(anchor.held, all, tubes),
    })),
  )
  const used = all.filter((place) => chosen.some(({ choice }) => choice.places.includes(place)))
  const places = used.map((place, index): LetteredPlace => ({ ...place, letter: letterOf(index) }))
  const rows = chosen.map(({ anchor, sameAs, choice }): AnchorChecks => ({
    ...anchor,
    sameAs,
    distances: places
      .filter((_, index) => choice.places.some((place) => place === used[index]))
      .map(({ letter, point }) => ({ letter, lengthMm: pointDistanceMm(point, anchor.held) })),
    told: choice.told,
    mmPerMm: choice.mmPerMm,
  }))
  return {
    places,
    placePairs: placePairs(places, tubes),
    rows,
    pairs: anchors.flatMap((ofPlace) => anchorPairs(firstsOf(ofPlace), tubes)),
  }
}

const heldAnchors = (
  { id, anchors }: TapeCheckInput['places'][number],
  tubes: readonly Tube[],
): readonly HeldAnchor[] =>
  anchors
    .toSorted((a, b) => STRAP_IDS.indexOf(a.strap) - STRAP_IDS.indexOf(b.strap))
    .map(({ id: anchorId, strap, mount }) => ({
      placeId: id,
      anchorId,
      strap,
      heldAt: heldAt(mount),
      held: heldPoint(mount, tubes),
    }))

const isSame = (one: HeldAnchor, other: HeldAnchor): boolean =>
  pointDistanceMm(one.held, other.held) < ONE_ANCHOR_MM

const firstsOf = (anchors: readonly HeldAnchor[]): readonly HeldAnchor[] =>
  anchors.filter((anchor, index) => !anchors.slice(0, index).some((earlier) => isSame(earlier, anchor)))

const anchorRef = ({ placeId, anchorId, strap }: HeldAnchor): AnchorRef => ({ placeId, anchorId, strap })

/** Without I and O, which look like figures. Source: common practice of drawing offices, no source. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

const letterOf = (index: number): string => {
  const letter = LETTERS.charAt(index % LETTERS.length)
  const turns = Math.floor(index / LETTERS.length)
  return turns === 0 ? letter : `${letterOf(turns - 1)}${letter}`
}

const ACROSS: readonly (readonly [StrapId, StrapId])[] = [
  ['shoulder-left', 'shoulder-right'],
  ['lap-left', 'lap-right'],
  ['sub-left', 'sub-right'],
]

const DIAGONAL: readonly (readonly [StrapId, StrapId])[] = [
  ['shoulder-left', 'lap-right'],
  ['shoulder-right', 'lap-left'],
  ['lap-left', 'sub-right'],
  ['lap-right', 'sub-left'],
  ['lap-left', 'sub-centre'],
  ['lap-right', 'sub-centre'],
]

/** Left to right, then across the car from one family to the next. */
const anchorPairs = (anchors: readonly HeldAnchor[], tubes: readonly Tube[]): readonly AnchorPair[] => {
  const pair = (kind: AnchorPair['kind'], straps: readonly [StrapId, StrapId]): readonly AnchorPair[] => {
    const from = anchors.find(({ strap }) => strap === straps[0])
    const to = anchors.find(({ strap }) => strap === straps[1])
    if (from === undefined || to === undefined || !isClear(from.held, to.held, tubes)) return []
    const lengthMm = pointDistanceMm(from.held, to.held)
    return lengthMm < NOTHING_TO_MEASURE_MM
      ? []
      : [{ kind, from: anchorRef(from), to: anchorRef(to), lengthMm }]
  }
  return [
    ...ACROSS.flatMap((straps) => pair('across', straps)),
    ...DIAGONAL.flatMap((straps) => pair('diagonal', straps)),
  ]
}

/** How many distances to earlier places each place is checked by. */
const CHECKS_OF_A_PLACE = 2

/** Every place from the second on with its shortest clear distances to earlier ones. */
const placePairs = (places: readonly LetteredPlace[], tubes: readonly Tube[]): readonly PlacePair[] =>
  places.flatMap((place, index) =>
    places
      .slice(0, index)
      .map((earlier) => ({ earlier, lengthMm: pointDistanceMm(earlier.point, place.point) }))
      .filter(({ earlier }) => isClear(earlier.point, place.point, tubes))
      .toSorted((a, b) => a.lengthMm - b.lengthMm)
      .slice(0, CHECKS_OF_A_PLACE)
      .map(({ earlier, lengthMm }) => ({ from: earlier.letter, to: place.letter, lengthMm })),
  )
