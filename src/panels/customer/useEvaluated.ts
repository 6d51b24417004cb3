import { useCallback, useMemo, useSyncExternalStore } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import type { ShownEvaluation } from '../../domain/layout/evaluate/evaluation'
import { startCompleting } from '../../state/evaluation/evaluationRunner'
import { pageEvaluationWorker, roomsWorkers } from '../../state/evaluation/pageEvaluationWorker'
import { currentEvaluation, numbersOf } from '../../state/selectors'
import { createAppStore } from '../../state/store'

/**
 * As much as is known of a layout that may not be the one on the board: its numbers at once, how close everything is to its limit a
 * moment later. It has a store of its own, so that looking at it changes nothing.
 */
export const useEvaluated = (layout: Layout): ShownEvaluation => {
  const own = useMemo(() => createAppStore(layout), [layout])
  const follow = useCallback(
    (onChange: () => void) => {
      const stop =
        pageEvaluationWorker === null
          ? () => undefined
          : startCompleting(own, pageEvaluationWorker, roomsWorkers())
      const leave = own.state.subscribe(onChange)
      return () => {
        leave()
        stop()
      }
    },
    [own],
  )
  const read = (): ShownEvaluation => {
    const state = own.state.getState()
    // Until the worker is asked, only what is there at once: the rest would hold the page up.
    const isNotAsked = pageEvaluationWorker !== null && state.completion.kind === 'direct'
    return isNotAsked ? numbersOf(layout) : currentEvaluation(state)
  }
  return useSyncExternalStore(follow, read)
}
