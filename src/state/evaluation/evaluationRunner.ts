import type { Layout } from '../../domain/layout/document/layout'
import type { Evaluation } from '../../domain/layout/evaluate/evaluation'
import type { AppState } from '../appState'
import { evaluationOf } from '../selectors'
import type { AppStore } from '../store'
import type { EvaluationAnswer, EvaluationQuestion } from './evaluationMessages'

/** A worker that answers one question after another until it is stopped. */
interface EvaluationWorker {
  readonly ask: (question: EvaluationQuestion) => void
  readonly stop: () => void
}

/** Starts a worker; `hear` and `fail` are called later, never before this returns. */
export type OpenEvaluationWorker = (
  hear: (answer: EvaluationAnswer) => void,
  fail: (message: string) => void,
) => EvaluationWorker

/** How many complete evaluations are kept: the drawn one and a few steps of undo. Our judgement. */
const KEPT = 4

/**
 * How long a layout must stay the same, ms, before a new worker is started for it when the one before was stopped in the middle:
 * an arrow key held down would start thirty a second. Our judgement.
 */
const QUIET_MS = 150

const withFindings = (layout: Layout, { findings }: Extract<EvaluationAnswer, { kind: 'done' }>) => {
  const moving = evaluationOf(layout, 'what-moves')
  return {
    ...moving,
    places: moving.places.map((place, index) => ({ ...place, findings: findings[index] ?? place.findings })),
  }
}

/**
 * One worker with at most one job. A worker that is idle is asked again; one that is busy with what nobody wants any more is
 * stopped, which is the only way to be rid of its work at once.
 */
const workerSlot = (
  open: OpenEvaluationWorker,
  ended: (layout: Layout, answer: EvaluationAnswer) => void,
) => {
  let worker: EvaluationWorker | null = null
  let job: EvaluationQuestion | null = null
  let waiting: ReturnType<typeof setTimeout> | null = null
  let lastId = 0
  const close = (): void => {
    worker?.stop()
    worker = null
  }
  const finish = (answer: EvaluationAnswer): void => {
    if (job === null || job.id !== answer.id) return
    const { layout } = job
    job = null
    ended(layout, answer)
  }
  const opened = (): EvaluationWorker => {
    // A worker that was stopped may still have words under way.
    const own = open(
      (answer) => (worker === own ? finish(answer) : undefined),
      (message) => {
        if (worker !== own) return
        close()
        finish({ kind: 'failed', id: lastId, message })
      },
    )
    return own
  }
  const begin = (layout: Layout): void => {
    waiting = null
    lastId += 1
    job = { id: lastId, layout }
    try {
      worker ??= opened()
      worker.ask(job)
    } catch (error) {
      close()
      finish({ kind: 'failed', id: lastId, message: error instanceof Error ? error.message : String(error) })
    }
  }
  /** Drops whatever is under way; true when a worker was stopped for it. */
  const drop = (): boolean => {
    const wasBusy = job !== null || waiting !== null
    if (waiting !== null) clearTimeout(waiting)
    if (job !== null) close()
    waiting = null
    job = null
    return wasBusy
  }
  const start = (layout: Layout): void => {
    if (drop()) waiting = setTimeout(() => begin(layout), QUIET_MS)
    else begin(layout)
  }
  return { start, drop, close }
}

/**
 * Has every layout that stands still evaluated completely beside the page, the newest only, and puts what comes of it into the
 * store. While a gesture runs nothing is worked out: the next move would make it wrong. Returns a function that stops it.
 */
export const startCompleting = (store: AppStore, open: OpenEvaluationWorker): (() => void) => {
  let wanted: Layout | null = null
  let known: readonly { readonly layout: Layout; readonly evaluation: Evaluation }[] = []
  const keep = (layout: Layout, evaluation: Evaluation): void => {
    known = [{ layout, evaluation }, ...known.filter((entry) => entry.layout !== layout)].slice(0, KEPT)
  }
  const slot = workerSlot(open, (layout, answer) => {
    if (answer.kind === 'failed') {
      store.actions.setCompletion({ kind: 'failed', layout, message: answer.message })
      return
    }
    store.actions.setCompletion({ kind: 'ready', layout, evaluation: withFindings(layout, answer) })
  })
  const follow = ({ gesture, layout: drawn, completion }: AppState): void => {
    const layout = gesture === null ? drawn : null
    if (layout === wanted) {
      // It may have come from somebody who could not wait and worked it out on the page.
      if (completion.kind === 'ready' && completion.layout === wanted) {
        slot.drop()
        keep(completion.layout, completion.evaluation)
      }
      return
    }
    wanted = layout
    if (layout === null) {
      slot.drop()
      return
    }
    const found = known.find((entry) => entry.layout === layout)
    if (found === undefined) {
      store.actions.setCompletion({ kind: 'working', layout })
      slot.start(layout)
    } else {
      slot.drop()
      if (completion.kind !== 'ready' || completion.layout !== layout)
        store.actions.setCompletion({ kind: 'ready', ...found })
    }
  }
  follow(store.state.getState())
  const unsubscribe = store.state.subscribe((state) => follow(state))
  return () => {
    unsubscribe()
    slot.drop()
    slot.close()
  }
}
