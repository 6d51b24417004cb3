import type { Asked, News, Said } from '../../../src/state/worker/workerMessages'
import type { OpenWorker } from '../../../src/state/worker/workerRunner'

export interface FakeWorker<Question, Answer> {
  readonly asked: Asked<Question>[]
  /** Says something of the question asked last; it goes the way of a message between threads. */
  readonly say: (news: News<Answer>) => void
  readonly hear: (said: Said<Answer>) => void
  readonly die: (message: string) => void
  isStopped: boolean
}

/** Workers that say what the test says, when it says so. */
export const fakeWorkers = <Question, Answer>() => {
  const workers: FakeWorker<Question, Answer>[] = []
  const open: OpenWorker<Question, Answer> = (hear, fail) => {
    const worker: FakeWorker<Question, Answer> = {
      asked: [],
      say: (news) => hear(structuredClone({ ...news, id: worker.asked.at(-1)?.id ?? -1 })),
      hear,
      die: fail,
      isStopped: false,
    }
    workers.push(worker)
    return {
      ask: (asked) => worker.asked.push(structuredClone(asked)),
      stop: () => {
        worker.isStopped = true
      },
    }
  }
  return { open, workers }
}

/** The worker that was opened at a turn, counted from 0. */
export const nth = <Worker>(workers: readonly Worker[], index: number): Worker => {
  const worker = workers[index]
  if (worker === undefined) throw new Error(`no worker ${index} was opened`)
  return worker
}
