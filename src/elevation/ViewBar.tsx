import type { ReactElement } from 'react'
import { useActions, useApp } from '../state/react'
import type { FitTarget } from './heldView'

export interface ViewBarProps {
  readonly onZoom: (factor: number) => void
  readonly onFit: (target: FitTarget) => void
  readonly ghosts: boolean
  readonly onGhosts: (ghosts: boolean) => void
  readonly note: string
  /** Takes the element that is written to directly on every pointer move, without rendering. */
  readonly onReadout: (element: HTMLOutputElement | null) => void
}

/** One press zooms by this much. Our judgement. */
const BUTTON_ZOOM = 1.4

/**
 * The switch for the other sittings. While a shell is shaped its room says so and how to get the other handles back, whichever
 * panel is open; in the same place, so that the drawing keeps its size.
 */
const GhostSwitch = ({ ghosts, onGhosts }: Pick<ViewBarProps, 'ghosts' | 'onGhosts'>): ReactElement => {
  const shell = useApp((state) => state.view.shell)
  const { setView, selectHandle } = useActions()
  const stop = (): void => {
    selectHandle(null)
    setView({ shell: 'fixed' })
  }
  return shell === 'shaped' ? (
    <button type="button" onClick={stop}>
      End shaping
    </button>
  ) : (
    <label className="view-ghosts">
      <input type="checkbox" checked={ghosts} onChange={(event) => onGhosts(event.currentTarget.checked)} />
      Other sittings
    </label>
  )
}

/** The view's buttons and the numbers under the pointer, beside the drawing and never over it. */
export const ViewBar = ({ onZoom, onFit, ghosts, onGhosts, note, onReadout }: ViewBarProps): ReactElement => (
  <div className="view-bar">
    <div className="view-buttons" role="group" aria-label="View">
      <button type="button" onClick={() => onZoom(1 / BUTTON_ZOOM)} aria-label="Zoom out">
        −
      </button>
      <button type="button" onClick={() => onZoom(BUTTON_ZOOM)} aria-label="Zoom in">
        +
      </button>
      <button type="button" title="Fit the current place: key 1" onClick={() => onFit('place')}>
        Fit
      </button>
      <button type="button" title="Fit everything: key 0" onClick={() => onFit('car')}>
        Fit car
      </button>
      <GhostSwitch ghosts={ghosts} onGhosts={onGhosts} />
    </div>
    <output className="view-readout" data-testid="cursor-readout" ref={onReadout} aria-live="off" />
    <p className="view-note" role="status">
      {note}
    </p>
  </div>
)
