import { useState, type ReactElement } from 'react'
import { useActions, useApp } from '../state/react'
import { zonesFailureOf } from '../state/selectors'
import { failureClause } from './WorkStatus'

/**
 * Why zones are missing, as it was when a drag began: nothing comes or goes above the drawing meanwhile, or it would jump under the
 * hand. Null when that is not so.
 */
export const useSettledZonesFailure = (): string | null => {
  const failure = useApp(zonesFailureOf)
  const isDragging = useApp((state) => state.gesture !== null)
  const [shown, setShown] = useState(failure)
  if (isDragging || shown === failure) return shown
  setShown(failure)
  return failure
}

/** Where zones would be and are not: that they are unknown, why, and the way to have them after all. */
export const ZoneStatus = (): ReactElement => {
  const { tryAgain } = useActions()
  const failure = useSettledZonesFailure()
  return (
    <div className="zone-status" role="status" data-testid="zone-status">
      {failure === null ? null : (
        <>
          <p>
            Permitted zones are not known<span className="zone-status-why"> ({failureClause(failure)})</span>:
            no hatch does not mean no zone.
          </p>
          <button type="button" onClick={tryAgain}>
            Try again
          </button>
        </>
      )}
    </div>
  )
}
