import type { Proposals } from '../../domain/layout/propose/proposal'
import type { WishProblem } from '../../domain/layout/propose/wish'
import type { ProposeAnswer, ProposeQuestion } from './proposeMessages'

/** A worker that was given one question. */
interface ProposeWorker {
  readonly stop: () => void
}

/** Puts a question to a new worker; `hear` and `fail` are called later, never before this returns. */
type AskWorker = (
  question: ProposeQuestion,
  hear: (answer: ProposeAnswer) => void,
  fail: (message: string) => void,
) => ProposeWorker

/** How far a search has got. */
interface ProposeRun {
  readonly question: ProposeQuestion
  readonly done: number
  /** 0 until the worker has said how much there is to look at. */
  readonly total: number
}

/** A finished search and what was asked. */
export interface ProposeDone {
  readonly question: ProposeQuestion
  readonly result: Proposals
}

/** How a search ended without proposals. */
type ProposeEnd =
  | { readonly kind: 'cancelled' }
  | { readonly kind: 'refused'; readonly problem: WishProblem }
  | { readonly kind: 'failed'; readonly message: string }

export interface ProposeState {
  readonly running: ProposeRun | null
  /** The last finished search, which may be of a layout that has changed since. */
  readonly last: ProposeDone | null
  readonly ended: (ProposeEnd & { readonly question: ProposeQuestion }) | null
  /** The proposal of the last search that is picked out and drawn; null: none. */
  readonly shownId: string | null
  /** Whether the proposals are in view, so that the drawing marks them. */
  readonly isInView: boolean
}

export interface ProposeRunner {
  readonly state: () => ProposeState
  readonly subscribe: (listener: () => void) => () => void
  /** Looks anew; a search still running is dropped. The last result stays until the new one is there. */
  readonly start: (question: ProposeQuestion) => void
  /** Drops the running search; nothing happens without one. */
  readonly cancel: () => void
  /** Picks one proposal out; null: none. */
  readonly show: (proposalId: string | null) => void
  readonly setInView: (isInView: boolean) => void
}

const NOTHING_YET: ProposeState = { running: null, last: null, ended: null, shownId: null, isInView: false }

/** What a search has come to after the worker's next words. */
const stateAfter = (question: ProposeQuestion, answer: ProposeAnswer): Partial<ProposeState> => {
  switch (answer.kind) {
    case 'progress':
      return { running: { question, done: answer.done, total: answer.total } }
    case 'done':
      return { running: null, last: { question, result: answer.result }, shownId: null }
    case 'refused':
    case 'failed':
      return { running: null, ended: { ...answer, question } }
  }
}

/** Runs searches one at a time, each in a worker of its own, so that cancelling is certain and at once. */
export const createProposeRunner = (askWorker: AskWorker): ProposeRunner => {
  let state = NOTHING_YET
  let worker: ProposeWorker | null = null
  const listeners = new Set<() => void>()
  const set = (change: Partial<ProposeState>): void => {
    state = { ...state, ...change }
    for (const listener of listeners) listener()
  }
  const stop = (): void => {
    worker?.stop()
    worker = null
  }
  const start = (question: ProposeQuestion): void => {
    stop()
    set({ running: { question, done: 0, total: 0 }, ended: null })
    const hear = (answer: ProposeAnswer): void => {
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
      const { question } = state.running
      stop()
      set({ running: null, ended: { kind: 'cancelled', question } })
    },
    show: (shownId) => {
      if (state.shownId !== shownId) set({ shownId })
    },
    setInView: (isInView) => {
      if (state.isInView !== isInView) set({ isInView })
    },
  }
}
