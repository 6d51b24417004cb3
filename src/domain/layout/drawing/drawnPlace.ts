import type { Layout, Place } from '../document/layout'
import type { ShownEvaluation, ShownPlace, SittingEvaluation } from '../evaluate/evaluation'
import type { DrawingOptions } from './options'

/** One place with the sitting that is drawn solid and those drawn as ghosts. */
export interface DrawnPlace {
  readonly place: Place
  readonly evaluation: ShownPlace
  readonly shown: SittingEvaluation
  readonly ghosts: readonly SittingEvaluation[]
}

/** The places that the options ask for; a place without an evaluated sitting has nothing to draw. */
export const drawnPlaces = (
  layout: Layout,
  evaluation: ShownEvaluation,
  options: DrawingOptions,
): readonly DrawnPlace[] =>
  layout.places.flatMap((place): DrawnPlace[] => {
    if (options.placeId !== null && options.placeId !== place.id) return []
    const placeEvaluation = evaluation.places.find((candidate) => candidate.placeId === place.id)
    const sittings = placeEvaluation?.sittings ?? []
    const shown = sittings.find((candidate) => candidate.sitting.id === options.sittingId) ?? sittings[0]
    if (placeEvaluation === undefined || shown === undefined) return []
    const ghosts = options.ghosts ? sittings.filter((candidate) => candidate !== shown) : []
    return [{ place, evaluation: placeEvaluation, shown, ghosts }]
  })
