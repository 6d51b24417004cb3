import type { Region } from '../../domain/geometry/polygon'
import type { Layout } from '../../domain/layout/document/layout'
import type { Finding } from '../../domain/rules/finding'
import { numbersOf } from '../selectors'
import type { WantedZone } from './evaluationMessages'
import { type Rooms, roomsWith, withZone } from './rooms'
import { joinedParts, type RoomsPart } from './roomsPart'

/** A part of the rules at one place. */
interface Piece {
  readonly placeId: string
  readonly part: RoomsPart
}

/** The rooms of one layout as far as workers have answered, piece by piece, with zones that came before them. */
export interface RoomsRound {
  readonly layout: Layout
  /** Into which parts the rules of each place are cut. */
  readonly parts: readonly RoomsPart[]
  /** What no worker was asked for yet, in the order in which it is asked. */
  readonly unasked: readonly Piece[]
  readonly answered: readonly (Piece & { readonly findings: readonly Finding[] })[]
  readonly zones: readonly { readonly wanted: WantedZone; readonly region: Region }[]
}

/** The place that is looked at comes first. */
export const newRound = (layout: Layout, firstPlaceId: string, parts: readonly RoomsPart[]): RoomsRound => {
  const ids = layout.places.map(({ id }) => id)
  const places = [...ids.filter((id) => id === firstPlaceId), ...ids.filter((id) => id !== firstPlaceId)]
  const unasked = places.flatMap((placeId) => parts.map((part) => ({ placeId, part })))
  return { layout, parts, unasked, answered: [], zones: [] }
}

const isSamePiece = (a: Piece, b: Piece): boolean => a.placeId === b.placeId && a.part === b.part

/** A piece may be answered twice, when a worker died and another one was still at it. */
export const withFindings = (round: RoomsRound, piece: Piece, findings: readonly Finding[]): RoomsRound => ({
  ...round,
  answered: [...round.answered.filter((other) => !isSamePiece(other, piece)), { ...piece, findings }],
})

/** What a round has come to; null while a piece is missing. */
export const roomsOf = (
  { layout, parts, answered, zones }: RoomsRound,
  before: Rooms | null,
): Rooms | null => {
  if (answered.length < layout.places.length * parts.length) return null
  const numbers = numbersOf(layout)
  const found = layout.places.map(({ id }) =>
    joinedParts(
      numbers.ruleSet,
      answered.flatMap(({ placeId, findings }) => (placeId === id ? [findings] : [])),
    ),
  )
  const rooms = roomsWith(layout, numbers, found, before)
  return zones.reduce((so, { wanted, region }) => withZone(so, wanted, region), rooms)
}
