import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Result } from '../../domain/result'
import type { News } from './workerMessages'
import { createWorkerRunner, type OpenWorker } from './workerRunner'

/** How far a run has got. */
interface TaskRun<Question> {
  readonly question: Question
  readonly done: number
  /** 0 until the worker has said how much there is to do. */
  readonly total: number
}

/** A run that came to its answer. */
export interface TaskDone<Question, Value> {
  readonly question: Question
  readonly value: Value
}

/** A run that came to none; it is not begun again by itself. */
export type TaskEnd<Question, Problem> = { readonly question: Question } & (
  | { readonly kind: 'cancelled' }
  /** The question itself cannot be answered. */
  | { readonly kind: 'refused'; readonly problem: Problem }
  | { readonly kind: 'failed'; readonly message: string }
)

interface TaskState<Question, Value, Problem> {
  readonly running: TaskRun<Question> | null
  /** The last answer, which may be of a layout that has changed since. */
  readonly last: TaskDone<Question, Value> | null
  readonly ended: TaskEnd<Question, Problem> | null
}

/** Work that somebody begins, watches and may call off. */
export interface Task<Question, Value, Problem> {
  readonly state: Pick<
    StoreApi<TaskState<Question, Value, Problem>>,
    'getState' | 'getInitialState' | 'subscribe'
  >
  /** Begins anew; a run still under way is dropped. The last answer stays until the new one is there. */
  readonly start: (question: Question) => void
  /** Drops what is under way; nothing happens without. */
  readonly cancel: () => void
}

/** What a task has come to after the worker's next words. */
const stateAfter = <Question, Value, Problem>(
  question: Question,
  news: News<Result<Value, Problem>>,
): Partial<TaskState<Question, Value, Problem>> => {
  switch (news.kind) {
    case 'progress':
      return { running: { question, done: news.done, total: news.total } }
    case 'answer':
      return news.answer.ok
        ? { running: null, last: { question, value: news.answer.value } }
        : { running: null, ended: { question, kind: 'refused', problem: news.answer.error } }
    case 'failed':
      return { running: null, ended: { question, kind: 'failed', message: news.message } }
  }
}

/** A task whose runs have a worker of their own each, one at a time, so that cancelling is certain and at once. */
export const createTask = <Question, Value, Problem>(
  open: OpenWorker<Question, Result<Value, Problem>>,
): Task<Question, Value, Problem> => {
  const state = createStore<TaskState<Question, Value, Problem>>(() => ({
    running: null,
    last: null,
    ended: null,
  }))
  const runner = createWorkerRunner(open, (question, news) => state.setState(stateAfter(question, news)))
  return {
    state,
    start: (question) => {
      state.setState({ running: { question, done: 0, total: 0 }, ended: null })
      runner.start(question)
    },
    cancel: () => {
      const question = runner.job()
      if (question === null) return
      runner.drop()
      state.setState({ running: null, ended: { question, kind: 'cancelled' } })
    },
  }
}
