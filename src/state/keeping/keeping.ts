import type { Layout } from '../../domain/layout/document/layout'
import { parseLayoutText } from '../../domain/layout/document/parseLayout'
import { problemLines } from '../pickedFile'
import type { AppStore } from '../store'
import { type Autosave, startAutosave } from './autosave'
import { type HoldingStorage, holdingStorage } from './holding'
import { byTime, type Restored, restored } from './restored'
import type { SlotStorage, TabFacts } from './slot'

/** A layout that is kept, by this tab or another, now or at an earlier visit. */
export interface KeptLayout {
  readonly id: string
  readonly text: string
  readonly jobName: string
  /** ms since 1970; 0: not known. */
  readonly savedAtMs: number
  /** Another open tab is working on it. */
  readonly isOpenElsewhere: boolean
  /** This tab has it open. */
  readonly isOpenHere: boolean
  /** The browser could not keep it; it lasts until the page closes. */
  readonly isOnlyInPage: boolean
}

/** How one page keeps its layouts between visits without ever writing over what another tab keeps. */
export interface Keeping {
  readonly restored: () => Promise<Restored>
  /** Keeps every step from now on in the slot that the layout came from, or in a new one. */
  readonly start: (store: AppStore, before: Pick<Restored, 'from' | 'canKeep'>) => Autosave
  /** Resolves once nothing waits to be written or is being written; true when the browser has kept all of it. */
  readonly settled: () => Promise<boolean>
  /** Everything that is kept, newest first; null when the browser does not say. */
  readonly list: () => Promise<readonly KeptLayout[] | null>
  /**
   * Opens a kept layout to go on with it, or a copy where another tab has it open. What cannot be opened changes nothing; all of it is
   * said in a notice. False when nothing was opened.
   */
  readonly open: (store: AppStore, id: string) => Promise<boolean>
  /** Removes one for good, unless a tab is working on it; false when it is still there. */
  readonly remove: (id: string) => Promise<boolean>
}

export const nameOf = (jobName: string): string => (jobName === '' ? 'Unnamed layout' : jobName)

/** What the page's keeping works on. */
interface Shelf {
  readonly storage: HoldingStorage
  readonly tab: TabFacts
  /** Null until autosave runs. */
  readonly running: () => { readonly autosave: Autosave; readonly store: AppStore } | null
}

const openHere = (shelf: Shelf): string | undefined => shelf.running()?.store.state.getState().documentId

const openCopy = (store: AppStore, name: string, layout: Layout): void => {
  store.actions.openLayout(layout, `Open a copy of ${name}`)
  store.actions.notify(
    'info',
    `${name} is open in another tab. This is a copy of its own: what is changed here does not reach the other tab.`,
  )
}

const opened = async (shelf: Shelf, store: AppStore, id: string): Promise<boolean> => {
  const claim = await shelf.tab.claim(id)
  const refused = (text: string, details: readonly string[] = []): false => {
    if (claim !== 'taken') shelf.tab.release(id)
    store.actions.notify('problem', text, details)
    return false
  }
  const slot = (await shelf.storage.all()).find((kept) => kept.id === id)
  if (slot === undefined) return refused('That layout is no longer there; another tab may have removed it.')
  const name = nameOf(slot.jobName)
  const parsed = parseLayoutText(typeof slot.text === 'string' ? slot.text : '')
  if (!parsed.ok) return refused(`${name} cannot be opened. Nothing was changed.`, problemLines(parsed.error))
  if (claim === 'taken') openCopy(store, name, parsed.value)
  else {
    shelf.running()?.autosave.adopt(slot)
    store.actions.openLayout(parsed.value, `Open ${name}`, id)
    store.actions.notify('info', `${name} is open. What was here before is under Layouts.`)
  }
  return true
}

const listed = async (shelf: Shelf): Promise<readonly KeptLayout[]> => {
  await shelf.running()?.autosave.settled()
  const own = openHere(shelf)
  const claimed = await shelf.tab.claimed()
  return byTime(await shelf.storage.all()).flatMap(({ id, text, jobName, savedAtMs }) =>
    typeof text === 'string'
      ? [
          {
            id,
            text,
            jobName,
            savedAtMs,
            isOpenHere: id === own,
            isOpenElsewhere: id !== own && claimed.has(id),
            isOnlyInPage: shelf.storage.isHeld(id),
          },
        ]
      : [],
  )
}

const removed = async (shelf: Shelf, id: string): Promise<boolean> => {
  await shelf.running()?.autosave.settled()
  if (id === openHere(shelf) || (await shelf.tab.claimed()).has(id)) return false
  await shelf.storage.remove(id)
  return true
}

export const createKeeping = (browserStorage: SlotStorage, tab: TabFacts): Keeping => {
  let running: ReturnType<Shelf['running']> = null
  const storage = holdingStorage(browserStorage, tab.freshId)
  const shelf: Shelf = { storage, tab, running: () => running }
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
    list: () => listed(shelf).catch(() => null),
    open: async (store, id) => {
      if (id === openHere(shelf)) return true
      try {
        await running?.autosave.settled()
        return await opened(shelf, store, id)
      } catch {
        store.actions.notify('problem', 'The browser could not read that layout. Nothing was changed.')
        return false
      }
    },
    remove: (id) => removed(shelf, id).catch(() => false),
  }
}
