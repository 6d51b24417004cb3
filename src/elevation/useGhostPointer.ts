import { useCallback, useEffect } from 'react'
import type { Elevation } from '../domain/geometry/plane'
import { ghostAt } from '../domain/layout/drawing/ghostAt'
import type { Drawing } from '../domain/layout/drawing/primitive'
import { useActions, useAppStore } from '../state/react'
import type { ViewControl } from './useView'
import { paneTransform, type PointPx, toMm } from './viewTransform'

/** How near a pointer has to be to an outline; thin lines are hard to meet exactly. Our judgement. */
const REACH_PX = 6

/** Names the ghost outline under the pointer; nothing while something is dragged or the pointer has left. */
export const useGhostPointer = (
  drawing: Drawing,
  elevation: Elevation,
  control: ViewControl,
): ((at: PointPx | null) => void) => {
  const store = useAppStore()
  const { pointAtSitting } = useActions()
  useEffect(() => () => pointAtSitting(null), [pointAtSitting])
  return useCallback(
    (at) => {
      if (at === null || store.state.getState().gesture !== null) return pointAtSitting(null)
      const view = paneTransform(control.latest(), elevation)
      pointAtSitting(ghostAt(drawing.primitives, toMm(view, at), REACH_PX / view.pxPerMm))
    },
    [drawing, elevation, control, store, pointAtSitting],
  )
}
