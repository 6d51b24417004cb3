import type { ReactElement } from 'react'
import { useActions, useApp } from '../state/react'

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
