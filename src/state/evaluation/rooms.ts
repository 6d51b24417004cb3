import type { Region } from '../../domain/geometry/polygon'
import type { Layout } from '../../domain/layout/document/layout'
import { carriedOver } from '../../domain/layout/evaluate/carriedOver'
import type { CheckedEvaluation, ShownEvaluation } from '../../domain/layout/evaluate/evaluation'
import type { Finding } from '../../domain/rules/finding'
import type { WantedZone } from './evaluationMessages'

/** A layout with the room of every finding, and with the zones that somebody wanted to see. */
export interface Rooms {
  readonly layout: Layout
  readonly evaluation: CheckedEvaluation
}

/** The numbers of a layout with the findings that a worker found, room and all; zones of before where they are the same. */
export const roomsWith = (
  layout: Layout,
  numbers: ShownEvaluation,
  findings: readonly (readonly Finding[])[],
  before: Rooms | null,
): Rooms => {
  const carried = before === null ? numbers : carriedOver(layout, numbers, before)
  const places = carried.places.map((place, index) => ({ ...place, findings: findings[index] ?? [] }))
  return { layout, evaluation: { ...carried, places } }
}

/** What was worked out on the page, with its zones left for a worker: a region is worked out there as soon as it is read. */
export const withoutZones = (layout: Layout, evaluation: CheckedEvaluation): Rooms => ({
  layout,
  evaluation: {
    ...evaluation,
    places: evaluation.places.map((place) => ({
      ...place,
      zones: place.zones.map(({ anchorId }) => ({ anchorId, side: 'pending', top: 'pending' })),
    })),
  },
})

/** The same with one zone more. */
export const withZone = (rooms: Rooms, wanted: WantedZone, region: Region): Rooms => ({
  ...rooms,
  evaluation: {
    ...rooms.evaluation,
    places: rooms.evaluation.places.map((place) =>
      place.placeId === wanted.placeId
        ? {
            ...place,
            zones: place.zones.map((zone) =>
              zone.anchorId === wanted.anchorId ? { ...zone, [wanted.elevation]: region } : zone,
            ),
          }
        : place,
    ),
  },
})

/** Whether a zone that is wanted is still to be worked out. */
export const isZonePending = (
  { places }: ShownEvaluation,
  { placeId, anchorId, elevation }: WantedZone,
): boolean =>
  places.find((place) => place.placeId === placeId)?.zones.find((zone) => zone.anchorId === anchorId)?.[
    elevation
  ] === 'pending'
