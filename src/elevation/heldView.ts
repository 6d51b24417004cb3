import {
  fittedView,
  isAnotherDrawing,
  type PaneBounds,
  type PaneSizes,
  resizedView,
  type SharedView,
} from './viewTransform'

/** What a view can be fitted to: the place being worked on, or everything that is drawn. */
export type FitTarget = 'place' | 'car'

export interface FitBounds extends Readonly<Record<FitTarget, PaneBounds>> {
  /** Whose bounds `place` are. */
  readonly placeId: string
}

/** A view with what it was made for. */
export interface HeldView {
  readonly view: SharedView
  readonly bounds: FitBounds
  readonly sizes: PaneSizes
  /** Null once somebody has zoomed or panned; until then it may be fitted again when the page changes size. */
  readonly fitted: FitTarget | null
}

export const freshView = (bounds: FitBounds, sizes: PaneSizes, target: FitTarget): HeldView => ({
  view: fittedView(bounds[target], sizes),
  bounds,
  sizes,
  fitted: target,
})

const showsOthers = (before: PaneSizes, after: PaneSizes): boolean =>
  (before.side === undefined) !== (after.side === undefined) ||
  (before.top === undefined) !== (after.top === undefined)

const isAnother = (before: PaneBounds, after: PaneBounds): boolean =>
  isAnotherDrawing(before.side, after.side) || isAnotherDrawing(before.top, after.top)

/** What the view has to be fitted to anew, or null when it may stay: for other elevations, another place and another car. */
const fitAgain = (held: HeldView, bounds: FitBounds, sizes: PaneSizes): FitTarget | null => {
  if (showsOthers(held.sizes, sizes)) return held.fitted ?? 'place'
  const isPlaceFitted = held.fitted === 'place'
  if (isPlaceFitted && held.bounds.placeId !== bounds.placeId) return 'place'
  if (isPlaceFitted && isAnother(held.bounds.place, bounds.place)) return 'place'
  // A car seen as far as its seat stays so when a tube is added far from it.
  if (isAnother(held.bounds.car, bounds.car)) return held.fitted ?? 'car'
  return held.sizes === sizes ? null : held.fitted
}

/**
 * The view to hold after the drawing or the page changed: fitted again for another car, place or elevations, kept in the middle for
 * another size, and left alone by ordinary edits. The same object when there is nothing to do. First of all it is fitted to the
 * place: on a small screen the whole car would leave the seat too small to work on.
 */
export const heldView = (held: HeldView | null, bounds: FitBounds, sizes: PaneSizes): HeldView => {
  if (held === null) return freshView(bounds, sizes, 'place')
  const target = fitAgain(held, bounds, sizes)
  if (target !== null) return freshView(bounds, sizes, target)
  if (held.sizes !== sizes) return { ...held, view: resizedView(held.view, held.sizes, sizes), bounds, sizes }
  return held.bounds === bounds ? held : { ...held, bounds }
}
