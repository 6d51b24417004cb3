import type { ReactElement } from 'react'
import { useActions, useApp } from '../state/react'
import { completionOf, waitingFor } from '../state/selectors'
import { useIsLong } from './useIsLong'

/** The way on where rooms or remedies could not be worked out beside the page. */
const Failure = (): ReactElement => {
  const { completeHere } = useActions()
  const message = useApp(({ completion }) => (completion.kind === 'failed' ? completion.message : ''))
  return (
    <div className="completion-failure">
      <p>
        What could mend these findings, and how much room is left where it is not said, could not be worked
        out in the background ({message.replace(/\.$/, '')}). All numbers are right, and what is broken and
        what is kept. Work it out here: the page stands still meanwhile.
      </p>
      <button type="button" onClick={completeHere}>
        Work it out here
      </button>
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
