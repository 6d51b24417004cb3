import type { Region } from '../../domain/geometry/polygon'
import type { Layout } from '../../domain/layout/document/layout'
import type { Finding } from '../../domain/rules/finding'
import { numbersOf } from '../selectors'
import type { WantedZone } from './evaluationMessages'
import { type Rooms, roomsWith, withZone } from './rooms'

/** The rooms of one layout as far as workers have answered, place by place, with zones that came before them. */
export interface RoomsRound {
  readonly layout: Layout
  /** Places that no worker was asked for yet, in the order in which they are asked. */
  readonly unasked: readonly string[]
  readonly findings: ReadonlyMap<string, readonly Finding[]>
  readonly zones: readonly { readonly wanted: WantedZone; readonly region: Region }[]
}

/** The place that is looked at comes first. */
export const newRound = (layout: Layout, firstPlaceId: string): RoomsRound => {
  const ids = layout.places.map(({ id }) => id)
  return {
    layout,
    unasked: [...ids.filter((id) => id === firstPlaceId), ...ids.filter((id) => id !== firstPlaceId)],
    findings: new Map(),
    zones: [],
  }
}

export const withFindings = (
  round: RoomsRound,
  placeId: string,
  findings: readonly Finding[],
): RoomsRound => ({ ...round, findings: new Map([...round.findings, [placeId, findings]]) })

/** What a round has come to; null while a place is missing. */
export const roomsOf = ({ layout, findings, zones }: RoomsRound, before: Rooms | null): Rooms | null => {
  const found = layout.places.flatMap(({ id }) => {
    const ofPlace = findings.get(id)
    return ofPlace === undefined ? [] : [ofPlace]
  })
  if (found.length < layout.places.length) return null
  const rooms = roomsWith(layout, numbersOf(layout), found, before)
  return zones.reduce((so, { wanted, region }) => withZone(so, wanted, region), rooms)
}
