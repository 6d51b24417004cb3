import type { Layout } from '../../domain/layout/document/layout'
import type { WhoFits } from '../../domain/layout/fit/whoFits'
import type { FitAnswer, FitQuestion } from './fitMessages'

/** A worker that was given one question. */
interface FitWorker {
  readonly stop: () => void
}

/** Puts a question to a new worker; `hear` and `fail` are called later, never before this returns. */
type AskWorker = (
  question: FitQuestion,
  hear: (answer: FitAnswer) => void,
  fail: (message: string) => void,
) => FitWorker

/** How far a count has got. */
export interface FitRun {
  readonly layout: Layout
  readonly placeId: string
  readonly done: number
  /** 0 until the worker has said how many people there are. */
  readonly total: number
}

/** A finished count and what was counted. */
interface FitDone {
  readonly layout: Layout
  readonly result: WhoFits
}

/** A question that came to no answer: it is not asked again by itself. `message` is null when somebody cancelled it. */
interface FitEnd {
  readonly question: FitQuestion
  readonly message: string | null
}

interface FitState {
  readonly running: FitRun | null
  /** The last finished count, which may be of a layout that has changed since. */
  readonly last: FitDone | null
  readonly ended: FitEnd | null
}

export interface FitRunner {
  readonly state: () => FitState
  readonly subscribe: (listener: () => void) => () => void
  /** Counts anew; a count still running is dropped. The last result stays until the new one is there. */
  readonly start: (question: FitQuestion) => void
  /** Drops the running count; nothing happens without one. */
  readonly cancel: () => void
}

const NOTHING_YET: FitState = { running: null, last: null, ended: null }

/** What a count has come to after the worker's next words. */
const stateAfter = (question: FitQuestion, answer: FitAnswer): Partial<FitState> => {
  switch (answer.kind) {
    case 'progress':
      return { running: { ...question, done: answer.done, total: answer.total } }
    case 'done':
      return { running: null, last: { layout: question.layout, result: answer.result } }
    case 'failed':
      return { running: null, ended: { question, message: answer.message } }
  }
}

/** Runs counts one at a time, each in a worker of its own, so that cancelling is certain and at once. */
export const createFitRunner = (askWorker: AskWorker): FitRunner => {
  let state = NOTHING_YET
  let worker: FitWorker | null = null
  const listeners = new Set<() => void>()
  const set = (change: Partial<FitState>): void => {
    state = { ...state, ...change }
    for (const listener of listeners) listener()
  }
  const stop = (): void => {
    worker?.stop()
    worker = null
  }
  const start = (question: FitQuestion): void => {
    stop()
    set({ running: { ...question, done: 0, total: 0 }, ended: null })
    const hear = (answer: FitAnswer): void => {
      // A worker that was stopped may still have words under way.
      if (worker !== own) return
      if (answer.kind !== 'progress') stop()
      set(stateAfter(question, answer))
    }
    const own = askWorker(question, hear, (message) => hear({ kind: 'failed', message }))
    worker = own
  }
  return {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    start,
    cancel: () => {
      if (state.running === null) return
      const { layout, placeId } = state.running
      stop()
      set({ running: null, ended: { question: { layout, placeId }, message: null } })
    },
  }
}
