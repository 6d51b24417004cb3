import type { ReactElement } from 'react'
import { harnessBars } from '../domain/layout/drawing/rearDrawing'
import { notMeasuredTitles } from '../domain/layout/firstLayout/notMeasured'
import { useActions, useApp } from '../state/react'
import type { PaperKind } from './paperKinds'

/** Nothing may be measured from a point that nobody can find. */
export const DatumMissing = (): ReactElement | null => {
  const isMissing = useApp((state) => state.layout.datum.trim() === '')
  return isMissing ? (
    <p className="waiting no-print" role="alert">
      <strong>The datum has no name:</strong> nobody in the shop would know where to measure from. Name the
      datum in Job, then print.
    </p>
  ) : null
}

/** Nothing may be welded from numbers that nobody measured or chose. */
export const NotMeasured = (): ReactElement | null => {
  const titles = useApp((state) => notMeasuredTitles(state.layout).join(' '))
  return titles === '' ? null : (
    <p className="waiting no-print" role="note">
      <strong>Not measured yet:</strong> {titles} The papers say so. Answer it under “Job” beside the drawing
      before anything is welded or cut.
    </p>
  )
}

/** What may be left out of the mount sheet; nothing to choose for a car without a harness bar, and for other papers. */
export const SheetChoices = ({ kind }: { readonly kind: PaperKind }): ReactElement | null => {
  const { setView } = useActions()
  const hasRearView = useApp((state) => state.view.sheetRearView)
  const hasBar = useApp((state) => harnessBars(state.layout).length > 0)
  if (kind.id !== 'mount-sheet' || !hasBar) return null
  return (
    <fieldset>
      <legend>On the sheet</legend>
      <button
        type="button"
        aria-pressed={hasRearView}
        onClick={() => setView({ sheetRearView: !hasRearView })}
      >
        Bar from behind
      </button>
    </fieldset>
  )
}
