import { emptyLayout } from '../../domain/layout/document/empty'
import type { Layout } from '../../domain/layout/document/layout'
import { parseLayoutText } from '../../domain/layout/document/parseLayout'
import type { Notice } from '../appState'
import { problemLines } from '../pickedFile'
import type { Slot, SlotStorage, TabFacts } from './slot'

export interface Restored {
  readonly layout: Layout
  readonly notice: Notice | null
  /** What was set aside now or at an earlier visit, as text for a file. */
  readonly setAside: string | null
  /** Where the layout came from; null at a first visit and where nothing can be kept. */
  readonly from: Slot | null
  /** False where the browser keeps nothing, which the notice then says. */
  readonly canKeep: boolean
}

/** Damage as text for a file; null: nothing there. */
export const asText = (value: unknown): string | null => {
  if (value === undefined) return null
  return typeof value === 'string' ? value : JSON.stringify(value)
}

/** Newest first; what has no time comes last. */
export const byTime = (slots: readonly Slot[]): readonly Slot[] =>
  slots.toSorted((a, b) => b.savedAtMs - a.savedAtMs)

const unreadable = (from: Slot, details: readonly string[]): Restored => ({
  layout: emptyLayout(),
  from,
  canKeep: true,
  setAside: asText(from.text),
  notice: {
    kind: 'problem',
    text:
      'The layout kept in this browser could not be read, so an empty one was started. The damaged copy is set aside; ' +
      'save it from the File menu if you want to mend it.',
    details,
  },
})

const olderNotice = (count: number): Notice => ({
  kind: 'info',
  text:
    `The layout that was changed last is open. ${count === 1 ? 'Another one' : `${count} others`} kept by other tabs ` +
    `${count === 1 ? 'is' : 'are'} under Layouts.`,
  details: [],
})

/** What to say of other kept layouts that no open tab shows: once for each, and only in a tab that was not here before. */
const noticeOfOthers = async (
  tab: TabFacts,
  chosen: Slot,
  slots: readonly Slot[],
): Promise<Notice | null> => {
  if (tab.lastSlotId() !== null) return null
  const open = await tab.claimed()
  const others = slots.filter(
    ({ id, text, savedAtMs }) =>
      id !== chosen.id && !open.has(id) && text !== chosen.text && savedAtMs > tab.toldUpToMs(),
  )
  if (others.length === 0) return null
  tab.rememberTold(Math.max(...others.map(({ savedAtMs }) => savedAtMs)))
  return olderNotice(others.length)
}

const readSlots = async (storage: SlotStorage, tab: TabFacts): Promise<Restored> => {
  const all = byTime(await storage.all())
  const filings = await storage.filings()
  const slots = all.filter(({ id }) => (filings.get(id)?.removedAtMs ?? null) === null)
  const setAside = asText(await storage.readSetAside())
  const chosen = all.find(({ id }) => id === tab.lastSlotId()) ?? slots[0]
  if (chosen === undefined)
    return { layout: emptyLayout(), notice: null, setAside, from: null, canKeep: true }
  const parsed =
    typeof chosen.text === 'string'
      ? parseLayoutText(chosen.text)
      : ({ ok: false, error: [] as const } as const)
  if (!parsed.ok) {
    await storage.setAside(chosen.text)
    return unreadable(chosen, problemLines(parsed.error))
  }
  const notice = await noticeOfOthers(tab, chosen, slots)
  return { layout: parsed.value, notice, setAside, from: chosen, canKeep: true }
}

/**
 * What this tab worked on before, in a new tab what was changed last in any; or an empty layout and the reason why. Never fails.
 */
export const restored = async (storage: SlotStorage, tab: TabFacts): Promise<Restored> => {
  try {
    return await readSlots(storage, tab)
  } catch {
    return {
      layout: emptyLayout(),
      setAside: null,
      from: null,
      canKeep: false,
      notice: {
        kind: 'problem',
        text: 'This browser keeps nothing for this page, so work is lost when the page closes. Save the layout to a file.',
        details: [],
      },
    }
  }
}
