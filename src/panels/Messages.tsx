import type { ReactElement } from 'react'
import { useActions, useApp } from '../state/react'

/** The last message, in the flow of the page so that it covers nothing. */
export const NoticeBar = (): ReactElement | null => {
  const notice = useApp((state) => state.notice)
  const { dismissNotice } = useActions()
  if (notice === null) return null
  return (
    <div
      className="notice no-print"
      data-kind={notice.kind}
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

/** Says every change aloud to those who do not see it. */
export const LiveRegion = (): ReactElement => {
  const announcement = useApp((state) => state.announcement)
  return (
    <p className="visually-hidden" aria-live="polite" data-testid="announcement">
      {announcement}
    </p>
  )
}
