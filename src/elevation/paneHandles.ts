import { useMemo } from 'react'
import { type Elevation, projected } from '../domain/geometry/plane'
import type { Layout } from '../domain/layout/document/layout'
import type { Handle } from '../domain/layout/edit/handle'
import { handlesOf } from '../domain/layout/edit/handles'
import type { HandleSpot } from './handles/handleHit'
import { isMovableIn } from './handles/handleTarget'
import type { PaintedHandle } from './paint/paintHandles'
import { toPx, type ViewTransform } from './viewTransform'

/** The handles of the current place and of the chassis; those of other places belong to their own tab. */
export const usePlaceHandles = (layout: Layout, placeId: string): readonly Handle[] =>
  useMemo(
    () => handlesOf(layout).filter(({ ref }) => !('placeId' in ref) || ref.placeId === placeId),
    [layout, placeId],
  )

export const handleSpots = (
  handles: readonly Handle[],
  elevation: Elevation,
  view: ViewTransform,
): readonly HandleSpot[] =>
  handles.map((handle) => ({
    id: handle.id,
    at: toPx(view, projected(handle.point, elevation)),
    isMovable: isMovableIn(handle, elevation),
    isMinor: handle.ref.kind === 'tube-point',
  }))

const lookOf = (handle: Handle, isMovable: boolean): PaintedHandle['look'] => {
  if (!isMovable) return 'fixed'
  return handle.ref.kind === 'tube-point' ? 'small' : 'main'
}

/** The handles as the canvas shows them, the selected one last so that it lies on top. */
export const usePaintedHandles = (
  handles: readonly Handle[],
  elevation: Elevation,
  view: ViewTransform,
  selectedId: string | null,
): readonly PaintedHandle[] =>
  useMemo(
    () =>
      handles
        .map((handle) => ({
          at: toPx(view, projected(handle.point, elevation)),
          look: lookOf(handle, isMovableIn(handle, elevation)),
          isSelected: handle.id === selectedId,
        }))
        .toSorted((a, b) => Number(a.isSelected) - Number(b.isSelected)),
    [handles, elevation, view, selectedId],
  )
