import { createStore, get, set, type UseStore } from 'idb-keyval'
import { emptyLayout } from '../domain/layout/document/empty'
import type { Layout } from '../domain/layout/document/layout'
import { layoutText } from '../domain/layout/document/layoutText'
import { parseLayoutText } from '../domain/layout/document/parseLayout'
import type { Notice } from './appState'
import { problemLines } from './files'
import type { AppStore } from './store'

/** Where the layout is kept between visits; the browser's own in the app, a plain object in tests. */
export interface LayoutStorage {
  readonly read: () => Promise<unknown>
  readonly write: (text: string) => Promise<void>
  /** Keeps what could not be read where no later write touches it. */
  readonly setAside: (value: unknown) => Promise<void>
  readonly readSetAside: () => Promise<unknown>
}

export interface Restored {
  readonly layout: Layout
  readonly notice: Notice | null
  /** What was set aside now or at an earlier visit, as text for a file. */
  readonly setAside: string | null
}

const CURRENT_KEY = 'layout'
const SET_ASIDE_KEY = 'set-aside'

/** IndexedDB, opened at the first use so that a browser that forbids it fails there and not while the page loads. */
export const browserStorage = (): LayoutStorage => {
  let opened: UseStore | null = null
  const database = (): UseStore => (opened ??= createStore('tabwright', 'layouts'))
  return {
    read: async () => await get<unknown>(CURRENT_KEY, database()),
    write: (text) => set(CURRENT_KEY, text, database()),
    setAside: (value) => set(SET_ASIDE_KEY, value, database()),
    readSetAside: async () => await get<unknown>(SET_ASIDE_KEY, database()),
  }
}

const asText = (value: unknown): string | null => {
  if (value === undefined) return null
  return typeof value === 'string' ? value : JSON.stringify(value)
}

const unreadable = (kept: unknown, details: readonly string[]): Restored => ({
  layout: emptyLayout(),
  setAside: asText(kept),
  notice: {
    kind: 'problem',
    text:
      'The layout kept in this browser could not be read, so an empty one was started. The damaged copy is set aside; ' +
      'save it from the File menu if you want to mend it.',
    details,
  },
})

/** What was kept at the last visit, or an empty layout and the reason why. Never fails. */
export const restored = async (storage: LayoutStorage): Promise<Restored> => {
  try {
    const kept = await storage.read()
    const setAside = asText(await storage.readSetAside())
    if (kept === undefined) return { layout: emptyLayout(), notice: null, setAside }
    const parsed =
      typeof kept === 'string' ? parseLayoutText(kept) : ({ ok: false, error: [] as const } as const)
    if (parsed.ok) return { layout: parsed.value, notice: null, setAside }
    await storage.setAside(kept)
    return unreadable(kept, problemLines(parsed.error))
  } catch {
    return {
      layout: emptyLayout(),
      setAside: null,
      notice: {
        kind: 'problem',
        text: 'This browser keeps nothing for this page, so work is lost when the page closes. Save the layout to a file.',
        details: [],
      },
    }
  }
}

/**
 * Keeps the layout after every step, one write at a time; what changes while a write runs is written after it, only the latest.
 * Returns a function that stops it.
 */
export const startAutosave = (store: AppStore, storage: LayoutStorage): (() => void) => {
  let waiting: Layout | null = null
  let isWriting = false
  let hasWarned = false

  const writeWaiting = async (): Promise<void> => {
    if (isWriting) return
    isWriting = true
    while (waiting !== null) {
      const layout: Layout = waiting
      waiting = null
      try {
        await storage.write(layoutText(layout))
        hasWarned = false
      } catch {
        if (!hasWarned)
          store.actions.notify(
            'problem',
            'The browser could not keep the last change. Save the layout to a file before you close the page.',
          )
        hasWarned = true
      }
    }
    isWriting = false
  }

  return store.state.subscribe((state, before) => {
    if (state.history.present === before.history.present) return
    waiting = state.history.present
    void writeWaiting()
  })
}
