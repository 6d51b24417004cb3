import { completionOf } from '../selectors'
import type { AppStore } from '../store'

/**
 * Resolves once the drawn layout, as it is by then, is evaluated completely. What the worker could not do is done on the page;
 * where that fails too the store says so.
 */
export const whenComplete = (store: AppStore): Promise<void> =>
  new Promise((resolve) => {
    const isOver = (): boolean => {
      const status = completionOf(store.state.getState())
      if (status === 'failed') store.actions.completeHere()
      return status === 'ready' || status === 'failed'
    }
    if (isOver()) {
      resolve()
      return
    }
    const unsubscribe = store.state.subscribe(() => {
      if (!isOver()) return
      unsubscribe()
      resolve()
    })
  })
