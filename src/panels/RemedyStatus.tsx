import type { ReactElement } from 'react'
import { useActions, useApp } from '../state/react'
import { completionOf, waitingFor } from '../state/selectors'
import { useIsLong } from './useIsLong'
import { failureClause } from './WorkStatus'

/** The way on where rooms or remedies could not be worked out beside the page. */
const Failure = (): ReactElement => {
  const { completeHere, tryAgain } = useActions()
  const message = useApp(({ completion }) => (completion.kind === 'failed' ? completion.message : ''))
  return (
    <div className="completion-failure">
      <p>
        What could mend these findings, and how much room is left where it is not said, could not be worked
        out in the background ({failureClause(message)}). All numbers are right, and what is broken and what
        is kept. Try again, or have it worked out here: the page stands still meanwhile.
      </p>
      <div className="button-row">
        <button type="button" onClick={tryAgain}>
          Try again
        </button>
        <button type="button" onClick={completeHere}>
          Work it out here
        </button>
      </div>
    </div>
  )
}

/** How room and remedies stand, said politely: nothing while they are there, and nothing of what takes no time. */
export const RemedyStatus = (): ReactElement => {
  const isWorking = useIsLong(useApp((state) => completionOf(state) === 'working'))
  const isMeasuring = useIsLong(useApp((state) => waitingFor(state) === 'rooms'))
  const isFailed = useApp((state) => completionOf(state) === 'failed')
  return (
    <div className="remedy-status" role="status" data-testid="remedy-status">
      {isMeasuring ? <p className="hint">Working out how much room is left…</p> : null}
      {isWorking ? <p className="hint">Working out remedies…</p> : null}
      {isFailed ? <Failure /> : null}
    </div>
  )
}
