import type { Layout } from '../domain/layout/document/layout'
import { parseLayout, parseLayoutText } from '../domain/layout/document/parseLayout'
import { pageKeeping } from './keeping/pageKeeping'
import { keptAlready } from './keeping/shelf'
import { pickedText, problemLines, readOrSaid } from './pickedFile'
import type { AppStore } from './store'
import { answerOpener, proposalOpener } from './talk/openers'

/** Larger than any real layout by far; a bigger file is something else. Our judgement. */
const LARGEST_FILE_BYTES = 5_000_000

/** Whoever opens something from the list of layouts wants to see it. */
const leaveLayouts = (store: AppStore): void => {
  if (store.state.getState().view.screen === 'layouts')
    store.actions.setView({ screen: 'drawing', side: 'panels' })
}

/** Opens the text of a layout file as a document of its own; a damaged or foreign one changes nothing and says why. */
export const openLayoutText = (store: AppStore, text: string, name: string): boolean => {
  const layout = readOrSaid(store, parseLayoutText(text), `${name} cannot be opened`)
  if (layout === null) return false
  store.actions.openLayout(layout, `Open ${name}`)
  leaveLayouts(store)
  store.actions.notify('info', `${name} is open. What was here before is under Layouts.`)
  return true
}

/** Kinds of files that are no layouts, told by what they hold. */
const OTHER_KINDS = [proposalOpener, answerOpener] as const

const jsonIn = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

/** Files that belong somewhere else: where, in words; null for all others. */
const elsewhereWords = (value: unknown): string | null =>
  typeof value === 'object' && value !== null && 'ruleSetFile' in value
    ? 'is a rule set, no layout. Add it with “Add a rule set from a file…” among the rules of the layout that is to have it.'
    : null

/**
 * Opens the text of any of our files, by what it holds and not by its name: a layout as a document of its own, or the one that is kept
 * already letter for letter; what a customer was shown or answered on its own screen. Anything else changes nothing and says why.
 */
const openText = async (store: AppStore, text: string, name: string): Promise<boolean> => {
  const value = jsonIn(text)
  const other = OTHER_KINDS.find(({ recognises }) => recognises(value))
  if (other !== undefined) return other.open(store, text, name)
  const elsewhere = elsewhereWords(value)
  if (elsewhere !== null) {
    store.actions.notify('problem', `${name} ${elsewhere}`)
    return false
  }
  const keptId = await keptIdOf(text)
  return keptId === null ? openLayoutText(store, text, name) : await openAgain(store, keptId, name)
}

/** Where exactly this layout is kept and no other tab is working on it; null when it is not. */
const keptIdOf = async (text: string): Promise<string | null> => {
  const parsed = parseLayoutText(text)
  const kept = parsed.ok ? keptAlready((await pageKeeping.list()) ?? [], parsed.value) : null
  return kept === null || kept.isOpenElsewhere ? null : kept.id
}

const openAgain = async (store: AppStore, id: string, name: string): Promise<boolean> => {
  if (!(await pageKeeping.open(store, id))) return false
  leaveLayouts(store)
  store.actions.notify('info', `${name} is open. It was kept here already, letter for letter.`)
  return true
}

/** How every zip archive begins. Source: PKWARE APPNOTE, local file header (from memory). */
const ARCHIVE_START = 'PK\u0003\u0004'

const isArchive = async (file: File): Promise<boolean> =>
  (await file
    .slice(0, ARCHIVE_START.length)
    .text()
    .catch(() => '')) === ARCHIVE_START

export const openLayoutFile = async (store: AppStore, file: File): Promise<boolean> => {
  if (await isArchive(file)) {
    store.actions.notify('problem', `${file.name} is an archive. Unpack it and open the *.layout.json in it.`)
    return false
  }
  const text = await pickedText(store, file, { what: 'a layout', largestBytes: LARGEST_FILE_BYTES })
  return text !== null && (await openText(store, text, file.name))
}

/** Names that some systems keep for devices whatever ending follows. Source: Microsoft, "Naming Files, Paths, and Namespaces" (from memory). */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)$/

/** A file name from the job's name that every system accepts. */
export const layoutFileName = (layout: Layout): string => {
  const words = [layout.job.name, layout.job.revision].join(' ')
  const plain = words
    .normalize('NFKD')
    .replace(/[\p{M}\p{Cf}]/gu, '')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 60)
  const stem = DEVICE.test(plain) ? `job-${plain}` : plain
  return `${stem === '' ? 'unnamed' : stem}.layout.json`
}

/** Hands a text to the browser to be saved as a file. */
export const download = (text: string, name: string, mediaType = 'application/json'): void => {
  const address = URL.createObjectURL(new Blob([text], { type: mediaType }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  // The download has started by then; a browser that is slower still holds the text for this long.
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}

export interface ExampleEntry {
  readonly file: string
  readonly title: string
  readonly about: string
}

const isExampleEntry = (value: unknown): value is ExampleEntry =>
  typeof value === 'object' &&
  value !== null &&
  ['file', 'title', 'about'].every(
    (key) => typeof (value as Readonly<Record<string, unknown>>)[key] === 'string',
  )

/** The list of examples that come with the app, or null when it cannot be had. */
export const exampleList = async (): Promise<readonly ExampleEntry[] | null> => {
  try {
    const response = await fetch('./examples/index.json')
    const list: unknown = response.ok ? await response.json() : null
    return Array.isArray(list) && list.every(isExampleEntry) ? list : null
  } catch {
    return null
  }
}

export const openExample = async (store: AppStore, example: ExampleEntry): Promise<boolean> => {
  try {
    const response = await fetch(`./examples/${example.file}`)
    if (!response.ok) throw new Error(`status ${response.status}`)
    return await openText(store, await response.text(), example.title)
  } catch {
    store.actions.notify(
      'problem',
      `The example "${example.title}" could not be loaded. Nothing was changed; try again.`,
    )
    return false
  }
}

/** What a layout file could not hold about this layout; empty when saving and opening would give it back. */
export const unsoundLines = (layout: Layout): readonly string[] => {
  const parsed = parseLayout(layout)
  return parsed.ok ? [] : problemLines(parsed.error)
}
