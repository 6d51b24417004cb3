import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Result } from '../../domain/result'
import type { TaskDone, TaskEnd } from '../worker/task'
import type { News } from '../worker/workerMessages'
import { createWorkerRunner, type OpenWorker } from '../worker/workerRunner'

/** How many answers are kept: twice as many as a layout may have variants, so that undo finds those of before. Our judgement. */
const KEPT_ANSWERS = 8

interface InTurnState<Question, Value, Problem> {
  readonly running: { readonly question: Question; readonly done: number; readonly total: number } | null
  /** What comes after, in turn. */
  readonly waiting: readonly Question[]
  /** Newest first. */
  readonly answers: readonly TaskDone<Question, Value>[]
  /** What came to no answer; not tried again by itself. */
  readonly ended: readonly TaskEnd<Question, Problem>[]
}

/** The same question about several variants, one after the other: a tablet has not enough processors for all at once. */
export interface InTurn<Question, Value, Problem> {
  readonly state: Pick<
    StoreApi<InTurnState<Question, Value, Problem>>,
    'getState' | 'getInitialState' | 'subscribe'
  >
  /**
   * What is to be known from now on: what has an answer keeps it, what came to none stays so, the rest is worked out in turn. Anything else
   * that waits or is under way is dropped.
   */
  readonly want: (questions: readonly Question[]) => void
  /** Tries what came to no answer once more. */
  readonly tryAgain: (questions: readonly Question[]) => void
  /** Drops what is under way and what waits. */
  readonly cancel: () => void
  readonly isSame: (a: Question, b: Question) => boolean
}

type Answered<Value, Problem> = Result<Value, Problem>

const isOneOf = <Question>(
  others: readonly { readonly question: Question }[],
  question: Question,
  isSame: (a: Question, b: Question) => boolean,
): boolean => others.some((other) => isSame(other.question, question))

/** What is still to be asked: each once, and nothing that has an answer, came to none or is under way. */
const stillToAsk = <Question, Value, Problem>(
  questions: readonly Question[],
  { answers, ended, running }: InTurnState<Question, Value, Problem>,
  isSame: (a: Question, b: Question) => boolean,
): readonly Question[] =>
  questions.filter(
    (question, index) =>
      questions.findIndex((other) => isSame(other, question)) === index &&
      !isOneOf(answers, question, isSame) &&
      !isOneOf(ended, question, isSame) &&
      (running === null || !isSame(running.question, question)),
  )

const lastEnds = <End>(ends: readonly End[]): readonly End[] => ends.slice(-KEPT_ANSWERS)

/** What there is after the worker's last words on a question. */
const withLastWords = <Question, Value, Problem>(
  { answers, ended }: InTurnState<Question, Value, Problem>,
  question: Question,
  news: Exclude<News<Answered<Value, Problem>>, { kind: 'progress' }>,
): Partial<InTurnState<Question, Value, Problem>> => {
  if (news.kind === 'failed')
    return { ended: lastEnds([...ended, { question, kind: 'failed', message: news.message }]) }
  if (!news.answer.ok)
    return { ended: lastEnds([...ended, { question, kind: 'refused', problem: news.answer.error }]) }
  return { answers: [{ question, value: news.answer.value }, ...answers].slice(0, KEPT_ANSWERS) }
}

export const createInTurn = <Question, Value, Problem>(
  open: OpenWorker<Question, Answered<Value, Problem>>,
  isSame: (a: Question, b: Question) => boolean,
): InTurn<Question, Value, Problem> => {
  const state = createStore<InTurnState<Question, Value, Problem>>(() => ({
    running: null,
    waiting: [],
    answers: [],
    ended: [],
  }))
  const next = (): void => {
    const [first, ...rest] = state.getState().waiting
    if (first === undefined) return state.setState({ running: null })
    state.setState({ running: { question: first, done: 0, total: 0 }, waiting: rest })
    runner.start(first)
  }
  const runner = createWorkerRunner(open, (question, news) => {
    if (news.kind === 'progress')
      return state.setState({ running: { question, done: news.done, total: news.total } })
    state.setState(withLastWords(state.getState(), question, news))
    next()
  })
  const want = (questions: readonly Question[]): void => {
    const { running } = state.getState()
    const isKept = running !== null && questions.some((question) => isSame(running.question, question))
    state.setState({ waiting: stillToAsk(questions, state.getState(), isSame) })
    if (isKept) return
    if (running !== null) runner.drop()
    next()
  }
  return {
    state,
    want,
    isSame,
    tryAgain: (questions) => {
      const { ended } = state.getState()
      state.setState({
        ended: ended.filter((end) => !questions.some((question) => isSame(end.question, question))),
      })
      want(questions)
    },
    cancel: () => {
      const { running, waiting, ended } = state.getState()
      if (running === null) return
      runner.drop()
      const dropped = [running.question, ...waiting].map(
        (question) => ({ question, kind: 'cancelled' }) as const,
      )
      state.setState({ running: null, waiting: [], ended: lastEnds([...ended, ...dropped]) })
    },
  }
}
