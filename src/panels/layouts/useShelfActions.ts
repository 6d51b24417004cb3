import { useState } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import { pageKeeping } from '../../state/keeping/pageKeeping'
import { useActions, useAppStore } from '../../state/react'
import type { Entry } from './entries'
import * as changes from './shelfChanges'

/** All that can be done with kept layouts; every change ends with the list read anew and a word of what came of it. */
export const useShelfActions = (reload: () => Promise<void>) => {
  const store = useAppStore()
  const { setView } = useActions()
  const [outcome, setOutcome] = useState(changes.NO_OUTCOME)
  const [shared, share] = useState<Layout | null>(null)
  const told =
    <Given extends readonly unknown[]>(change: (...given: Given) => Promise<changes.Outcome>) =>
    async (...given: Given): Promise<void> => {
      const came = await change(...given)
      await reload()
      setOutcome(came)
    }
  return {
    outcome,
    shared,
    share,
    open: async ({ id }: Entry): Promise<void> => {
      if (await pageKeeping.open(store, id)) setView({ screen: 'drawing', side: 'panels' })
      else await reload()
    },
    duplicate: told(changes.duplicate),
    rename: told(changes.rename),
    moveToFolder: told(changes.moveToFolder),
    putIntoBin: told(changes.putIntoBin),
    putBack: told(changes.putBack),
    removeForGood: told(changes.removeForGood),
  }
}

export type ShelfActions = ReturnType<typeof useShelfActions>
