import type { News } from './workerMessages'
import { createWorkerRunner, type OpenWorker } from './workerRunner'

/** Several workers that wait for the next question when they have answered; one that nobody needs is never opened. */
export interface WorkerPool<Question> {
  /** What is being worked out now. */
  readonly jobs: () => readonly Question[]
  /** Whether one of them has nothing to do. */
  readonly hasIdle: () => boolean
  /** Has a question worked out by an idle one; none is broken off. Throws when all are busy. */
  readonly start: (question: Question) => void
  /** Drops everything. */
  readonly close: () => void
}

/** `size`: how many may work at once, at least 1. */
export const createWorkerPool = <Question, Answer>(
  open: OpenWorker<Question, Answer>,
  hear: (question: Question, news: News<Answer>) => void,
  size: number,
): WorkerPool<Question> => {
  const runners = Array.from({ length: size }, () => createWorkerRunner(open, hear, { keepsWorker: true }))
  const idle = () => runners.find((runner) => runner.job() === null)
  return {
    jobs: () => runners.flatMap((runner) => runner.job() ?? []),
    hasIdle: () => idle() !== undefined,
    start: (question) => {
      const runner = idle()
      if (runner === undefined) throw new Error(`all ${size} workers are busy`)
      runner.start(question)
    },
    close: () => {
      for (const runner of runners) runner.close()
    },
  }
}
