import type { AppStore } from '../store'
import { type Autosave, startAutosave } from './autosave'
import { byTime, type Restored, restored } from './restored'
import type { SlotStorage, TabFacts } from './slot'

/** A layout that another tab kept, now or at an earlier visit. */
export interface RecoveredLayout {
  readonly id: string
  readonly text: string
  readonly jobName: string
  /** ms since 1970; 0: not known. */
  readonly savedAtMs: number
  /** An open tab is working on it. */
  readonly isOpenElsewhere: boolean
}

/** How one page keeps its layout between visits without ever writing over what another tab keeps. */
export interface Keeping {
  readonly restored: () => Promise<Restored>
  /** Keeps every step from now on in the slot that the layout came from, or in a new one. */
  readonly start: (store: AppStore, before: Pick<Restored, 'from' | 'canKeep'>) => Autosave
  /** What other tabs keep, newest first; null when the browser does not say. */
  readonly recovered: () => Promise<readonly RecoveredLayout[] | null>
  /** Removes one for good, unless a tab is working on it; false when it is still there. */
  readonly remove: (id: string) => Promise<boolean>
}

export const createKeeping = (storage: SlotStorage, tab: TabFacts): Keeping => {
  let autosave: Autosave | null = null
  return {
    restored: () => restored(storage, tab),
    start: (store, before) => (autosave = startAutosave(store, storage, tab, before)),
    recovered: async () => {
      try {
        const own = await autosave?.slotId()
        const open = await tab.claimed()
        return byTime(await storage.all()).flatMap(({ id, text, jobName, savedAtMs }) =>
          id === own || typeof text !== 'string'
            ? []
            : [{ id, text, jobName, savedAtMs, isOpenElsewhere: open.has(id) }],
        )
      } catch {
        return null
      }
    },
    remove: async (id) => {
      try {
        if (id === (await autosave?.slotId()) || (await tab.claimed()).has(id)) return false
        await storage.remove(id)
        return true
      } catch {
        return false
      }
    },
  }
}
