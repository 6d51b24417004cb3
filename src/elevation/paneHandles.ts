import { useMemo } from 'react'
import { type Elevation, projected } from '../domain/geometry/plane'
import type { Handle, HandleRef } from '../domain/layout/edit/handle'
import { handlesOfPlace, shellHandlesOf } from '../domain/layout/edit/handles'
import { useApp } from '../state/react'
import { currentPlace } from '../state/selectors'
import type { HandleSpot } from './handles/handleHit'
import { isMovableIn } from './handles/handleTarget'
import type { PaintedHandle } from './paint/paintHandles'
import { toPx, type ViewTransform } from './viewTransform'

/**
 * The handles of the current place and of the chassis; those of other places belong to their own tab. While its shell is shaped,
 * the points of its outline instead, so that nothing else lies under the finger, and what is taken hold of in the parts list.
 */
export const usePaneHandles = (elevation: Elevation): readonly Handle[] => {
  const layout = useApp((state) => state.layout)
  const place = useApp(currentPlace)
  const shaped = useApp((state) => state.view.shell === 'shaped')
  const selectedId = useApp((state) => state.selectedHandleId)
  const mounts = useMemo(() => handlesOfPlace(layout, place?.id), [layout, place?.id])
  return useMemo(() => {
    if (!shaped || place === undefined) return mounts
    const points = shellHandlesOf(place).filter(
      ({ ref }) => ref.kind === 'shell-point' && ref.elevation === elevation,
    )
    return [...points, ...mounts.filter((handle) => handle.id === selectedId)]
  }, [shaped, place, mounts, elevation, selectedId])
}

/** Small, because there are many of them close together. */
const isSmall = (ref: HandleRef): boolean => ref.kind === 'tube-point' || ref.kind === 'shell-point'

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
  return isSmall(handle.ref) ? 'small' : 'main'
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
