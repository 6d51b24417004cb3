import { emptyLayout } from '../../domain/layout/document/empty'
import type { Layout } from '../../domain/layout/document/layout'
import { isSameValue } from '../sameValue'
import type { AppStore } from '../store'
import type { Restored } from './restored'
import type { Slot, SlotStorage, TabFacts } from './slot'
import { type SlotWriter, slotWriter } from './slotWriter'

export interface Autosave {
  /** Tells what lies in a slot that is about to be opened and is this tab's now, so that the next write goes over exactly that. */
  readonly adopt: (slot: Pick<Slot, 'id' | 'stamp'>) => void
  /** Resolves once everything changed so far is written, or could not be. */
  readonly settled: () => Promise<void>
  readonly stop: () => void
}

const SHARED =
  'This layout is open in another tab too. This tab keeps a copy of its own from here on: what is changed here does not reach ' +
  'the other tab, and nothing there is overwritten. Both are kept.'

const OVERTAKEN =
  'Another tab has changed the layout that this tab was keeping. Both are kept: this one in a place of its own from now on, the ' +
  'other under Layouts.'

const notKept = (error: unknown): string =>
  error instanceof DOMException && error.name === 'QuotaExceededError'
    ? 'The browser has no room left to keep the last change; it lasts only until the page closes. Save the layout to a file before ' +
      'that; emptying the bin under Layouts makes room.'
    : 'The browser could not keep the last change; it lasts only until the page closes. Save the layout to a file before that.'

/** The document is kept in another slot from now on, with everything it has. */
const movedTo = (store: AppStore, tab: TabFacts, before: string, id: string): void => {
  if (store.state.getState().documentId !== before) return
  store.actions.moveTo(id)
  tab.rememberSlotId(id)
}

const pageWriter = (store: AppStore, storage: SlotStorage, tab: TabFacts, canKeep: boolean): SlotWriter => {
  // Where nothing can be kept at all that has been said already.
  let hasWarned = !canKeep
  const writer = slotWriter(storage, tab, {
    onOvertaken: (id, fresh) => {
      movedTo(store, tab, id, fresh)
      store.actions.notify('info', OVERTAKEN)
    },
    onFailed: (error) => {
      if (!hasWarned) store.actions.notify('problem', notKept(error))
      hasWarned = true
    },
    onWritten: () => {
      hasWarned = false
    },
    // Other tabs may have what this one has left.
    onIdle: () => {
      const left = writer.slots().filter((id) => id !== store.state.getState().documentId)
      for (const id of left) if (writer.forget(id)) tab.release(id)
    },
  })
  return writer
}

/** Takes the slot that the first document came from if no other tab may be writing there; otherwise a new one. */
const takeFirst = async (
  store: AppStore,
  tab: TabFacts,
  writer: SlotWriter,
  from: Slot | null,
): Promise<void> => {
  const { documentId } = store.state.getState()
  writer.know(documentId, from?.stamp ?? null)
  const claim = await tab.claim(documentId)
  if (from === null || claim === 'mine') {
    if (store.state.getState().documentId === documentId) tab.rememberSlotId(documentId)
    return
  }
  const fresh = tab.freshId()
  await tab.claim(fresh)
  writer.move(documentId, fresh, null)
  movedTo(store, tab, documentId, fresh)
  if (claim === 'taken' && store.state.getState().documentId === fresh) store.actions.notify('info', SHARED)
}

/**
 * Keeps the document that is open after every step in a slot of its own. What another tab wrote is never written over: the document
 * then moves to a new slot, and that is said. A document that is opened is kept at once; the one that was open before stays as it was.
 */
export const startAutosave = (
  store: AppStore,
  storage: SlotStorage,
  tab: TabFacts,
  { from, canKeep }: Pick<Restored, 'from' | 'canKeep'>,
): Autosave => {
  const writer = pageWriter(store, storage, tab, canKeep)
  writer.waitFor(takeFirst(store, tab, writer, from))
  let adopted: string | null = null

  const opened = (id: string, layout: Layout): void => {
    tab.rememberSlotId(id)
    tab.rememberTold(Math.max(tab.toldUpToMs(), tab.nowMs()))
    const isKept = id === adopted
    adopted = null
    if (isKept) return writer.settle()
    writer.know(id, null)
    writer.waitFor(tab.claim(id))
    // A new layout in which nobody has done anything yet is not worth a place.
    if (isSameValue(layout, emptyLayout())) writer.settle()
    else writer.write(id, layout)
  }

  const stop = store.state.subscribe((state, before) => {
    // Moved to another slot, the same document keeps its history.
    if (state.history === before.history) return
    if (state.documentId !== before.documentId) opened(state.documentId, state.history.present)
    else if (state.history.present !== before.history.present)
      writer.write(state.documentId, state.history.present)
  })
  return {
    adopt: ({ id, stamp }) => {
      adopted = id
      writer.know(id, stamp)
    },
    settled: () => writer.idle(),
    stop,
  }
}
