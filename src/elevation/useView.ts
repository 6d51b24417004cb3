import { useCallback, useLayoutEffect, useMemo, useRef, useState } from 'react'
import { type FitBounds, type FitTarget, freshView, type HeldView, heldView } from './heldView'
import type { PaneSizes, SharedView } from './viewTransform'

export interface ViewControl {
  readonly view: SharedView
  /** The latest view, also between two renders, when several pointer events arrive in one frame. */
  readonly latest: () => SharedView
  readonly set: (view: SharedView) => void
  readonly fit: (target: FitTarget) => void
  /** Nobody has zoomed or panned since the drawing was fitted. */
  readonly isFitted: boolean
}

/** The one view that both elevations share. It follows the page's size and another car, and otherwise belongs to the user. */
export const useView = (bounds: FitBounds, sizes: PaneSizes): ViewControl => {
  const [stored, setStored] = useState<HeldView | null>(null)
  const held = heldView(stored, bounds, sizes)
  // Kept while rendering, as React allows for a component's own state: the first paint already has the right view.
  if (held !== stored) setStored(held)
  const current = useRef(held)
  useLayoutEffect(() => {
    current.current = held
  }, [held])
  const put = useCallback((next: HeldView) => {
    current.current = next
    setStored(next)
  }, [])
  const latest = useCallback(() => current.current.view, [])
  const set = useCallback((view: SharedView) => put({ ...current.current, view, fitted: null }), [put])
  const fit = useCallback(
    (target: FitTarget) => put(freshView(current.current.bounds, current.current.sizes, target)),
    [put],
  )
  const { view } = held
  const isFitted = held.fitted !== null
  return useMemo(() => ({ view, isFitted, latest, set, fit }), [view, isFitted, latest, set, fit])
}
