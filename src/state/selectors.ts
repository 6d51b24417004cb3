import type { Elevation } from '../domain/geometry/plane'
import type { Layout, Place } from '../domain/layout/document/layout'
import { handleById } from '../domain/layout/edit/handles'
import { carriedOver } from '../domain/layout/evaluate/carriedOver'
import { evaluateLayout, layoutNumbers } from '../domain/layout/evaluate/evaluateLayout'
import type {
  CheckedEvaluation,
  Evaluation,
  ShownEvaluation,
  ShownPlace,
  SittingEvaluation,
} from '../domain/layout/evaluate/evaluation'
import { mirroredStrap } from '../domain/straps/strap'
import type { AppState } from './appState'
import type { WantedZone } from './evaluation/evaluationMessages'
import { isZonePending, type Rooms } from './evaluation/rooms'

/** How many evaluations are kept: the drawn one, the one a gesture started from and a few steps of undo. Our judgement. */
const KEPT_EVALUATIONS = 4

type Extent = 'everything' | 'what-moves'

let kept: readonly { readonly layout: Layout; readonly extent: Extent; readonly evaluation: Evaluation }[] =
  []

/**
 * What is computed from a layout on the page, once for each layout object, so that every view of one state sees the same numbers.
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

let keptNumbers: readonly { readonly layout: Layout; readonly numbers: ShownEvaluation }[] = []

/** Paths, numbers, and what is broken, kept or unchecked: what is there at every move. Kept like the above. */
export const numbersOf = (layout: Layout): ShownEvaluation => {
  const found = keptNumbers.find((entry) => entry.layout === layout)
  if (found !== undefined) return found.numbers
  const numbers = layoutNumbers(layout)
  keptNumbers = [{ layout, numbers }, ...keptNumbers].slice(0, KEPT_EVALUATIONS)
  return numbers
}

let lastCarried: { readonly layout: Layout; readonly rooms: Rooms; readonly shown: ShownEvaluation } | null =
  null

