import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../src/domain/layout/document/empty'
import type { Layout } from '../../src/domain/layout/document/layout'
import { layoutText } from '../../src/domain/layout/document/layoutText'
import { restored, startAutosave, type LayoutStorage } from '../../src/state/autosave'
import { createAppStore } from '../../src/state/store'

const named =
  (name: string) =>
  (layout: Layout): Layout => ({ ...layout, job: { ...layout.job, name } })
const namesIn = (texts: readonly string[]): readonly string[] =>
  texts.map((text) => (JSON.parse(text) as Layout).job.name)

/** Every write waits until the test lets it finish. */
const slowStorage = () => {
  const written: string[] = []
  let finish: (() => void)[] = []
  const storage: LayoutStorage = {
    read: () => Promise.resolve(undefined),
    write: (text) => {
      written.push(text)
      return new Promise((resolve) => finish.push(resolve))
    },
    setAside: () => Promise.resolve(),
    readSetAside: () => Promise.resolve(undefined),
  }
  const finishWrites = async (): Promise<void> => {
    const waiting = finish
    finish = []
    for (const done of waiting) done()
    await new Promise((resolve) => setTimeout(resolve, 0))
  }
  return { storage, written, finishWrites }
}

const storageHolding = (kept: unknown) => {
  const setAside: unknown[] = []
  const storage: LayoutStorage = {
    read: () => Promise.resolve(kept),
    write: () => Promise.resolve(),
    setAside: (value) => {
      setAside.push(value)
      return Promise.resolve()
    },
    readSetAside: () => Promise.resolve(setAside.at(-1)),
  }
  return { storage, setAside }
}

describe('startAutosave', () => {
  it('writes one at a time and skips what was overtaken: the last change is the last write', async () => {
    const { storage, written, finishWrites } = slowStorage()
    const store = createAppStore(emptyLayout())
    startAutosave(store, storage)
    for (const name of ['1', '2', '3', '4']) store.actions.edit(name, named(name))
    expect(namesIn(written)).toEqual(['1'])
    await finishWrites()
    expect(namesIn(written)).toEqual(['1', '4'])
    await finishWrites()
    expect(namesIn(written)).toEqual(['1', '4'])
  })

  it('writes a drag once, when it ends, and not while it runs or when it is called off', async () => {
    const { storage, written, finishWrites } = slowStorage()
    const store = createAppStore(emptyLayout())
    startAutosave(store, storage)
    store.actions.beginGesture('Move')
    store.actions.dragTo(named('half way'))
    store.actions.cancelGesture()
    expect(written).toHaveLength(0)
    store.actions.beginGesture('Move')
    store.actions.dragTo(named('half way'))
    store.actions.dragTo(named('there'))
    store.actions.endGesture()
    expect(namesIn(written)).toEqual(['there'])
    await finishWrites()
    store.actions.undo()
    expect(namesIn(written)).toEqual(['there', ''])
  })

  it('says once that the browser cannot keep the work, and goes on trying', async () => {
    let attempts = 0
    const store = createAppStore(emptyLayout())
    startAutosave(store, {
      read: () => Promise.resolve(undefined),
      write: () => {
        attempts += 1
        return Promise.reject(new Error('quota'))
      },
      setAside: () => Promise.resolve(),
      readSetAside: () => Promise.resolve(undefined),
    })
    store.actions.edit('1', named('1'))
    await new Promise((resolve) => setTimeout(resolve, 0))
    expect(store.state.getState().notice?.kind).toBe('problem')
    store.actions.dismissNotice()
    store.actions.edit('2', named('2'))
    await new Promise((resolve) => setTimeout(resolve, 0))
    expect(attempts).toBe(2)
    expect(store.state.getState().notice).toBeNull()
  })
})

describe('restored', () => {
  it('gives back exactly the layout that was kept', async () => {
    const kept = named('Dune car')(emptyLayout())
    const { storage } = storageHolding(layoutText(kept))
    expect(await restored(storage)).toEqual({ layout: kept, notice: null, setAside: null })
  })

  it('starts empty and says nothing at the first visit', async () => {
    expect(await restored(storageHolding(undefined).storage)).toEqual({
      layout: emptyLayout(),
      notice: null,
      setAside: null,
    })
  })

  it('keeps offering at later visits what was once set aside', async () => {
    const { storage } = storageHolding(layoutText(emptyLayout()))
    await storage.setAside('{"version": 1,')
    expect((await restored(storage)).setAside).toBe('{"version": 1,')
  })

  it.each([
    ['text that is no JSON', '{"version": 1,'],
    ['a foreign file', '{"widgets": []}'],
    [
      'a layout with a wrong value',
      layoutText(emptyLayout()).replace('"statureMm": 1755', '"statureMm": 17'),
    ],
    ['something that is not text', { version: 1 }],
  ])('sets %s aside untouched, starts empty and says so', async (_, kept) => {
    const { storage, setAside } = storageHolding(kept)
    const { layout, notice, setAside: offered } = await restored(storage)
    expect(setAside).toEqual([kept])
    expect(offered).toBe(typeof kept === 'string' ? kept : '{"version":1}')
    expect(layout).toEqual(emptyLayout())
    expect(notice?.kind).toBe('problem')
  })

  it('starts empty with a warning where the browser forbids storage', async () => {
    const { notice } = await restored({
      read: () => Promise.reject(new Error('denied')),
      write: () => Promise.resolve(),
      setAside: () => Promise.resolve(),
      readSetAside: () => Promise.resolve(undefined),
    })
    expect(notice?.kind).toBe('problem')
  })
})
