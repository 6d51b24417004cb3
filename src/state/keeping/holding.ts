import { type Filing, type Slot, type SlotStorage, UNFILED } from './slot'

/** A slot that could not be written, the stamp of what it was to go over, and how it is filed, as far as that was said since. */
interface HeldSlot {
  readonly slot: Slot
  readonly over: string | null
  readonly filing: Filing | null
}

export interface HoldingStorage extends SlotStorage {
  /** It lasts only until the page closes: the browser has not been able to keep it so far. */
  readonly isHeld: (id: string) => boolean
  readonly isHoldingAny: () => boolean
}

type Held = Map<string, HeldSlot>

/** Tries once more to write what is held; where somebody wrote over what it was to go over it gets a place of its own. */
const writeHeld = async (held: Held, storage: SlotStorage, freshId: () => string): Promise<void> => {
  for (const [id, { slot, over, filing }] of held) {
    const isWritten = (await storage.write(slot, over)) === 'written'
    const at = isWritten ? id : freshId()
    if (!isWritten) await storage.write({ ...slot, id: at }, null)
    if (filing !== null) await storage.file(at, filing)
    held.delete(id)
  }
}

const listing = (held: Held, storage: SlotStorage): Pick<SlotStorage, 'all' | 'filings' | 'file'> => ({
  all: async () => {
    const inHand = [...held.values()].map(({ slot }) => slot)
    try {
      return [...(await storage.all()).filter(({ id }) => !held.has(id)), ...inHand]
    } catch (error) {
      if (held.size === 0) throw error
      return inHand
    }
  },
  filings: async () => {
    const kept = await storage.filings().catch((): ReadonlyMap<string, Filing> => new Map())
    return new Map([
      ...kept,
      ...[...held].flatMap(([id, { filing }]) => (filing === null ? [] : [[id, filing] as const])),
    ])
  },
  file: async (id, change) => {
    const inHand = held.get(id)
    if (inHand === undefined) await storage.file(id, change)
    else held.set(id, { ...inHand, filing: { ...(inHand.filing ?? UNFILED), ...change } })
  },
})

/**
 * A storage from which nothing is lost while the page lives: what the browser refuses to keep is held, lies among the rest, and is
 * tried once more after every write that succeeds. A write that is refused still fails, so that it can be told.
 */
export const holdingStorage = (storage: SlotStorage, freshId: () => string): HoldingStorage => {
  const held: Held = new Map()
  return {
    ...storage,
    ...listing(held, storage),
    isHeld: (id) => held.has(id),
    isHoldingAny: () => held.size > 0,
    write: async (slot, over) => {
      const before = held.get(slot.id)
      // Where this tab knows its held version to lie, the browser has what that was to go over.
      const there = before !== undefined && before.slot.stamp === over ? before.over : over
      try {
        if ((await storage.write(slot, there)) === 'overtaken') return 'overtaken'
      } catch (error) {
        held.set(slot.id, { slot, over: there, filing: before?.filing ?? null })
        throw error
      }
      held.delete(slot.id)
      try {
        if (before?.filing !== undefined && before.filing !== null) await storage.file(slot.id, before.filing)
        await writeHeld(held, storage, freshId)
      } catch {
        // What is refused again stays held; this write has succeeded all the same.
      }
      return 'written'
    },
    remove: async (id) => {
      const wasHeld = held.delete(id)
      try {
        await storage.remove(id)
      } catch (error) {
        if (!wasHeld) throw error
      }
    },
  }
}
