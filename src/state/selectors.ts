import type { Layout, Place } from '../domain/layout/document/layout'
import { evaluateLayout } from '../domain/layout/evaluate/evaluateLayout'
import type { Evaluation, PlaceEvaluation, SittingEvaluation } from '../domain/layout/evaluate/evaluation'
import type { AppState } from './appState'

/** How many evaluations are kept: the drawn one, the one a gesture started from and a few steps of undo. Our judgement. */
const KEPT_EVALUATIONS = 4

type Extent = 'everything' | 'what-moves'

let kept: readonly { readonly layout: Layout; readonly extent: Extent; readonly evaluation: Evaluation }[] =
  []

/**
 * Everything computed from a layout, once for each layout object, so that every view of one state sees the same numbers.
 * Only the last few are kept: undo may hold thousands of layouts and their evaluations are large.
 */
export const evaluationOf = (layout: Layout, extent: Extent = 'everything'): Evaluation => {
  const found = kept.find(
    (entry) => entry.layout === layout && (entry.extent === 'everything' || entry.extent === extent),
  )
  if (found !== undefined) return found.evaluation
  const evaluation = evaluateLayout(layout, { extent })
  kept = [{ layout, extent, evaluation }, ...kept].slice(0, KEPT_EVALUATIONS)
  return evaluation
}

/** While a gesture runs no remedies are looked for: they take longest and the next move makes them wrong. */
const extentIn = (state: AppState): Extent => (state.gesture === null ? 'everything' : 'what-moves')

export const currentEvaluation = (state: AppState): Evaluation => evaluationOf(state.layout, extentIn(state))

export const currentPlace = (state: AppState): Place | undefined =>
  state.layout.places.find((place) => place.id === state.currentPlaceId) ?? state.layout.places[0]

export const currentPlaceEvaluation = (state: AppState): PlaceEvaluation | undefined =>
  currentEvaluation(state).places.find((place) => place.placeId === currentPlace(state)?.id)

/** The chosen sitting, or the drawn position of the first occupant when none is chosen or the chosen one is gone. */
export const currentSitting = (state: AppState): SittingEvaluation | undefined => {
  const sittings = currentPlaceEvaluation(state)?.sittings ?? []
  return sittings.find((entry) => entry.sitting.id === state.currentSittingId) ?? sittings[0]
}

export const canUndo = (state: AppState): boolean => state.history.past.length > 0
export const canRedo = (state: AppState): boolean => state.history.future.length > 0
export const lengthUnitOf = (state: AppState): Layout['units']['length'] => state.layout.units.length
