import { useMemo, type ReactElement } from 'react'
import { handleById } from '../domain/layout/edit/handles'
import { lengthText, lengthWithUnit } from '../domain/units/length'
import type { AppState } from '../state/appState'
import { useActions, useApp, useAppStore } from '../state/react'
import { currentPlaceEvaluation } from '../state/selectors'

/**
 * The last message. It stands `over` the panels or, where there are none, over the drawing, so that nothing on the drawing jumps when
 * it comes and goes; over the drawing it steps aside while something is dragged. Before the sheet it takes room of its own.
 */
export const NoticeBar = (props: {
  readonly over: 'nothing' | 'panels' | 'drawing'
}): ReactElement | null => {
  const notice = useApp((state) => state.notice)
  const isDragging = useApp((state) => state.gesture !== null)
  const { dismissNotice } = useActions()
  if (notice === null) return null
  return (
    <div
      className="notice no-print"
      data-kind={notice.kind}
      data-over={props.over}
      data-aside={props.over === 'drawing' && isDragging ? 'true' : undefined}
      role={notice.kind === 'problem' ? 'alert' : 'status'}
    >
      <div className="notice-text">
        <p>{notice.text}</p>
        {notice.details.length === 0 ? null : (
          <ul>
            {notice.details.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        )}
      </div>
      <button type="button" aria-label="Close this message" onClick={dismissNotice}>
        Close
      </button>
    </div>
  )
}

/** What a change came to: where the part in hand is now and how many findings are broken. */
const outcome = (state: AppState): string => {
  const { layout, selectedHandleId } = state
  const handle = selectedHandleId === null ? null : handleById(layout, selectedHandleId)
  const unit = layout.units.length
  const { xMm, yMm, zMm } = handle?.point ?? { xMm: 0, yMm: 0, zMm: 0 }
  const place =
    handle === null
      ? ''
      : ` ${handle.name}: x ${lengthText(xMm, unit)}, y ${lengthText(yMm, unit)}, z ${lengthWithUnit(zMm, unit)}.`
  const findings = currentPlaceEvaluation(state)?.findings ?? []
  const broken = findings.filter((finding) => finding.verdict === 'broken').length
  return `${place} ${broken} broken.`
}

/** Says every change aloud to those who do not see it, once it is done: a drag is not read out pixel by pixel. */
export const LiveRegion = (): ReactElement => {
  const store = useAppStore()
  const announcement = useApp((state) => state.announcement)
  const done = useApp((state) => state.history.present)
  const words = useMemo(() => {
    const state = store.state.getState()
    return announcement === '' || state.layout !== done ? announcement : `${announcement}.${outcome(state)}`
  }, [announcement, done, store])
  return (
    <p className="visually-hidden" aria-live="polite" data-testid="announcement">
      {words}
    </p>
  )
}
