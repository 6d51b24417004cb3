import type { Slot, SlotStorage } from './slot'

/** A slot that could not be written, and the stamp of what it was to go over. */
interface HeldSlot {
  readonly slot: Slot
  readonly over: string | null
}

export interface HoldingStorage extends SlotStorage {
  /** It lasts only until the page closes: the browser has not been able to keep it so far. */
  readonly isHeld: (id: string) => boolean
  readonly isHoldingAny: () => boolean
}

/**
 * A storage from which nothing is lost while the page lives: what the browser refuses to keep is held, lies among the rest, and is
 * tried once more after every write that succeeds. A write that is refused still fails, so that it can be told.
 */
export const holdingStorage = (storage: SlotStorage, freshId: () => string): HoldingStorage => {
  const held = new Map<string, HeldSlot>()

  /** What lies in the browser where this tab knows its held version to lie. */
  const stampThere = (id: string, over: string | null): string | null => {
    const before = held.get(id)
    return before !== undefined && before.slot.stamp === over ? before.over : over
  }

  const writeHeld = async (): Promise<void> => {
    for (const [id, { slot, over }] of held) {
      const isWritten = (await storage.write(slot, over)) === 'written'
      if (!isWritten) await storage.write({ ...slot, id: freshId() }, null)
      held.delete(id)
    }
  }

  return {
    ...storage,
    isHeld: (id) => held.has(id),
    isHoldingAny: () => held.size > 0,
    all: async () => {
      try {
        const kept = await storage.all()
        const others = kept.filter(({ id }) => !held.has(id))
        return [...others, ...[...held.values()].map(({ slot }) => slot)]
      } catch (error) {
        if (held.size === 0) throw error
        return [...held.values()].map(({ slot }) => slot)
      }
    },
    write: async (slot, over) => {
      const there = stampThere(slot.id, over)
      try {
        const outcome = await storage.write(slot, there)
        if (outcome === 'overtaken') return outcome
      } catch (error) {
        held.set(slot.id, { slot, over: there })
        throw error
      }
      held.delete(slot.id)
      // What is refused again stays held; this write has succeeded all the same.
      await writeHeld().catch(() => undefined)
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
