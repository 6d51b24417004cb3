import {
  fittedView,
  isAnotherDrawing,
  type PaneBounds,
  type PaneSizes,
  resizedView,
  type SharedView,
} from './viewTransform'

/** A view with what it was made for. */
export interface HeldView {
  readonly view: SharedView
  readonly bounds: PaneBounds
  readonly sizes: PaneSizes
  /** Nobody has zoomed or panned since it was fitted: it may be fitted again when the page changes size. */
  readonly isFitted: boolean
}

export const freshView = (bounds: PaneBounds, sizes: PaneSizes): HeldView => ({
  view: fittedView(bounds, sizes),
  bounds,
  sizes,
  isFitted: true,
})

const showsOthers = (before: PaneSizes, after: PaneSizes): boolean =>
  (before.side === undefined) !== (after.side === undefined) ||
  (before.top === undefined) !== (after.top === undefined)

/**
 * The view to hold after the drawing or the page changed: fitted again for another car or other elevations, kept in the middle for
 * another size, and left alone by ordinary edits. The same object when there is nothing to do.
 */
export const heldView = (held: HeldView | null, bounds: PaneBounds, sizes: PaneSizes): HeldView => {
  if (held === null || showsOthers(held.sizes, sizes)) return freshView(bounds, sizes)
  if (isAnotherDrawing(held.bounds.side, bounds.side) || isAnotherDrawing(held.bounds.top, bounds.top))
    return freshView(bounds, sizes)
  if (held.sizes !== sizes)
    return held.isFitted
      ? freshView(bounds, sizes)
      : { ...held, view: resizedView(held.view, held.sizes, sizes), bounds, sizes }
  return held.bounds === bounds ? held : { ...held, bounds }
}
