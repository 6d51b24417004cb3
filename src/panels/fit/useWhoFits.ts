import { useEffect, useMemo, useSyncExternalStore } from 'react'
import type { WhoFits } from '../../domain/layout/fit/whoFits'
import type { FitQuestion } from '../../state/fit/fitMessages'
import type { FitRun } from '../../state/fit/fitRunner'
import { pageFitRunner } from '../../state/fit/pageFitRunner'
import { isSameCount, questionOf } from '../../state/fit/staleFit'
import { useApp } from '../../state/react'
import { currentPlace } from '../../state/selectors'

/** How long a layout must have stayed the same before it is counted by itself. Our judgement. */
const IDLE_MS = 600

export interface WhoFitsView {
  /** The last count of this place, or null; it may be stale. */
  readonly result: WhoFits | null
  /** The layout has changed since that count. */
  readonly isStale: boolean
  readonly running: FitRun | null
  readonly wasCancelled: boolean
  readonly failure: string | null
  readonly start: () => void
  readonly cancel: () => void
}

/** The count for the current place: begun by itself when the layout has been left alone for a moment, and marked once it is stale. */
export const useWhoFits = (): WhoFitsView | null => {
  const layout = useApp((state) => state.layout)
  const placeId = useApp((state) => currentPlace(state)?.id)
  const isMoving = useApp((state) => state.gesture !== null)
  const { running, last, ended } = useSyncExternalStore(pageFitRunner.subscribe, pageFitRunner.state)
  const question = useMemo<FitQuestion | null>(
    () => (placeId === undefined ? null : { layout, placeId }),
    [layout, placeId],
  )
  const isThis = (other: FitQuestion | null): boolean =>
    other !== null && question !== null && isSameCount(other, question)
  const isFresh = isThis(last && questionOf(last))
  const isEnded = isThis(ended && ended.question)
  const isWanted = question !== null && !isMoving && !isFresh && !isEnded && !isThis(running)
  useEffect(() => {
    if (!isWanted) return undefined
    const timer = setTimeout(() => pageFitRunner.start(question), IDLE_MS)
    return () => clearTimeout(timer)
  }, [isWanted, question])
  if (question === null) return null
  const result = last !== null && last.result.placeId === question.placeId ? last.result : null
  return {
    result,
    isStale: result !== null && !isFresh,
    running,
    wasCancelled: isEnded && ended?.message === null,
    failure: isEnded ? (ended?.message ?? null) : null,
    start: () => pageFitRunner.start(question),
    cancel: pageFitRunner.cancel,
  }
}
