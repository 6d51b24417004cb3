import { uniqueId } from '../uniqueId'
import type { TabFacts } from './slot'

const SLOT_KEY = 'tabwright-slot'
const TOLD_KEY = 'tabwright-recovered-told'
const LOCK_PREFIX = 'tabwright-slot:'

/**
 * How long to wait for a slot, ms, before another tab is taken to have it: the page that was here before a reload may let go of it
 * a moment late. Our judgement.
 */
const PATIENCE_MS = 1000

/** Storage of this tab or of the browser; a browser that forbids it remembers nothing, and nothing else depends on it. */
const remembered = (storage: () => Storage, key: string): string | null => {
  try {
    return storage().getItem(key)
  } catch {
    return null
  }
}

const remember = (storage: () => Storage, key: string, value: string): void => {
  try {
    storage().setItem(key, value)
  } catch {
    // Not remembered; a slot is then found by its time, and somebody is told twice.
  }
}

/** Holds a lock until it is let go or the page is gone, unless somebody else still has it after a while. */
const claimed = (
  locks: LockManager,
  name: string,
  onHeld: (letGo: () => void) => void,
): ReturnType<TabFacts['claim']> =>
  new Promise((resolve) => {
    const patience = new AbortController()
    const timer = setTimeout(() => patience.abort(), PATIENCE_MS)
    locks
      .request(name, { signal: patience.signal }, () => {
        clearTimeout(timer)
        resolve('mine')
        return new Promise<void>(onHeld)
      })
      .catch(() => {
        clearTimeout(timer)
        resolve(patience.signal.aborted ? 'taken' : 'unknown')
      })
  })

/** Locks of the browser; missing in old ones and on pages without encryption. */
const browserLocks = (): LockManager | null =>
  'locks' in navigator && typeof navigator.locks.request === 'function' ? navigator.locks : null

export const browserTab = (): TabFacts => {
  const last = remembered(() => sessionStorage, SLOT_KEY)
  const held = new Map<string, () => void>()
  return {
    lastSlotId: () => last,
    rememberSlotId: (id) => remember(() => sessionStorage, SLOT_KEY, id),
    claim: async (id) => {
      const locks = browserLocks()
      // Stamps still keep two tabs apart when the browser copied one with all it remembers.
      if (locks === null) return id === last ? 'mine' : 'unknown'
      if (held.has(id)) return 'mine'
      return await claimed(locks, LOCK_PREFIX + id, (letGo) => held.set(id, letGo))
    },
    release: (id) => {
      held.get(id)?.()
      held.delete(id)
    },
    claimed: async () => {
      const names = await browserLocks()
        ?.query()
        .then(({ held = [] }) => held.map(({ name = '' }) => name))
        .catch(() => [])
      return new Set(
        (names ?? []).flatMap((name) =>
          name.startsWith(LOCK_PREFIX) ? [name.slice(LOCK_PREFIX.length)] : [],
        ),
      )
    },
    toldUpToMs: () => Number(remembered(() => localStorage, TOLD_KEY) ?? 0) || 0,
    rememberTold: (upToMs) => remember(() => localStorage, TOLD_KEY, String(upToMs)),
    freshId: uniqueId,
    nowMs: () => Date.now(),
  }
}
