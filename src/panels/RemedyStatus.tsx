import { useEffect, useState, type ReactElement } from 'react'
import { useActions, useApp } from '../state/react'
import { completionOf } from '../state/selectors'

/** What is there sooner than this, ms, was never worth a word. Our judgement. */
const QUIET_MS = 300

/** Whether remedies have been worked out for longer than is worth no word. */
const useIsWorking = (): boolean => {
  const isWorking = useApp((state) => completionOf(state) === 'working')
  const [isLong, setLong] = useState(false)
  useEffect(() => {
    if (!isWorking) return undefined
    const timer = setTimeout(() => setLong(true), QUIET_MS)
    return () => {
      clearTimeout(timer)
      setLong(false)
    }
  }, [isWorking])
  return isWorking && isLong
}

/** The way on where remedies could not be worked out beside the page. */
const Failure = (): ReactElement => {
  const { completeHere } = useActions()
  const message = useApp(({ completion }) => (completion.kind === 'failed' ? completion.message : ''))
  return (
    <div className="completion-failure">
      <p>
        What could mend these findings could not be worked out in the background ({message.replace(/\.$/, '')}
        ). All numbers and verdicts are right. Work it out here: the page stands still meanwhile.
      </p>
      <button type="button" onClick={completeHere}>
        Work it out here
      </button>
    </div>
  )
}

/** How the remedies stand, said politely: nothing while they are there, and nothing of what takes no time. */
export const RemedyStatus = (): ReactElement => {
  const isWorking = useIsWorking()
  const isFailed = useApp((state) => completionOf(state) === 'failed')
  return (
    <div className="remedy-status" role="status" data-testid="remedy-status">
      {isWorking ? <p className="hint">Working out remedies…</p> : null}
      {isFailed ? <Failure /> : null}
    </div>
  )
}
