import type { Layout } from '../../domain/layout/document/layout'
import { parseLayoutText } from '../../domain/layout/document/parseLayout'
import { problemLines } from '../pickedFile'
import type { AppStore } from '../store'
import { nameOf, openHere, type Shelf } from './shelf'

const openCopy = (store: AppStore, name: string, layout: Layout): void => {
  store.actions.openLayout(layout, `Open a copy of ${name}`)
  store.actions.notify(
    'info',
    `${name} is open in another tab. This is a copy of its own: what is changed here does not reach the other tab.`,
  )
}

const opened = async (shelf: Shelf, store: AppStore, id: string): Promise<boolean> => {
  await shelf.running()?.autosave.settled()
  const claim = await shelf.tab.claim(id)
  const refused = (text: string, details: readonly string[] = []): false => {
    if (claim !== 'taken') shelf.tab.release(id)
    store.actions.notify('problem', text, details)
    return false
  }
  const slot = (await shelf.storage.all()).find((kept) => kept.id === id)
  if (slot === undefined) return refused('That layout is no longer there; another tab may have removed it.')
  const name = nameOf(slot.jobName)
  const parsed = parseLayoutText(typeof slot.text === 'string' ? slot.text : '')
  if (!parsed.ok) return refused(`${name} cannot be opened. Nothing was changed.`, problemLines(parsed.error))
  if (claim === 'taken') openCopy(store, name, parsed.value)
  else {
    shelf.running()?.autosave.adopt(slot)
    store.actions.openLayout(parsed.value, `Open ${name}`, id)
    store.actions.notify('info', `${name} is open. What was here before is under Layouts.`)
  }
  return true
}

/**
 * Opens a kept layout to go on with it, or a copy where another tab has it open. What cannot be opened changes nothing; all of it is said
 * in a notice. False when nothing was opened.
 */
export const openKept = async (shelf: Shelf, store: AppStore, id: string): Promise<boolean> => {
  if (id === openHere(shelf)) return true
  try {
    return await opened(shelf, store, id)
  } catch {
    store.actions.notify('problem', 'The browser could not read that layout. Nothing was changed.')
    return false
  }
}
