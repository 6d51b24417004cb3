import type { AppStore } from '../store'
import { type Autosave, startAutosave } from './autosave'
import { holdingStorage } from './holding'
import { openKept } from './openKept'
import { type Restored, restored } from './restored'
import { binned, duplicated, emptied, type KeptLayout, keptLayouts, renamed, type Shelf } from './shelf'
import type { SlotStorage, TabFacts } from './slot'

/**
 * How one page keeps its layouts between visits without ever writing over what another tab keeps. Where the browser refuses, lists are
 * null and changes come back as not done; nothing throws.
 */
export interface Keeping {
  readonly restored: () => Promise<Restored>
  /** Keeps every step from now on in the slot that the layout came from, or in a new one. */
  readonly start: (store: AppStore, before: Pick<Restored, 'from' | 'canKeep'>) => Autosave
  /** Resolves once nothing waits to be written or is being written; true when the browser has kept all of it. */
  readonly settled: () => Promise<boolean>
  /** Whether there is something that would be gone with the page, because the browser has not been able to keep it. */
  readonly hasUnkept: () => boolean
  /** Everything that is kept, in the bin too, newest first; null when the browser does not say. */
  readonly list: () => Promise<readonly KeptLayout[] | null>
  /** Opens a kept layout (openKept.ts); false when nothing was opened, which a notice says. */
  readonly open: (store: AppStore, id: string) => Promise<boolean>
  /** The id of a copy beside it; null when there is none. */
  readonly duplicate: (id: string) => Promise<string | null>
  readonly rename: (id: string, name: string) => Promise<boolean>
  /** Empty: out of any folder. False when some could not be moved. */
  readonly moveToFolder: (ids: readonly string[], folder: string) => Promise<boolean>
  /** The ids of what is in the bin now; the open document goes too, and an empty one is opened. */
  readonly putIntoBin: (ids: readonly string[]) => Promise<readonly string[]>
  readonly putBack: (ids: readonly string[]) => Promise<boolean>
  /** Removes for good what is in the bin and no tab is working on; the ids of what is gone. */
  readonly removeForGood: (ids: readonly string[]) => Promise<readonly string[]>
  /** The file on the disk that a document was opened from or saved to, as the browser handed it out; undefined: none that is known. */
  readonly fileLink: (id: string) => Promise<unknown>
  readonly keepFileLink: (id: string, link: unknown) => Promise<void>
}

export const createKeeping = (browserStorage: SlotStorage, tab: TabFacts): Keeping => {
  let running: ReturnType<Shelf['running']> = null
  const storage = holdingStorage(browserStorage, tab.freshId)
  const shelf: Shelf = { storage, tab, running: () => running }
  const filed = async (ids: readonly string[], change: Parameters<SlotStorage['file']>[1]) => {
    try {
      for (const id of ids) await storage.file(id, change)
      return true
    } catch {
      return false
    }
  }
  return {
    restored: () => restored(storage, tab),
    start: (store, before) => {
      running = { store, autosave: startAutosave(store, storage, tab, before) }
      return running.autosave
    },
    settled: async () => {
      await running?.autosave.settled()
      return !storage.isHoldingAny()
    },
    hasUnkept: () => storage.isHoldingAny(),
    list: () => keptLayouts(shelf).catch(() => null),
    open: (store, id) => openKept(shelf, store, id),
    duplicate: (id) => duplicated(shelf, id).catch(() => null),
    rename: (id, name) => renamed(shelf, id, name).catch(() => false),
    moveToFolder: (ids, folder) => filed(ids, { folder }),
    putIntoBin: (ids) => binned(shelf, ids).catch(() => []),
    putBack: (ids) => filed(ids, { removedAtMs: null }),
    removeForGood: (ids) => emptied(shelf, ids).catch(() => []),
    fileLink: (id) => storage.fileLink(id).catch(() => undefined),
    keepFileLink: (id, link) => storage.keepFileLink(id, link).catch(() => undefined),
  }
}
