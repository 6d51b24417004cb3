import { useCallback, useLayoutEffect, useRef } from 'react'
import type { Elevation } from '../domain/geometry/plane'
import { useAppStore } from '../state/react'
import type { AppStore } from '../state/store'
import type { PaneProps } from './ElevationPane'
import { refusalText } from './handles/handleTarget'
import { PanePointer, type PanePort } from './panePointer'
import { handleSpots } from './paneHandles'
import type { HandleDrag } from './useHandleDrag'
import { paneTransform } from './viewTransform'

interface Latest {
  readonly props: PaneProps
  readonly drag: HandleDrag
}

/** The pane's side of the pointer machine; everything is looked up when it is needed, so nothing goes stale. */
const panePort = (elevation: Elevation, store: AppStore, latest: () => Latest): PanePort => ({
  elevation,
  spots: () => {
    const { handles, control } = latest().props
    return handleSpots(handles, elevation, paneTransform(control.latest(), elevation))
  },
  selectedId: () => store.state.getState().selectedHandleId,
  view: () => latest().props.control.latest(),
  sizes: () => latest().props.sizes,
  setView: (view) => latest().props.control.set(view),
  select: (id) => {
    latest().props.onRefused('')
    store.actions.selectHandle(id)
  },
  refuse: (id) => {
    const handle = latest().props.handles.find((candidate) => candidate.id === id)
    if (handle !== undefined) latest().props.onRefused(refusalText(handle, elevation))
  },
  offer: (ids, at) => latest().props.onCrowd({ ids, at }),
  beginDrag: (id, kind) => latest().drag.begin(id, kind),
  dragBy: (byMm) => latest().drag.by(byMm),
  endDrag: () => latest().drag.end(),
  cancelDrag: () => latest().drag.cancel(),
  isDragRunning: () => latest().drag.isRunning(),
  onNextFrame: (callback) => void requestAnimationFrame(callback),
})

/** The pointer machine of one pane, kept for its life; made when the first pointer arrives. */
export const usePanePointer = (props: PaneProps, drag: HandleDrag): (() => PanePointer) => {
  const store = useAppStore()
  const { elevation } = props
  const latest = useRef<Latest>({ props, drag })
  useLayoutEffect(() => {
    latest.current = { props, drag }
  })
  const pointer = useRef<PanePointer>(null)
  return useCallback(() => {
    pointer.current ??= new PanePointer(panePort(elevation, store, () => latest.current))
    return pointer.current
  }, [elevation, store])
}
