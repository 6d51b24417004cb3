import type { ReactElement } from 'react'

export interface ViewBarProps {
  readonly onZoom: (factor: number) => void
  readonly onFit: () => void
  readonly ghosts: boolean
  readonly onGhosts: (ghosts: boolean) => void
  readonly note: string
  /** Takes the element that is written to directly on every pointer move, without rendering. */
  readonly onReadout: (element: HTMLOutputElement | null) => void
}

/** One press zooms by this much. Our judgement. */
const BUTTON_ZOOM = 1.4

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
      <button type="button" onClick={onFit}>
        Fit
      </button>
      <label className="view-ghosts">
        <input type="checkbox" checked={ghosts} onChange={(event) => onGhosts(event.currentTarget.checked)} />
        Other sittings
      </label>
    </div>
    <output className="view-readout" data-testid="cursor-readout" ref={onReadout} aria-live="off" />
    <p className="view-note" role="status">
      {note}
    </p>
  </div>
)
