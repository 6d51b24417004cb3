import type { Layout } from '../domain/layout/document/layout'
import { layoutText } from '../domain/layout/document/layoutText'
import { parseLayoutText } from '../domain/layout/document/parseLayout'
import { download, layoutFileName, openLayoutFile } from './files'
import { pageKeeping } from './keeping/pageKeeping'
import { isSameValue } from './sameValue'
import type { AppStore } from './store'

/** A file on the disk as browsers with a file dialog hand it out. Source: WICG, File System Access (from memory). */
export interface FileHandle {
  readonly name: string
  readonly getFile: () => Promise<File>
  readonly createWritable: () => Promise<{
    readonly write: (text: string) => Promise<void>
    readonly close: () => Promise<void>
  }>
  readonly queryPermission?: (options: { readonly mode: 'readwrite' }) => Promise<PermissionState>
  readonly requestPermission?: (options: { readonly mode: 'readwrite' }) => Promise<PermissionState>
}

/** The file that a document goes back to, and when it was last changed as far as this page knows. */
interface LinkedFile {
  readonly handle: FileHandle
  readonly changedAtMs: number
}

interface FileWindow {
  readonly showOpenFilePicker?: (options: object) => Promise<readonly FileHandle[]>
  readonly showSaveFilePicker?: (options: object) => Promise<FileHandle>
}
const fileWindow = (): FileWindow => window as unknown as FileWindow

const TYPES = [{ description: 'Tabwright layout', accept: { 'application/json': ['.json'] } }]

/** Whether this browser has a file dialog of its own, so that a layout can go back to the file it came from. */
export const hasFileDialog = (): boolean =>
  fileWindow().showOpenFilePicker !== undefined && fileWindow().showSaveFilePicker !== undefined

const isCalledOff = (problem: unknown): boolean =>
  problem instanceof DOMException && problem.name === 'AbortError'

const isLinkedFile = (value: unknown): value is LinkedFile =>
  typeof value === 'object' &&
  value !== null &&
  'handle' in value &&
  typeof value.handle === 'object' &&
  value.handle !== null &&
  'getFile' in value.handle &&
  'changedAtMs' in value

/** Known for as long as the page lives, whatever the browser keeps. */
const known = new Map<string, LinkedFile>()

const linkOf = async (documentId: string): Promise<LinkedFile | null> => {
  const link = known.get(documentId) ?? (await pageKeeping.fileLink(documentId))
  return isLinkedFile(link) ? link : null
}

/** The name of the file that a document was opened from or saved to last; null: none that is known. */
export const linkedFileName = async (documentId: string): Promise<string | null> =>
  (await linkOf(documentId))?.handle.name ?? null

const openId = (store: AppStore): string => store.state.getState().documentId

const keepLink = async (documentId: string, handle: FileHandle): Promise<void> => {
  const link = { handle, changedAtMs: (await handle.getFile()).lastModified }
  known.set(documentId, link)
  await pageKeeping.keepFileLink(documentId, link)
}

/** Opens a file that can be written back to: from the dialog, dropped on the page, or handed over at the start of the app. */
export const openHandle = async (store: AppStore, handle: FileHandle): Promise<boolean> => {
  try {
    const file = await handle.getFile()
    if (!(await openLayoutFile(store, file))) return false
    // A file of another kind is open somewhere else; only a layout goes back to where it came from.
    const parsed = parseLayoutText(await file.text())
    if (parsed.ok && isSameValue(parsed.value, store.state.getState().history.present))
      await keepLink(openId(store), handle)
    return true
  } catch {
    store.actions.notify('problem', `${handle.name} could not be read from the disk. Nothing was changed.`)
    return false
  }
}

/** Asks for a file with the browser's own dialog and opens it; false when it was called off or cannot be opened. */
export const openFromDialog = async (store: AppStore): Promise<boolean> => {
  try {
    const [handle] = (await fileWindow().showOpenFilePicker?.({ types: TYPES })) ?? []
    return handle !== undefined && (await openHandle(store, handle))
  } catch (problem) {
    if (!isCalledOff(problem)) store.actions.notify('problem', 'The browser did not show its file dialog.')
    return false
  }
}

