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
  /** `write` for what is not done at all where the browser refuses: nothing of it is held. */
  readonly writeOrFail: SlotStorage['write']
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

/** How slots are filed, those in hand as it was said last. */
const filingsWith = async (held: Held, storage: SlotStorage): ReturnType<SlotStorage['filings']> => {
  const kept = await storage.filings().catch((): ReadonlyMap<string, Filing> => new Map())
  const inHand = [...held].flatMap(([id, { filing }]) => (filing === null ? [] : [[id, filing] as const]))
  return new Map([...kept, ...inHand])
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
  filings: () => filingsWith(held, storage),
  file: async (id, change) => {
    const inHand = held.get(id)
    if (inHand === undefined) return await storage.file(id, change)
    const filing = (await filingsWith(held, storage)).get(id) ?? UNFILED
    held.set(id, { ...inHand, filing: { ...filing, ...change } })
  },
})

/**
 * A storage from which nothing is lost while the page lives: what the browser refuses to keep is held, lies among the rest, and is
 * tried once more after every write that succeeds. A write that is refused still fails, so that it can be told.
 */
export const holdingStorage = (storage: SlotStorage, freshId: () => string): HoldingStorage => {
  const held: Held = new Map()

  /** Where this tab knows its held version to lie, the browser has what that was to go over. */
  const stampThere = (id: string, over: string | null): string | null => {
    const before = held.get(id)
    return before !== undefined && before.slot.stamp === over ? before.over : over
  }

  const writeOrFail = async (slot: Slot, over: string | null): ReturnType<SlotStorage['write']> => {
    if ((await storage.write(slot, stampThere(slot.id, over))) === 'overtaken') return 'overtaken'
    const filing = held.get(slot.id)?.filing ?? null
    held.delete(slot.id)
    try {
      if (filing !== null) await storage.file(slot.id, filing)
      await writeHeld(held, storage, freshId)
    } catch {
      // What is refused again stays held; this write has succeeded all the same.
    }
    return 'written'
  }

  return {
    ...storage,
    ...listing(held, storage),
    isHeld: (id) => held.has(id),
    isHoldingAny: () => held.size > 0,
    writeOrFail,
    write: async (slot, over) => {
      try {
        return await writeOrFail(slot, over)
      } catch (error) {
        const filing = held.get(slot.id)?.filing ?? null
        held.set(slot.id, { slot, over: stampThere(slot.id, over), filing })
        throw error
      }
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
