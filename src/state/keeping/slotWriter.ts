import type { Layout } from '../../domain/layout/document/layout'
import { layoutText } from '../../domain/layout/document/layoutText'
import type { SlotStorage, TabFacts } from './slot'

interface WriterEvents {
  /** Somebody else wrote into a slot; what was to go there is in another one. */
  readonly onOvertaken: (id: string, fresh: string) => void
  readonly onFailed: (error: unknown) => void
  readonly onWritten: () => void
  /** Nothing waits any more. */
  readonly onIdle: () => void
}

/** Writes layouts into the slots of one tab: one write at a time, only the latest of each slot, and never over what the tab has not seen. */
export interface SlotWriter {
  /** The slots this tab writes into. */
  readonly slots: () => readonly string[]
  /** Tells the stamp of what lies in a slot from now on this tab's; null: nothing. */
  readonly know: (id: string, stamp: string | null) => void
  /** Drops a slot that nothing waits for; false when something does. */
  readonly forget: (id: string) => boolean
  /** What waits for one slot goes into another. */
  readonly move: (before: string, id: string, stamp: string | null) => void
  /** Nothing is written before this has come. */
  readonly waitFor: (claim: Promise<unknown>) => void
  readonly write: (id: string, layout: Layout) => void
  /** Has `onIdle` called soon although nothing was to be written. */
  readonly settle: () => void
  readonly idle: () => Promise<void>
}

const writtenSlot = (layout: Layout, tab: TabFacts) => ({
  text: layoutText(layout),
  jobName: layout.job.name,
  savedAtMs: tab.nowMs(),
  stamp: tab.freshId(),
})

export const slotWriter = (storage: SlotStorage, tab: TabFacts, events: WriterEvents): SlotWriter => {
  const stamps = new Map<string, string | null>()
  const waiting = new Map<string, Layout>()
  let claimed: Promise<unknown> = Promise.resolve()
  let writing: Promise<void> | null = null

  const move = (before: string, id: string, stamp: string | null): void => {
    stamps.delete(before)
    stamps.set(id, stamp)
    const layout = waiting.get(before)
    if (layout !== undefined) waiting.set(id, layout)
    waiting.delete(before)
  }

  const written = async (id: string, layout: Layout): Promise<void> => {
    const slot = writtenSlot(layout, tab)
    if ((await storage.write({ id, ...slot }, stamps.get(id) ?? null)) === 'written') {
      stamps.set(id, slot.stamp)
      return
    }
    const fresh = tab.freshId()
    await tab.claim(fresh)
    await storage.write({ id: fresh, ...slot }, null)
    move(id, fresh, slot.stamp)
    events.onOvertaken(id, fresh)
  }

  const writeWaiting = async (): Promise<void> => {
    await claimed
    for (let next = [...waiting][0]; next !== undefined; next = [...waiting][0]) {
      const [id, layout] = next
      waiting.delete(id)
      await written(id, layout).then(events.onWritten, events.onFailed)
      await claimed
    }
    writing = null
    events.onIdle()
  }

  const settle = (): void => {
    writing ??= writeWaiting()
  }

  return {
    slots: () => [...stamps.keys()],
    know: (id, stamp) => stamps.set(id, stamp),
    forget: (id) => !waiting.has(id) && writing === null && stamps.delete(id),
    move,
    waitFor: (claim) => (claimed = claimed.then(() => claim)),
    write: (id, layout) => {
      waiting.set(id, layout)
      settle()
    },
    settle,
    idle: async () => {
      await claimed
      while (writing !== null) await writing
    },
  }
}