/** What was open when somebody asked to save it; another document may be open by the time the dialogs are through. */
interface Saved {
  readonly documentId: string
  readonly layout: Layout
}

const openNow = (store: AppStore): Saved => {
  const { documentId, history } = store.state.getState()
  return { documentId, layout: history.present }
}

const written = async (store: AppStore, saved: Saved, handle: FileHandle): Promise<void> => {
  const writable = await handle.createWritable()
  await writable.write(layoutText(saved.layout))
  await writable.close()
  await keepLink(saved.documentId, handle)
  store.actions.notify('info', `Saved to ${handle.name}.`)
}

const mayWrite = async ({ queryPermission, requestPermission }: FileHandle, handle: FileHandle) => {
  const mode = { mode: 'readwrite' } as const
  if ((await queryPermission?.call(handle, mode)) === 'granted') return true
  return ((await requestPermission?.call(handle, mode)) ?? 'granted') === 'granted'
}

/** Saves to a file that is picked now, a download where the browser has no dialog; false when it was called off. */
export const saveAs = async (store: AppStore): Promise<boolean> => {
  const saved = openNow(store)
  const name = layoutFileName(saved.layout)
  const { showSaveFilePicker } = fileWindow()
  try {
    if (showSaveFilePicker === undefined) throw new Error('no dialog')
    const handle = await showSaveFilePicker.call(window, { suggestedName: name, types: TYPES })
    await written(store, saved, handle)
  } catch (problem) {
    if (isCalledOff(problem)) return false
    download(layoutText(saved.layout), name)
    store.actions.notify('info', 'The layout file is saved. Everything in it can be opened again from here.')
  }
  return true
}

/**
 * Saves to the file that the document came from or was saved to last, once the builder allows it; asks for one where there is none.
 * A file that something else has changed since is not written over.
 */
export const save = async (store: AppStore): Promise<boolean> => {
  const saved = openNow(store)
  const link = await linkOf(saved.documentId)
  if (link === null) return await saveAs(store)
  const { handle, changedAtMs } = link
  try {
    if (!(await mayWrite(handle, handle))) {
      store.actions.notify('problem', `Writing to ${handle.name} was not allowed. Nothing was saved.`)
      return false
    }
    if ((await handle.getFile()).lastModified !== changedAtMs) {
      store.actions.notify(
        'problem',
        `${handle.name} has been changed by something else since it was opened or saved here, so it was not written over. ` +
          'Use “Save as…” to save beside it, or to write over it knowingly.',
      )
      return false
    }
    await written(store, saved, handle)
    return true
  } catch {
    store.actions.notify(
      'problem',
      `${handle.name} could not be written; it may have been moved or removed. Use “Save as…”.`,
    )
    return false
  }
}

/** Newer browsers hand out what is dropped so that it can be written back to. */
interface DroppedItem {
  readonly getAsFileSystemHandle?: () => Promise<(FileHandle & { readonly kind: string }) | null>
}

/** Opens the first file that was dropped; must be called while the drop is handled, after which the browser takes it back. */
export const openDropped = async (store: AppStore, dropped: DataTransfer): Promise<boolean> => {
  const file = dropped.files[0]
  const item = [...dropped.items].find(({ kind }) => kind === 'file') as DroppedItem | undefined
  const handle = await item?.getAsFileSystemHandle?.().catch(() => null)
  if (handle?.kind === 'file') return await openHandle(store, handle)
  return file !== undefined && (await openLayoutFile(store, file))
}

interface LaunchWindow {
  readonly launchQueue?: {
    readonly setConsumer: (take: (launch: { readonly files?: readonly FileHandle[] }) => void) => void
  }
}

/** Opens the file that the installed app was started with, where the browser hands it over. */
export const takeLaunchedFiles = (store: AppStore): void => {
  ;(window as unknown as LaunchWindow).launchQueue?.setConsumer(({ files = [] }) => {
    const [first] = files
    if (first !== undefined) void openHandle(store, first)
  })
}
