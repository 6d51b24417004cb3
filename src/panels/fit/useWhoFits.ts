import { useEffect, useMemo } from 'react'
import type { WhoFits } from '../../domain/layout/fit/whoFits'
import type { FitQuestion, NothingToCount } from '../../state/fit/fitMessages'
import { pageFit } from '../../state/fit/pageFit'
import { isSameCount } from '../../state/fit/staleFit'
import { useApp, useKept } from '../../state/react'
import { currentPlace } from '../../state/selectors'
import type { TaskEnd } from '../../state/worker/task'
import { failureClause, type WorkView } from '../WorkStatus'

/** How long a layout must have stayed the same before it is counted by itself. Our judgement. */
const IDLE_MS = 600

interface WhoFitsView {
  /** The last count of this place, or null; it may be stale. */
  readonly result: WhoFits | null
  readonly work: WorkView
}

const endedWords = (ended: TaskEnd<FitQuestion, NothingToCount>): string => {
  switch (ended.kind) {
    case 'cancelled':
      return 'The count was cancelled.'
    case 'refused':
      return 'This place or its rule set is gone.'
    case 'failed':
      return `The count came to no end: ${failureClause(ended.message)}.`
  }
}

/** The count for the current place: begun by itself when the layout has been left alone for a moment, and marked once it is stale. */
export const useWhoFits = (): WhoFitsView | null => {
  const layout = useApp((state) => state.layout)
  const placeId = useApp((state) => currentPlace(state)?.id)
  const isMoving = useApp((state) => state.gesture !== null)
  const { running, last, ended } = useKept(pageFit.state)
  const question = useMemo<FitQuestion | null>(
    () => (placeId === undefined ? null : { layout, placeId }),
    [layout, placeId],
  )
  const isThis = (other: FitQuestion | null): boolean =>
    other !== null && question !== null && isSameCount(other, question)
  const isFresh = isThis(last && last.question)
  const isEnded = isThis(ended && ended.question)
  const isRunning = isThis(running && running.question)
  const isWanted = question !== null && !isMoving && !isFresh && !isEnded && !isRunning
  useEffect(() => {
    if (!isWanted) return undefined
    const timer = setTimeout(() => pageFit.start(question), IDLE_MS)
    return () => clearTimeout(timer)
  }, [isWanted, question])
  if (question === null) return null
  const result = last !== null && last.question.placeId === question.placeId ? last.value : null
  return {
    result,
    work: {
      running,
      answer: result === null ? 'none' : isFresh ? 'fresh' : 'stale',
      ended:
        isEnded && ended !== null ? { words: endedWords(ended), didFail: ended.kind === 'failed' } : null,
      start: () => pageFit.start(question),
      cancel: pageFit.cancel,
    },
  }
}
