import { emptyLayout } from '../../../src/domain/layout/document/empty'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { layoutText } from '../../../src/domain/layout/document/layoutText'
import { createKeeping } from '../../../src/state/keeping/keeping'
import {
  type Filing,
  type Slot,
  type SlotStorage,
  type TabFacts,
  UNFILED,
} from '../../../src/state/keeping/slot'
import { createAppStore } from '../../../src/state/store'

export const named =
  (name: string) =>
  (layout: Layout): Layout => ({ ...layout, job: { ...layout.job, name } })
export const nameIn = (text: unknown): string => (JSON.parse(String(text)) as Layout).job.name

/** Lets everything run that waits for nothing but a promise. */
export const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0))

/** One browser: what it keeps, which slots its open tabs hold, and a clock that moves with every look at it. */
export const browser = (options: { readonly hasLocks?: boolean; readonly slots?: readonly Slot[] } = {}) => {
  const { hasLocks = true, slots = [] } = options
  const kept = new Map(slots.map((slot) => [slot.id, slot]))
  const holders = new Map<string, number>()
  const filings = new Map<string, Filing>()
  const links = new Map<string, unknown>()
  const aside: unknown[] = []
  let now = 1000
  let ids = 0
  let tabs = 0
  let told = 0
  const storage: SlotStorage = {
    all: () => Promise.resolve([...kept.values()]),
    write: (slot, over) => {
      const there = kept.get(slot.id)
      if (there !== undefined && there.stamp !== over) return Promise.resolve('overtaken')
      kept.set(slot.id, slot)
      return Promise.resolve('written')
    },
    remove: (id) => {
      kept.delete(id)
      filings.delete(id)
      links.delete(id)
      return Promise.resolve()
    },
    filings: () => Promise.resolve(new Map(filings)),
    file: (id, change) => {
      filings.set(id, { ...(filings.get(id) ?? UNFILED), ...change })
      return Promise.resolve()
    },
    fileLink: (id) => Promise.resolve(links.get(id)),
    keepFileLink: (id, link) => {
      links.set(id, link)
      return Promise.resolve()
    },
    setAside: (value) => {
      aside.push(value)
      return Promise.resolve()
    },
    readSetAside: () => Promise.resolve(aside.at(-1)),
  }
  /** One tab, which can be loaded anew and closed. */
  const openTab = (session: { slotId: string | null } = { slotId: null }) => {
    const own = (tabs += 1)
    const last = session.slotId
    const facts: TabFacts = {
      lastSlotId: () => last,
      rememberSlotId: (id) => {
        session.slotId = id
      },
      claim: (id) => {
        if (!hasLocks) return Promise.resolve(id === last ? 'mine' : 'unknown')
        const holder = holders.get(id) ?? own
        if (holder !== own) return Promise.resolve('taken')
        holders.set(id, own)
        return Promise.resolve('mine')
      },
      release: (id) => {
        if (holders.get(id) === own) holders.delete(id)
      },
      claimed: () => Promise.resolve(new Set(holders.keys())),
      toldUpToMs: () => told,
      rememberTold: (upToMs) => {
        told = upToMs
      },
      freshId: () => `id-${(ids += 1)}`,
      nowMs: () => (now += 1),
    }
    const close = (): void => {
      for (const [id, holder] of holders) if (holder === own) holders.delete(id)
    }
    return { facts, session, close, reload: () => (close(), openTab(session)) }
  }
  return { kept, filings, links, aside, storage, openTab }
}

export type Browser = ReturnType<typeof browser>

/** A page in a tab of a browser, started as the app starts. */
export const page = async (within: Browser, tab = within.openTab(), storage = within.storage) => {
  const keeping = createKeeping(storage, tab.facts)
  const before = await keeping.restored()
  const { layout, notice, setAside } = before
  const store = createAppStore(layout, { setAside, documentId: before.from?.id ?? tab.facts.freshId() })
  if (notice !== null) store.actions.notify(notice.kind, notice.text, notice.details)
  const autosave = keeping.start(store, before)
  await settled()
  const rename = async (name: string): Promise<void> => {
    store.actions.edit(name, named(name))
    await settled()
  }
  const reload = async () => {
    autosave.stop()
    return await page(within, tab.reload())
  }
  const close = (): void => {
    autosave.stop()
    tab.close()
  }
  const name = (): string => store.state.getState().layout.job.name
  const said = (): string => store.state.getState().notice?.text ?? ''
  return { store, keeping, rename, reload, close, name, said, notice, setAside, layout }
}

export const names = (within: Browser): readonly string[] =>
  [...within.kept.values()].map(({ text }) => nameIn(text))

export const slot = (id: string, text: unknown, savedAtMs = 0): Slot => ({
  id,
  text,
  jobName: typeof text === 'string' && text.startsWith('{\n') ? nameIn(text) : '',
  savedAtMs,
  stamp: `stamp-${id}`,
})
export const kept = (id: string, name: string, savedAtMs: number): Slot =>
  slot(id, layoutText(named(name)(emptyLayout())), savedAtMs)
