import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Proposals } from '../../domain/layout/propose/proposal'
import type { WishProblem } from '../../domain/layout/propose/wish'
import { createTask, type Task, type TaskDone, type TaskEnd } from '../worker/task'
import type { OpenWorker } from '../worker/workerRunner'
import type { ProposeAnswer, ProposeQuestion } from './proposeMessages'

export type SearchDone = TaskDone<ProposeQuestion, Proposals>
export type SearchEnd = TaskEnd<ProposeQuestion, WishProblem>

/** How proposals are looked at. */
interface ProposalsView {
  /** The proposal of the last search that is picked out and drawn; null: none. */
  readonly shownId: string | null
  /** Whether the proposals are in view, so that the drawing marks them. */
  readonly isInView: boolean
}

/** The search for proposals, and how its answer is looked at. */
export interface Search extends Task<ProposeQuestion, Proposals, WishProblem> {
  readonly view: Pick<StoreApi<ProposalsView>, 'getState' | 'getInitialState' | 'subscribe' | 'setState'>
}

export const createSearch = (open: OpenWorker<ProposeQuestion, ProposeAnswer>): Search => {
  const task = createTask(open)
  const view = createStore<ProposalsView>(() => ({ shownId: null, isInView: false }))
  task.state.subscribe((now, before) => {
    // What was picked out was a proposal of before.
    if (now.last !== before.last) view.setState({ shownId: null })
  })
  return { ...task, view }
}
