import type { Layout } from '../domain/layout/document/layout'
import { layoutText } from '../domain/layout/document/layoutText'
import { parseLayout, parseLayoutText } from '../domain/layout/document/parseLayout'
import { pickedText, problemLines } from './pickedFile'
import type { AppStore } from './store'

/** Larger than any real layout by far; a bigger file is something else. Our judgement. */
const LARGEST_FILE_BYTES = 5_000_000

/** Opens the text of a layout file as a document of its own; a damaged or foreign one changes nothing and says why. */
export const openLayoutText = (store: AppStore, text: string, name: string): boolean => {
  const parsed = parseLayoutText(text)
  if (!parsed.ok) {
    store.actions.notify(
      'problem',
      `${name} cannot be opened. Nothing was changed.`,
      problemLines(parsed.error),
    )
    return false
  }
  store.actions.openLayout(parsed.value, `Open ${name}`)
  store.actions.notify('info', `${name} is open. What was here before is under Layouts.`)
  return true
}

export const openLayoutFile = async (store: AppStore, file: File): Promise<boolean> => {
  const text = await pickedText(store, file, { what: 'a layout', largestBytes: LARGEST_FILE_BYTES })
  return text !== null && openLayoutText(store, text, file.name)
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

interface SaveWindow {
  readonly showSaveFilePicker?: (options: {
    readonly suggestedName: string
    readonly types: readonly {
      readonly description: string
      readonly accept: Readonly<Record<string, readonly string[]>>
    }[]
  }) => Promise<{
    readonly createWritable: () => Promise<{
      readonly write: (text: string) => Promise<void>
      readonly close: () => Promise<void>
    }>
  }>
}

/** Hands a text to the browser to be saved as a file. */
export const download = (text: string, name: string, mediaType = 'application/json'): void => {
  const address = URL.createObjectURL(new Blob([text], { type: mediaType }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  URL.revokeObjectURL(address)
}

/** Saves to a place the builder picks where the browser can ask, otherwise as a download. Resolves to false when called off. */
export const saveLayoutFile = async (layout: Layout): Promise<boolean> => {
  const text = layoutText(layout)
  const name = layoutFileName(layout)
  const { showSaveFilePicker } = window as unknown as SaveWindow
  if (showSaveFilePicker === undefined) {
    download(text, name)
    return true
  }
  try {
    const file = await showSaveFilePicker.call(window, {
      suggestedName: name,
      types: [{ description: 'Tabwright layout', accept: { 'application/json': ['.json'] } }],
    })
    const writable = await file.createWritable()
    await writable.write(text)
    await writable.close()
    return true
  } catch (problem) {
    if (problem instanceof DOMException && problem.name === 'AbortError') return false
    download(text, name)
    return true
  }
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
    return openLayoutText(store, await response.text(), example.title)
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
