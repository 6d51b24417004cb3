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
 * What is computed from a layout, once for each layout object, so that every view of one state sees the same numbers.
 * Only the last few are kept: undo may hold thousands of layouts and their evaluations are large.
 */
export const evaluationOf = (layout: Layout, extent: Extent): Evaluation => {
  const found = kept.find(
    (entry) => entry.layout === layout && (entry.extent === 'everything' || entry.extent === extent),
  )
  if (found !== undefined) return found.evaluation
  const evaluation = evaluateLayout(layout, { extent })
  kept = [{ layout, extent, evaluation }, ...kept].slice(0, KEPT_EVALUATIONS)
  return evaluation
}

/** How remedies and tolerance cases of the drawn layout stand; `held` while a gesture runs, when nobody looks for them. */
export const completionOf = (state: AppState): 'ready' | 'working' | 'failed' | 'held' => {
  const { completion, layout, gesture } = state
  if (completion.kind === 'direct') return gesture === null ? 'ready' : 'held'
  if (completion.layout === layout && completion.kind === 'ready') return 'ready'
  if (gesture !== null) return 'held'
  return completion.layout === layout ? completion.kind : 'working'
}

/** The drawn layout with remedies and tolerance cases; null until they are there. */
export const completeEvaluation = (state: AppState): Evaluation | null => {
  const { completion, layout, gesture } = state
  if (completion.kind === 'direct') return gesture === null ? evaluationOf(layout, 'everything') : null
  return completion.kind === 'ready' && completion.layout === layout ? completion.evaluation : null
}

/** All numbers, verdicts, rooms and zones of the drawn layout, at once; the same object before and after remedies are there. */
export const movingEvaluation = (state: AppState): Evaluation => evaluationOf(state.layout, 'what-moves')

/** As much as is known of the drawn layout. */
export const currentEvaluation = (state: AppState): Evaluation =>
  completeEvaluation(state) ?? movingEvaluation(state)

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
