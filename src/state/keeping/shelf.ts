import { emptyLayout } from '../../domain/layout/document/empty'
import type { Layout } from '../../domain/layout/document/layout'
import { layoutText } from '../../domain/layout/document/layoutText'
import { parseLayoutText } from '../../domain/layout/document/parseLayout'
import { layoutCopy } from '../../domain/layout/edit/copy'
import type { AppStore } from '../store'
import type { Autosave } from './autosave'
import type { HoldingStorage } from './holding'
import { asText, byTime } from './restored'
import { type Filing, type Slot, type TabFacts, UNFILED } from './slot'

/** A layout that is kept, by this tab or another, now or at an earlier visit. */
export interface KeptLayout extends Filing {
  readonly id: string
  /** The text of a layout file, unless it is damaged. */
  readonly text: string
  readonly jobName: string
  /** ms since 1970; 0: not known. */
  readonly savedAtMs: number
  /** Another open tab is working on it. */
  readonly isOpenElsewhere: boolean
  /** This tab has it open. */
  readonly isOpenHere: boolean
  /** The browser could not keep it; it lasts until the page closes. */
  readonly isOnlyInPage: boolean
}

/** What the page's keeping works on. */
export interface Shelf {
  readonly storage: HoldingStorage
  readonly tab: TabFacts
  /** Null until autosave runs. */
  readonly running: () => { readonly autosave: Autosave; readonly store: AppStore } | null
}

export const nameOf = (jobName: string): string => (jobName === '' ? 'Unnamed layout' : jobName)

export const openHere = (shelf: Shelf): string | undefined =>
  shelf.running()?.store.state.getState().documentId

/** Everything that is kept, in the bin too, newest first. */
export const keptLayouts = async (shelf: Shelf): Promise<readonly KeptLayout[]> => {
  await shelf.running()?.autosave.settled()
  const own = openHere(shelf)
  const [claimed, filings] = [await shelf.tab.claimed(), await shelf.storage.filings()]
  return byTime(await shelf.storage.all()).map(({ id, text, jobName, savedAtMs }) => ({
    id,
    text: asText(text) ?? '',
    jobName,
    savedAtMs,
    ...(filings.get(id) ?? UNFILED),
    // What is worked on is not thrown away, even where the browser could not tell the tab that put it into the bin.
    ...(id === own ? { removedAtMs: null } : {}),
    isOpenHere: id === own,
    isOpenElsewhere: id !== own && claimed.has(id),
    isOnlyInPage: shelf.storage.isHeld(id),
  }))
}

/** The one of these that is exactly this layout, letter for letter; null when none is, or only in the bin. */
export const keptAlready = (kept: readonly KeptLayout[], layout: Layout): KeptLayout | null => {
  const text = layoutText(layout)
  return kept.find((other) => other.text === text && other.removedAtMs === null) ?? null
}

const slotOf = async (shelf: Shelf, id: string): Promise<Slot | undefined> =>
  (await shelf.storage.all()).find((slot) => slot.id === id)

const writtenOver = (shelf: Shelf, id: string, layout: Layout, over: string | null) =>
  shelf.storage.writeOrFail(
    {
      id,
      text: layoutText(layout),
      jobName: layout.job.name,
      savedAtMs: shelf.tab.nowMs(),
      stamp: shelf.tab.freshId(),
    },
    over,
  )

/** A copy beside it, in the same folder; the id of the copy, or null when what is there is no layout. */
export const duplicated = async (shelf: Shelf, id: string): Promise<string | null> => {
  await shelf.running()?.autosave.settled()
  const slot = await slotOf(shelf, id)
  const parsed = parseLayoutText(typeof slot?.text === 'string' ? slot.text : '')
  if (!parsed.ok) return null
  const copyId = shelf.tab.freshId()
  await writtenOver(
    shelf,
    copyId,
    layoutCopy(parsed.value, () => `belt-${shelf.tab.freshId()}`),
    null,
  )
  const folder = (await shelf.storage.filings()).get(id)?.folder ?? ''
  if (folder !== '') await shelf.storage.file(copyId, { folder })
  return copyId
}

/** Calls a job otherwise, in the open document as a step that undo takes back; false when another tab has it open, or it is no layout. */
export const renamed = async (shelf: Shelf, id: string, name: string): Promise<boolean> => {
  const withName = (layout: Layout): Layout => ({ ...layout, job: { ...layout.job, name } })
  if (id === openHere(shelf)) {
    shelf.running()?.store.actions.edit('Name the job', withName)
    return true
  }
  await shelf.running()?.autosave.settled()
  if ((await shelf.tab.claim(id)) === 'taken') return false
  try {
    const slot = await slotOf(shelf, id)
    const parsed = parseLayoutText(typeof slot?.text === 'string' ? slot.text : '')
    if (slot === undefined || !parsed.ok) return false
    return (await writtenOver(shelf, id, withName(parsed.value), slot.stamp)) === 'written'
  } finally {
    shelf.tab.release(id)
  }
}

/** Which of these no other tab is working on. */
const ofNobodyElse = async (shelf: Shelf, ids: readonly string[]): Promise<readonly string[]> => {
  const claimed = await shelf.tab.claimed()
  return ids.filter((id) => id === openHere(shelf) || !claimed.has(id))
}

/**
 * Puts layouts into the bin, but for those that another tab is working on; the ids that went there. Where the open document is one of
 * them an empty one is opened in its place.
 */
export const binned = async (shelf: Shelf, ids: readonly string[]): Promise<readonly string[]> => {
  await shelf.running()?.autosave.settled()
  const going = await ofNobodyElse(shelf, ids)
  for (const id of going) {
    if (id === openHere(shelf)) shelf.running()?.store.actions.openLayout(emptyLayout(), 'Start a new layout')
    await shelf.storage.file(id, { removedAtMs: shelf.tab.nowMs() })
  }
  return going
}

/** Removes from the bin for good, unless a tab is working on it; the ids that are gone. */
export const emptied = async (shelf: Shelf, ids: readonly string[]): Promise<readonly string[]> => {
  const filings = await shelf.storage.filings()
  const inBin = ids.filter((id) => (filings.get(id)?.removedAtMs ?? null) !== null && id !== openHere(shelf))
  const going = await ofNobodyElse(shelf, inBin)
  for (const id of going) await shelf.storage.remove(id)
  return going
}
