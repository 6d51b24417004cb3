import { useEffect, useMemo } from 'react'
import { useStore } from 'zustand'
import type { Elevation } from '../../domain/geometry/plane'
import type { Photo } from '../../domain/measure/photo/photo'
import { pageLaidPhotos, slidOpacity } from '../../state/photos/pagePictures'
import { useApp, useKept } from '../../state/react'
import type { PaintedPhoto } from './paintPhoto'

const NONE: readonly Photo[] = []

/** The photos under one elevation that are shown and ready; the very same list while nothing about them changes, whatever moves in the drawing. */
export const usePaintedPhotos = (elevation: Elevation): readonly PaintedPhoto[] => {
  const photos = useApp((state) => state.layout.photos) ?? NONE
  const laid = useKept(pageLaidPhotos.state)
  const slid = useStore(slidOpacity)
  // All that are shown, whichever elevation asks: both ask for the same.
  useEffect(() => pageLaidPhotos.show(photos.filter(({ shown }) => shown)), [photos])
  return useMemo(
    () =>
      photos.flatMap((photo) => {
        if (photo.elevation !== elevation || !photo.shown) return []
        const ready = pageLaidPhotos.of(photo, laid)
        const opacity = slid?.photoId === photo.id ? slid.opacity : photo.opacity
        return ready === null ? [] : [{ id: photo.id, ...ready, opacity }]
      }),
    [photos, laid, slid, elevation],
  )
}
