import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { emptyLayout } from '../../src/domain/layout/document/empty'
import type { Layout } from '../../src/domain/layout/document/layout'
import { layoutText } from '../../src/domain/layout/document/layoutText'
import {
  type FileHandle,
  hasFileDialog,
  linkedFileName,
  openDropped,
  openFromDialog,
  openHandle,
  save,
  saveAs,
} from '../../src/state/linkedFile'
import { type AppStore, createAppStore } from '../../src/state/store'

const named = (name: string): Layout => ({ ...emptyLayout(), job: { ...emptyLayout().job, name } })

/** A file on a disk, as browsers with a file dialog hand it out. */
const diskFile = (name: string, text: string, permission: PermissionState = 'granted') => {
  const disk = { text, changedAtMs: 1 }
  const handle: FileHandle = {
    name,
    getFile: () => Promise.resolve(new File([disk.text], name, { lastModified: disk.changedAtMs })),
    createWritable: () => {
      let written = ''
      return Promise.resolve({
        write: (more: string) => {
          written += more
          return Promise.resolve()
        },
        // As in the browser: nothing is changed on the disk before it is closed.
        close: () => {
          disk.text = written
          disk.changedAtMs += 1
          return Promise.resolve()
        },
      })
    },
    queryPermission: () => Promise.resolve('prompt'),
    requestPermission: () => Promise.resolve(permission),
  }
  return { disk, handle }
}

const jobName = (store: AppStore): string => store.state.getState().layout.job.name
const said = (store: AppStore): string => store.state.getState().notice?.text ?? ''
const documentId = (store: AppStore): string => store.state.getState().documentId
const rename = (store: AppStore, name: string): void =>
  store.actions.edit(name, (layout) => ({ ...layout, job: { ...layout.job, name } }))

const dialogs = (handles: { readonly open?: FileHandle; readonly save?: FileHandle }): void => {
  const asked = (handle: FileHandle | undefined) =>
    handle === undefined ? Promise.reject(new DOMException('no', 'AbortError')) : Promise.resolve(handle)
  vi.stubGlobal('window', {
    showOpenFilePicker: () => asked(handles.open).then((handle) => [handle]),
    showSaveFilePicker: () => asked(handles.save),
  })
}

beforeEach(() => dialogs({}))
afterEach(() => vi.unstubAllGlobals())

