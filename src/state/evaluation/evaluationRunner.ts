import type { Layout } from '../../domain/layout/document/layout'
import type { AppStore } from '../store'
import type { Completed } from './completion'
import type { News } from '../worker/workerMessages'
import { createWorkerRunner } from '../worker/workerRunner'
import {
  type EvaluationAnswer,
  type EvaluationQuestion,
  evaluationQuestion,
  type OpenEvaluationWorker,
} from './evaluationMessages'
import { startRooms } from './roomsRunner'

/** How many complete evaluations are kept: the drawn one and a few steps of undo. Our judgement. */
const KEPT = 4

/**
 * How long a layout must stay the same, ms, before a new worker is started for it when the one before was stopped in the middle:
 * an arrow key held down would start thirty a second. Our judgement.
 */
const QUIET_MS = 150

/**
 * Has every layout that stands still evaluated completely beside the page, the newest only and once its rooms are there, and puts
 * what comes of it into the store. While a gesture runs no remedy is worked out: the next move would make it wrong.
 */
const startRemedies = (store: AppStore, open: OpenEvaluationWorker): (() => void) => {
  let wanted: Layout | null = null
  let known: readonly Completed[] = []
  const keep = (completed: Completed): void => {
    known = [completed, ...known.filter(({ layout }) => layout !== completed.layout)].slice(0, KEPT)
  }
  const take = ({ layout }: EvaluationQuestion, answer: EvaluationAnswer): void => {
    const { rooms } = store.state.getState()
    if (answer.kind !== 'findings' || rooms?.layout !== layout) return
    const places = rooms.evaluation.places.map((place, index) => ({
      ...place,
      findings: answer.findings[index] ?? place.findings,
    }))
    store.actions.setCompletion({ kind: 'ready', layout, evaluation: { ...rooms.evaluation, places } })
  }
  const hear = (question: EvaluationQuestion, news: News<EvaluationAnswer>): void => {
    if (news.kind === 'answer') take(question, news.answer)
    else if (news.kind === 'failed')
      store.actions.setCompletion({ kind: 'failed', layout: question.layout, message: news.message })
  }
  const runner = createWorkerRunner(open, hear, { keepsWorker: true, quietMs: QUIET_MS })
  /** A layout that stands still since just now. */
  const want = (layout: Layout): void => {
    const { completion } = store.state.getState()
    if (completion.kind === 'ready' && completion.layout === layout) return
    const found = known.find((entry) => entry.layout === layout)
    store.actions.setCompletion(found ?? { kind: 'working', layout })
  }
  const follow = (): void => {
    const { gesture, layout: drawn } = store.state.getState()
    const layout = gesture === null ? drawn : null
    if (layout !== wanted) {
      wanted = layout
      runner.drop()
      if (layout !== null) want(layout)
    }
    const { completion, rooms } = store.state.getState()
    if (layout === null || completion.kind === 'direct' || completion.layout !== layout) return
    // It may have come from somebody who could not wait and worked it out on the page.
    if (completion.kind === 'ready') {
      runner.drop()
      keep(completion)
    } else if (completion.kind === 'working' && rooms?.layout === layout && runner.job()?.layout !== layout)
      runner.start(evaluationQuestion({ kind: 'complete', layout }))
  }
  follow()
  const unsubscribe = store.state.subscribe(follow)
  return () => {
    unsubscribe()
    runner.close()
  }
}

/**
 * Has everything that takes long worked out beside the page: rooms and zones by some workers, also while something moves; remedies
 * and tolerance cases by another one, once nothing moves. Returns a function that stops them.
 */
export const startCompleting = (
  store: AppStore,
  open: OpenEvaluationWorker,
  roomsWorkers = 1,
): (() => void) => {
  const stopRemedies = startRemedies(store, open)
  const stopRooms = startRooms(store, open, roomsWorkers)
  return () => {
    stopRooms()
    stopRemedies()
  }
}
