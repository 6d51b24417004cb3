import { createStore, delMany, entries, get, set, update, type UseStore } from 'idb-keyval'
import { type Filing, type Slot, type SlotStorage, UNFILED } from './slot'

const SET_ASIDE_KEY = 'set-aside'

/** The one slot of browsers that kept layouts before there were several. */
const FIRST_SLOT = 'layout'
const SLOT_PREFIX = 'layout:'
const FILING_PREFIX = 'filing:'
const FILE_LINK_PREFIX = 'file:'

const isSlotKey = (key: unknown): key is string =>
  typeof key === 'string' && (key === FIRST_SLOT || key.startsWith(SLOT_PREFIX))

const keyOf = (id: string): string => (id === FIRST_SLOT ? FIRST_SLOT : `${SLOT_PREFIX}${id}`)
const idOf = (key: string): string => (key === FIRST_SLOT ? FIRST_SLOT : key.slice(SLOT_PREFIX.length))

/** What lies under a key, whoever wrote it and however damaged it is. */
const slotFrom = (id: string, value: unknown): Slot => {
  const { text, jobName, savedAtMs, stamp } = (
    typeof value === 'object' && value !== null ? value : {}
  ) as Readonly<Record<string, unknown>>
  return {
    id,
    text: typeof text === 'string' && typeof stamp === 'string' ? text : value,
    jobName: typeof jobName === 'string' ? jobName : '',
    savedAtMs: typeof savedAtMs === 'number' && Number.isFinite(savedAtMs) ? savedAtMs : 0,
    stamp: typeof stamp === 'string' ? stamp : '',
  }
}

/** How a slot is filed, whoever wrote it and however damaged it is. */
const filingFrom = (value: unknown): Filing => {
  const { folder, removedAtMs } = (typeof value === 'object' && value !== null ? value : {}) as Readonly<
    Record<string, unknown>
  >
  return {
    folder: typeof folder === 'string' ? folder : UNFILED.folder,
    removedAtMs: typeof removedAtMs === 'number' && Number.isFinite(removedAtMs) ? removedAtMs : null,
  }
}

/** IndexedDB, opened at the first use so that a browser that forbids it fails there and not while the page loads. */
export const browserSlots = (): SlotStorage => {
  let opened: UseStore | null = null
  const database = (): UseStore => (opened ??= createStore('tabwright', 'layouts'))
  return {
    all: async () =>
      (await entries<IDBValidKey, unknown>(database())).flatMap(([key, value]) =>
        isSlotKey(key) ? [slotFrom(idOf(key), value)] : [],
      ),
    write: async ({ id, ...kept }, over) => {
      let outcome: 'written' | 'overtaken' = 'written'
      await update<unknown>(
        keyOf(id),
        (value) => {
          outcome = value === undefined || slotFrom(id, value).stamp === over ? 'written' : 'overtaken'
          return outcome === 'written' ? kept : value
        },
        database(),
      )
      return outcome
    },
    remove: async (id) => await delMany([keyOf(id), FILING_PREFIX + id, FILE_LINK_PREFIX + id], database()),
    filings: async () =>
      new Map(
        (await entries<IDBValidKey, unknown>(database())).flatMap(([key, value]) =>
          typeof key === 'string' && key.startsWith(FILING_PREFIX)
            ? [[key.slice(FILING_PREFIX.length), filingFrom(value)] as const]
            : [],
        ),
      ),
    file: async (id, change) =>
      await update<unknown>(FILING_PREFIX + id, (value) => ({ ...filingFrom(value), ...change }), database()),
    fileLink: async (id) => await get<unknown>(FILE_LINK_PREFIX + id, database()),
    keepFileLink: async (id, link) => await set(FILE_LINK_PREFIX + id, link, database()),
    setAside: async (value) => await set(SET_ASIDE_KEY, value, database()),
    readSetAside: async () => await get<unknown>(SET_ASIDE_KEY, database()),
  }
}