describe('save', () => {
  it('writes a layout back into the file it was opened from', async () => {
    const { disk, handle } = diskFile('dune.layout.json', layoutText(named('Dune car')))
    dialogs({ open: handle })
    const store = createAppStore(named('mine'))
    expect(await openFromDialog(store)).toBe(true)
    expect(jobName(store)).toBe('Dune car')
    expect(await linkedFileName(documentId(store))).toBe('dune.layout.json')
    rename(store, 'Dune car, lower')
    expect(await save(store)).toBe(true)
    expect(JSON.parse(disk.text)).toEqual(named('Dune car, lower'))
    rename(store, 'Dune car, lower still')
    expect(await save(store)).toBe(true)
    expect(JSON.parse(disk.text)).toEqual(named('Dune car, lower still'))
  })

  it('does not write over what something else has written there since', async () => {
    const { disk, handle } = diskFile('dune.layout.json', layoutText(named('Dune car')))
    const store = createAppStore(named('mine'))
    await openHandle(store, handle)
    Object.assign(disk, { text: 'from somebody else', changedAtMs: 77 })
    rename(store, 'Mine')
    expect(await save(store)).toBe(false)
    expect(disk.text).toBe('from somebody else')
    expect(said(store)).toContain('changed by something else')
  })

  it('writes nothing when the builder does not allow it', async () => {
    const { disk, handle } = diskFile('dune.layout.json', layoutText(named('Dune car')), 'denied')
    const store = createAppStore(named('mine'))
    await openHandle(store, handle)
    rename(store, 'Other')
    expect(await save(store)).toBe(false)
    expect(JSON.parse(disk.text)).toEqual(named('Dune car'))
    expect(said(store)).toContain('not allowed')
  })

  it('says so when the file is gone', async () => {
    const { handle } = diskFile('dune.layout.json', layoutText(named('Dune car')))
    const store = createAppStore(named('mine'))
    let isGone = false
    await openHandle(store, {
      ...handle,
      getFile: () => (isGone ? Promise.reject(new DOMException('gone', 'NotFoundError')) : handle.getFile()),
    })
    isGone = true
    expect(await save(store)).toBe(false)
    expect(said(store)).toContain('moved or removed')
  })

  it('asks for a file where the document has none, and goes back to that one from then on', async () => {
    const { disk, handle } = diskFile('new.layout.json', '')
    dialogs({ save: handle })
    const store = createAppStore(named('New car'))
    expect(await save(store)).toBe(true)
    expect(JSON.parse(disk.text)).toEqual(named('New car'))
    dialogs({})
    rename(store, 'New car, lower')
    expect(await save(store)).toBe(true)
    expect(JSON.parse(disk.text)).toEqual(named('New car, lower'))
  })

  it('does nothing when the dialog is called off', async () => {
    const store = createAppStore(named('mine'))
    expect(await save(store)).toBe(false)
    expect(await saveAs(store)).toBe(false)
    expect(await openFromDialog(store)).toBe(false)
    expect(said(store)).toBe('')
  })

  it('saves what was open when it was asked for, whatever is opened while the browser asks back', async () => {
    const { disk, handle } = diskFile('dune.layout.json', layoutText(named('Dune car')))
    const store = createAppStore(named('mine'))
    await openHandle(store, {
      ...handle,
      requestPermission: () => {
        store.actions.openLayout(named('Another'), 'Open another')
        return Promise.resolve('granted')
      },
    })
    rename(store, 'Dune car, lower')
    expect(await save(store)).toBe(true)
    expect(JSON.parse(disk.text)).toEqual(named('Dune car, lower'))
    expect(jobName(store)).toBe('Another')
    expect(await linkedFileName(documentId(store))).toBeNull()
  })

  it('leaves the file of another document alone', async () => {
    const { disk, handle } = diskFile('dune.layout.json', layoutText(named('Dune car')))
    const store = createAppStore(named('mine'))
    await openHandle(store, handle)
    store.actions.openLayout(named('Another'), 'Open another')
    expect(await linkedFileName(documentId(store))).toBeNull()
    expect(await save(store)).toBe(false)
    expect(JSON.parse(disk.text)).toEqual(named('Dune car'))
  })
})

describe('openHandle', () => {
  it('changes nothing for a file that is no layout, and forgets it', async () => {
    const { handle } = diskFile('list.json', '["bolts"]')
    const store = createAppStore(named('mine'))
    expect(await openHandle(store, handle)).toBe(false)
    expect(jobName(store)).toBe('mine')
    expect(await linkedFileName(documentId(store))).toBeNull()
  })
})

describe('openDropped', () => {
  const dropped = (file: File, handle: unknown): DataTransfer =>
    ({
      files: [file],
      items: [
        {
          kind: 'file',
          ...(handle === undefined ? {} : { getAsFileSystemHandle: () => Promise.resolve(handle) }),
        },
      ],
    }) as unknown as DataTransfer

  it('opens a dropped file so that it can be saved back, or just opens it where the browser cannot do that', async () => {
    const { handle } = diskFile('dune.layout.json', layoutText(named('Dune car')))
    const store = createAppStore(named('mine'))
    expect(await openDropped(store, dropped(await handle.getFile(), { ...handle, kind: 'file' }))).toBe(true)
    expect(await linkedFileName(documentId(store))).toBe('dune.layout.json')
    const plain = createAppStore(named('mine'))
    expect(await openDropped(plain, dropped(await handle.getFile(), undefined))).toBe(true)
    expect(jobName(plain)).toBe('Dune car')
    expect(await linkedFileName(documentId(plain))).toBeNull()
  })
})

describe('hasFileDialog', () => {
  it('is so only where files can be opened and saved', () => {
    expect(hasFileDialog()).toBe(true)
    vi.stubGlobal('window', {})
    expect(hasFileDialog()).toBe(false)
  })
})
