import type { Layout } from '../../domain/layout/document/layout'
import { layoutText } from '../../domain/layout/document/layoutText'
import type { AppStore } from '../store'
import type { Restored } from './restored'
import type { Slot, SlotStorage, TabFacts } from './slot'

/** The slot a tab writes into, and the stamp of what it knows to lie there; null: nothing of this tab yet. */
interface OwnSlot {
  readonly id: string
  readonly stamp: string | null
}

export interface Autosave {
  /** This tab's own slot, as soon as it is settled which. */
  readonly slotId: () => Promise<string>
  readonly stop: () => void
}

const SHARED =
  'This layout is open in another tab too. This tab keeps a copy of its own from here on: what is changed here does not reach ' +
  'the other tab, and nothing there is overwritten. Both are kept.'

const OVERTAKEN =
  'Another tab has changed the layout that this tab was keeping. Both are kept: this one in a place of its own from now on, the ' +
  'other in the File menu under Recovered layouts.'

const notKept = (error: unknown): string =>
  error instanceof DOMException && error.name === 'QuotaExceededError'
    ? 'The browser has no room left to keep the last change. Save the layout to a file before you close the page; ' +
      'removing recovered layouts in the File menu makes room.'
    : 'The browser could not keep the last change. Save the layout to a file before you close the page.'

const freshSlot = async (tab: TabFacts): Promise<OwnSlot> => {
  const id = tab.freshId()
  await tab.claim(id)
  return { id, stamp: null }
}

/** The slot that the layout came from if no other tab may be writing there; otherwise a new one. */
const takenSlot = async (store: AppStore, tab: TabFacts, from: Slot | null): Promise<OwnSlot> => {
  if (from === null) return await freshSlot(tab)
  const claim = await tab.claim(from.id)
  if (claim === 'mine') return { id: from.id, stamp: from.stamp }
  if (claim === 'taken') store.actions.notify('info', SHARED)
  return await freshSlot(tab)
}

/**
 * Keeps the layout after every step in this tab's own slot, one write at a time; what changes while a write runs is written after
 * it, only the latest. What another tab wrote is never written over: this tab then moves to a new slot and says so.
 */
export const startAutosave = (
  store: AppStore,
  storage: SlotStorage,
  tab: TabFacts,
  { from, canKeep }: Pick<Restored, 'from' | 'canKeep'>,
): Autosave => {
  const remembered = (slot: OwnSlot): OwnSlot => {
    tab.rememberSlotId(slot.id)
    return slot
  }
  let own = takenSlot(store, tab, from).then(remembered)
  let waiting: Layout | null = null
  let isWriting = false
  // Where nothing can be kept at all that has been said already.
  let hasWarned = !canKeep

  const written = async (layout: Layout): Promise<OwnSlot> => {
    const slot = await own
    const stamp = tab.freshId()
    const kept = { text: layoutText(layout), jobName: layout.job.name, savedAtMs: tab.nowMs(), stamp }
    if ((await storage.write({ id: slot.id, ...kept }, slot.stamp)) === 'written')
      return { id: slot.id, stamp }
    const { id } = remembered(await freshSlot(tab))
    await storage.write({ id, ...kept }, null)
    store.actions.notify('info', OVERTAKEN)
    return { id, stamp }
  }

  const writeWaiting = async (): Promise<void> => {
    if (isWriting) return
    isWriting = true
    while (waiting !== null) {
      const layout: Layout = waiting
      waiting = null
      try {
        own = Promise.resolve(await written(layout))
        hasWarned = false
      } catch (error) {
        if (!hasWarned) store.actions.notify('problem', notKept(error))
        hasWarned = true
      }
    }
    isWriting = false
  }

  const stop = store.state.subscribe((state, before) => {
    if (state.history.present === before.history.present) return
    waiting = state.history.present
    void writeWaiting()
  })
  return { slotId: async () => (await own).id, stop }
}
