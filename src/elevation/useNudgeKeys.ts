import { type KeyboardEvent, useRef } from 'react'
import type { Elevation, PlanePointMm } from '../domain/geometry/plane'
import { movedHandle } from '../domain/layout/edit/move'
import { handleById } from '../domain/layout/edit/handles'
import { nudgeMm } from '../state/nudge'
import { useAppStore } from '../state/react'
import type { AppStore } from '../state/store'
import { nudgeTarget, refusalText } from './handles/handleTarget'

const ARROWS: Readonly<Record<string, PlanePointMm>> = {
  ArrowLeft: { uMm: -1, vMm: 0 },
  ArrowRight: { uMm: 1, vMm: 0 },
  ArrowUp: { uMm: 0, vMm: 1 },
  ArrowDown: { uMm: 0, vMm: -1 },
}

/** One series of presses: from the first arrow held down to the last one let go. */
interface Series {
  readonly handleId: string
  readonly heldKeys: Set<string>
}

const nudge = (
  store: AppStore,
  elevation: Elevation,
  handleId: string,
  byMm: PlanePointMm,
): string | null => {
  const { layout } = store.state.getState()
  const handle = handleById(layout, handleId)
  if (handle === null) return null
  const target = nudgeTarget(handle, elevation, byMm)
  if (target === null) return refusalText(handle, elevation)
  const moved = movedHandle(layout, handle.ref, target)
  store.actions.dragTo(() => moved)
  return null
}

/**
 * Arrow keys on a focused elevation move the selected handle by one step, with Shift by a larger one. A key held down is one gesture
 * and so one undo step; Escape calls it off. Returns handlers that say whether they used the key.
 */
export const useNudgeKeys = (elevation: Elevation, onRefused: (text: string) => void) => {
  const store = useAppStore()
  const series = useRef<Series | null>(null)
  const end = (): void => {
    if (series.current === null) return
    series.current = null
    store.actions.endGesture()
  }
  const onKeyDown = (event: KeyboardEvent): boolean => {
    const arrow = ARROWS[event.key]
    const { selectedHandleId, layout, gesture } = store.state.getState()
    if (arrow === undefined || selectedHandleId === null || event.ctrlKey || event.metaKey || event.altKey)
      return false
    // While something is dragged by hand the keys stay out of it.
    if (gesture !== null && series.current === null) return true
    if (series.current === null || gesture === null) {
      if (event.repeat) return true
      const handle = handleById(layout, selectedHandleId)
      if (handle === null) return false
      store.actions.beginGesture(`Nudge ${handle.name}`)
      series.current = { handleId: selectedHandleId, heldKeys: new Set() }
    }
    series.current.heldKeys.add(event.key)
    const stepMm = nudgeMm(layout.units.length, event.shiftKey ? 'large' : 'small')
    const refusal = nudge(store, elevation, series.current.handleId, {
      uMm: arrow.uMm * stepMm,
      vMm: arrow.vMm * stepMm,
    })
    if (refusal !== null) onRefused(refusal)
    return true
  }
  const onKeyUp = (event: KeyboardEvent): void => {
    series.current?.heldKeys.delete(event.key)
    if (series.current?.heldKeys.size === 0) end()
  }
  return { onKeyDown, onKeyUp, onBlur: end }
}
