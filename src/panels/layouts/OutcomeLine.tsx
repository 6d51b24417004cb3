import { type ReactElement, useEffect, useRef } from 'react'
import type { ShelfActions } from './useShelfActions'

/** What came of the last change. Its card may be gone, and the keyboard goes on from here then. */
export const OutcomeLine = (props: {
  readonly outcome: ShelfActions['outcome']
  readonly onPutBack: (ids: readonly string[]) => void
}): ReactElement => {
  const { outcome, onPutBack } = props
  const line = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (outcome.words !== '' && (document.activeElement === document.body || document.activeElement === null))
      line.current?.focus({ preventScroll: true })
  }, [outcome])
  return (
    <div ref={line} tabIndex={-1} className="layout-outcome" data-testid="layouts-outcome">
      <span role="status">{outcome.words}</span>
      {outcome.binnedIds.length === 0 ? null : (
        <button type="button" onClick={() => onPutBack(outcome.binnedIds)}>
          Put back
        </button>
      )}
    </div>
  )
}
