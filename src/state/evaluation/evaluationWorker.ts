import type { Layout } from '../../domain/layout/document/layout'
import type { EvaluationAnswer, EvaluationQuestion, EvaluationWork } from './evaluationMessages'

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

const numbers = new WeakMap<Layout, number>()
let lastNumber = 0

/** The number of a layout object, the same whenever it is asked for. */
const layoutNumberOf = (layout: Layout): number => {
  const known = numbers.get(layout)
  if (known !== undefined) return known
  lastNumber += 1
  numbers.set(layout, lastNumber)
  return lastNumber
}

/** One worker with at most one job, opened when there is the first. */
export interface WorkerSlot {
  readonly job: () => EvaluationWork | null
  /** Only while there is no job. */
  readonly begin: (work: EvaluationWork) => void
  /** Drops the job, and with it the worker: that is the only way to be rid of its work at once. */
  readonly stop: () => void
}

export const workerSlot = (
  open: OpenEvaluationWorker,
  ended: (work: EvaluationWork, answer: EvaluationAnswer) => void,
): WorkerSlot => {
  let worker: EvaluationWorker | null = null
  let job: { readonly id: number; readonly work: EvaluationWork } | null = null
  let lastId = 0
  const close = (): void => {
    worker?.stop()
    worker = null
  }
  const finish = (answer: EvaluationAnswer): void => {
    if (job === null || job.id !== answer.id) return
    const { work } = job
    job = null
    ended(work, answer)
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
  return {
    job: () => job?.work ?? null,
    begin: (work) => {
      lastId += 1
      job = { id: lastId, work }
      try {
        worker ??= opened()
        worker.ask({ ...work, id: lastId, layoutNumber: layoutNumberOf(work.layout) })
      } catch (error) {
        close()
        finish({
          kind: 'failed',
          id: lastId,
          message: error instanceof Error ? error.message : String(error),
        })
      }
    },
    stop: () => {
      job = null
      close()
    },
  }
}
