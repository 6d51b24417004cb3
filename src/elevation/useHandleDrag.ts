import { useMemo, useRef, useState } from 'react'
import type { Elevation, PlanePointMm } from '../domain/geometry/plane'
import type { Handle } from '../domain/layout/edit/handle'
import { handleById } from '../domain/layout/edit/handles'
import { movedHandle } from '../domain/layout/edit/move'
import { nudgeMm } from '../state/nudge'
import { useApp, useAppStore } from '../state/react'
import type { PointerKind } from './handles/handleHit'
import { dragTarget } from './handles/handleTarget'

export interface HandleDrag {
  /** The handle in hand, or null; null again as soon as the gesture is called off from anywhere. */
  readonly draggedId: string | null
  /** What drags it; null when nothing does. */
  readonly draggedBy: PointerKind | null
  readonly begin: (id: string, kind: PointerKind) => void
  readonly by: (byMm: PlanePointMm) => void
  readonly end: () => void
  readonly cancel: () => void
  readonly isRunning: () => boolean
}

/** A drag of one handle as one gesture of the store: always computed from where it began, so nothing adds up on the way. */
export const useHandleDrag = (elevation: Elevation): HandleDrag => {
  const store = useAppStore()
  const hasGesture = useApp((state) => state.gesture !== null)
  const start = useRef<Handle | null>(null)
  const [held, setHeld] = useState<{ readonly id: string; readonly kind: PointerKind } | null>(null)
  const actions = useMemo(() => {
    const finish = (): void => {
      start.current = null
      setHeld(null)
    }
    const isRunning = (): boolean => start.current !== null && store.state.getState().gesture !== null
    return {
      begin: (id: string, kind: PointerKind) => {
        const handle = handleById(store.state.getState().layout, id)
        if (handle === null) return
        start.current = handle
        setHeld({ id, kind })
        store.actions.beginGesture(`Move ${handle.name}`)
      },
      by: (byMm: PlanePointMm) => {
        const handle = start.current
        if (handle === null || !isRunning()) return
        const stepMm = nudgeMm(store.state.getState().layout.units.length, 'small')
        const target = dragTarget(handle, elevation, byMm, stepMm)
        store.actions.dragTo((layout) => movedHandle(layout, handle.ref, target))
      },
      end: () => {
        if (isRunning()) store.actions.endGesture()
        finish()
      },
      cancel: () => {
        if (isRunning()) store.actions.cancelGesture()
        finish()
      },
      isRunning,
    }
  }, [store, elevation])
  const current = hasGesture ? held : null
  return { ...actions, draggedId: current?.id ?? null, draggedBy: current?.kind ?? null }
}
