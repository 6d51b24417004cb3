import { useMemo } from 'react'
import { projected } from '../domain/geometry/plane'
import { useApp } from '../state/react'
import { currentSitting } from '../state/selectors'
import type { PaneProps } from './ElevationPane'
import { liveLines } from './handles/liveText'
import { usePaintedHandles } from './paneHandles'
import { paneTransform, toPx } from './viewTransform'

/** What the handle layer paints: the handles, and beside the dragged one its numbers. */
export const useLivePaint = (props: PaneProps, draggedId: string | null) => {
  const { elevation, handles, control } = props
  const layout = useApp((state) => state.layout)
  const sitting = useApp(currentSitting)
  const selectedId = useApp((state) => state.selectedHandleId)
  const view = useMemo(() => paneTransform(control.view, elevation), [control.view, elevation])
  const painted = usePaintedHandles(handles, elevation, view, selectedId)
  const live = useMemo(() => {
    const handle = handles.find((candidate) => candidate.id === draggedId)
    if (handle === undefined || sitting === undefined) return null
    return {
      at: toPx(view, projected(handle.point, elevation)),
      lines: liveLines(layout, handle, sitting, elevation),
    }
  }, [handles, draggedId, sitting, layout, view, elevation])
  return { view, handles: painted, live }
}
