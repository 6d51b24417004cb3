import type { ReactElement } from 'react'
import type { Handle } from '../domain/layout/edit/handle'
import { useActions, useApp } from '../state/react'
import { isMovableIn } from './handles/handleTarget'
import type { Elevation } from '../domain/geometry/plane'
import type { PointPx, SizePx } from './viewTransform'

/** Handles that lie where a finger or pen tapped, nearest first. */
export interface Crowd {
  readonly ids: readonly string[]
  readonly at: PointPx
}

/** Clear of the finger, so that what was tapped stays in sight. Our judgement. */
const BESIDE_PX = 28

/** Which of several parts under one fingertip is meant: a short list beside it, until something is chosen or touched. */
export const CrowdChooser = (props: {
  readonly crowd: Crowd
  readonly elevation: Elevation
  readonly handles: readonly Handle[]
  readonly pane: SizePx
  readonly onClose: () => void
}): ReactElement | null => {
  const { crowd, elevation, handles, pane, onClose } = props
  const selectedId = useApp((state) => state.selectedHandleId)
  const { selectHandle } = useActions()
  const candidates = crowd.ids.flatMap((id) => handles.find((handle) => handle.id === id) ?? [])
  if (candidates.length < 2) return null
  const isLeft = crowd.at.xPx > pane.widthPx / 2
  const isLow = crowd.at.yPx > pane.heightPx / 2
  return (
    <div
      className="crowd-chooser"
      role="group"
      aria-label="Which part is meant?"
      data-testid="crowd-chooser"
      style={{
        [isLeft ? 'right' : 'left']: (isLeft ? pane.widthPx - crowd.at.xPx : crowd.at.xPx) + BESIDE_PX,
        [isLow ? 'bottom' : 'top']: isLow ? pane.heightPx - crowd.at.yPx : crowd.at.yPx,
        maxWidth: Math.max(crowd.at.xPx, pane.widthPx - crowd.at.xPx) - BESIDE_PX - 8,
        maxHeight: Math.max(crowd.at.yPx, pane.heightPx - crowd.at.yPx) - 8,
      }}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return
        event.stopPropagation()
        onClose()
      }}
    >
      {candidates.map((handle) => (
        <button
          key={handle.id}
          type="button"
          aria-pressed={handle.id === selectedId}
          onClick={() => {
            selectHandle(handle.id)
            onClose()
          }}
        >
          {handle.name}
          {isMovableIn(handle, elevation) ? null : <small> does not move in this elevation</small>}
        </button>
      ))}
    </div>
  )
}