/** The numbers of a layout with what is still true of the rooms and zones of another. */
const numbersWith = (layout: Layout, rooms: Rooms): ShownEvaluation => {
  if (lastCarried?.layout === layout && lastCarried.rooms === rooms) return lastCarried.shown
  const shown = carriedOver(layout, numbersOf(layout), rooms)
  lastCarried = { layout, rooms, shown }
  return shown
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
export const completeEvaluation = (state: AppState): CheckedEvaluation | null => {
  const { completion, layout, gesture } = state
  if (completion.kind === 'direct') return gesture === null ? evaluationOf(layout, 'everything') : null
  return completion.kind === 'ready' && completion.layout === layout ? completion.evaluation : null
}

/**
 * All numbers of the drawn layout, at once, with rooms and zones as far as they are known; the same object before and after
 * remedies are there. Without a worker rooms and zones are worked out here.
 */
export const movingEvaluation = (state: AppState): ShownEvaluation => {
  const { completion, layout, rooms } = state
  if (completion.kind === 'direct') return evaluationOf(layout, 'what-moves')
  if (rooms?.layout === layout) return rooms.evaluation
  if (completion.kind === 'ready' && completion.layout === layout) return completion.evaluation
  return rooms === null ? numbersOf(layout) : numbersWith(layout, rooms)
}

/** As much as is known of the drawn layout. */
export const currentEvaluation = (state: AppState): ShownEvaluation =>
  completeEvaluation(state) ?? movingEvaluation(state)

export const currentPlace = (state: AppState): Place | undefined =>
  state.layout.places.find((place) => place.id === state.currentPlaceId) ?? state.layout.places[0]

export const currentPlaceEvaluation = (state: AppState): ShownPlace | undefined =>
  currentEvaluation(state).places.find((place) => place.placeId === currentPlace(state)?.id)

/** The chosen sitting, or the drawn position of the first occupant when none is chosen or the chosen one is gone. */
export const currentSitting = (state: AppState): SittingEvaluation | undefined => {
  const sittings = currentPlaceEvaluation(state)?.sittings ?? []
  return sittings.find((entry) => entry.sitting.id === state.currentSittingId) ?? sittings[0]
}

/** The anchor in hand and that of its pair; null while something else is in hand, or nothing. */
const anchorsInHand = ({ layout, selectedHandleId }: AppState): readonly string[] | null => {
  const ref = selectedHandleId === null ? undefined : handleById(layout, selectedHandleId)?.ref
  if (ref?.kind !== 'anchor') return null
  const anchors = layout.places.find((place) => place.id === ref.placeId)?.anchors ?? []
  const own = anchors.find((anchor) => anchor.id === ref.anchorId)
  const partner =
    own === undefined ? undefined : anchors.find((anchor) => anchor.strap === mirroredStrap(own.strap))
  return [ref.anchorId, ...(partner === undefined ? [] : [partner.id])]
}

/**
 * Which zones to hatch. While something moves: those of the anchor in hand and of its pair, of all anchors of the place when it is
 * something else. While everything is still: those that the view asks for.
 */
export const zonesShown = (state: AppState): 'none' | 'all' | readonly string[] => {
  const { showZones, board } = state.view
  // A list has room for all of them, in words.
  if (showZones === 'all' || board === 'list') return 'all'
  if (state.gesture !== null) return anchorsInHand(state) ?? 'all'
  return showZones === 'in-hand' ? (anchorsInHand(state) ?? 'none') : 'none'
}

/** Which zones are to be worked out: those to be hatched, and those of an anchor that may be moved next; what is in hand comes first. */
export const zonesWanted = (state: AppState): readonly WantedZone[] => {
  const shown = zonesShown(state)
  const inHand = anchorsInHand(state) ?? []
  const wanted = zonesIn(state, shown === 'none' ? inHand : shown)
  const isInHand = ({ anchorId }: WantedZone): boolean => inHand.includes(anchorId)
  return [...wanted.filter(isInHand), ...wanted.filter((zone) => !isInHand(zone))]
}

const zonesIn = (state: AppState, ids: 'all' | readonly string[]): readonly WantedZone[] => {
  const { elevations, board } = state.view
  const place = currentPlace(state)
  const seen: readonly Elevation[] =
    elevations === 'both' || board === 'list' ? ['side', 'top'] : [elevations]
  const anchors = (place?.anchors ?? []).filter(({ id }) => ids === 'all' || ids.includes(id))
  return seen.flatMap((elevation) =>
    anchors.map(({ id }) => ({ placeId: place?.id ?? '', anchorId: id, elevation })),
  )
}

/** What of the shown place is still being worked out but for remedies: rooms, or else zones that are to be hatched. */
export const waitingFor = (state: AppState): 'rooms' | 'zones' | null => {
  const { completion, layout, zonesFailure } = state
  if (completion.kind === 'direct' || (completion.kind === 'failed' && completion.layout === layout))
    return null
  if (currentPlaceEvaluation(state)?.findings.some(({ roomMm }) => roomMm === 'pending')) return 'rooms'
  const shown = zonesShown(state)
  if (shown === 'none' || zonesFailure?.layout === layout) return null
  const evaluation = movingEvaluation(state)
  return zonesIn(state, shown).some((zone) => isZonePending(evaluation, zone)) ? 'zones' : null
}

/** Why zones are missing that will not come by themselves; null when that is not so. */
export const zonesFailureOf = ({ completion, layout, rooms, zonesFailure }: AppState): string | null => {
  if (zonesFailure !== null) return zonesFailure.message
  // Zones wait for the rooms of their layout.
  const isStuck = completion.kind === 'failed' && completion.layout === layout && rooms?.layout !== layout
  return isStuck ? completion.message : null
}

export const canUndo = (state: AppState): boolean => state.history.past.length > 0
export const canRedo = (state: AppState): boolean => state.history.future.length > 0
export const lengthUnitOf = (state: AppState): Layout['units']['length'] => state.layout.units.length
