import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../../src/domain/layout/document/empty'
import type { SlotStorage } from '../../../src/state/keeping/slot'
import { browser, kept, named, names, page, settled } from './fakeBrowser'

const called = (name: string) => named(name)(emptyLayout())

describe('several documents in one tab', () => {
  it('are each kept in a place of their own: opening another writes over nothing', async () => {
    const within = browser()
    const tab = await page(within)
    await tab.rename('First')
    tab.store.actions.openLayout(called('Second'), 'Open second')
    await settled()
    expect(names(within)).toEqual(['First', 'Second'])
    await tab.rename('Second, lower')
    expect(names(within)).toEqual(['First', 'Second, lower'])
    expect((await tab.reload()).name()).toBe('Second, lower')
  })

  it('keep the last step of the one that is left, even one made in the same moment', async () => {
    const within = browser()
    const tab = await page(within)
    tab.store.actions.beginGesture('Move')
    tab.store.actions.dragTo(named('moved'))
    tab.store.actions.openLayout(called('Second'), 'Open second')
    tab.store.actions.edit('Name', named('Second, lower'))
    await settled()
    expect(names(within)).toEqual(['moved', 'Second, lower'])
  })

  it('are opened from the list to go on where they were left, with nothing to undo', async () => {
    const within = browser()
    const tab = await page(within)
    await tab.rename('First')
    const first = tab.store.state.getState().documentId
    tab.store.actions.openLayout(called('Second'), 'Open second')
    await settled()
    expect(await tab.keeping.open(tab.store, first)).toBe(true)
    await settled()
    expect(tab.name()).toBe('First')
    expect(tab.store.state.getState().documentId).toBe(first)
    expect(tab.store.state.getState().history.past).toHaveLength(0)
    await tab.rename('First, higher')
    expect(names(within)).toEqual(['First, higher', 'Second'])
    expect(tab.said()).not.toContain('Another tab')
  })

  it('may be taken by another tab once they are left', async () => {
    const within = browser()
    const a = await page(within)
    await a.rename('First')
    const first = a.store.state.getState().documentId
    a.store.actions.openLayout(called('Second'), 'Open second')
    await settled()
    const b = await page(within)
    expect(await b.keeping.open(b.store, first)).toBe(true)
    await b.rename('First in b')
    expect(b.store.state.getState().documentId).toBe(first)
    expect(names(within)).toEqual(['First in b', 'Second'])
  })

  it('open as a copy, which is said, where another tab has them; nothing there is written over', async () => {
    const within = browser()
    const a = await page(within)
    await a.rename('First')
    const first = a.store.state.getState().documentId
    const b = await page(within)
    await b.rename('Other')
    expect(await b.keeping.open(b.store, first)).toBe(true)
    expect(b.said()).toContain('open in another tab')
    await b.rename('Copy')
    await a.rename('First, higher')
    expect(names(within).toSorted()).toEqual(['Copy', 'First, higher', 'Other'])
    expect(b.store.state.getState().documentId).not.toBe(first)
  })

  it('go on in their own places where the browser cannot tell which tab has what, kept apart by stamps', async () => {
    const within = browser({ hasLocks: false, slots: [kept('old', 'Old', 5)] })
    const a = await page(within)
    const b = await page(within)
    await a.keeping.open(a.store, 'old')
    await b.keeping.open(b.store, 'old')
    await a.rename('Old by a')
    await b.rename('Old by b')
    expect(names(within).toSorted()).toEqual(['Old by a', 'Old by b'])
    expect(b.said()).toContain('Another tab has changed')
  })

  it('say so and change nothing when one cannot be opened', async () => {
    const within = browser({
      slots: [kept('new', 'New', 9), { ...kept('bad', 'Bad', 1), text: '{"version": 1' }],
    })
    const tab = await page(within)
    expect(await tab.keeping.open(tab.store, 'bad')).toBe(false)
    expect(tab.said()).toContain('Bad cannot be opened. Nothing was changed.')
    expect(await tab.keeping.open(tab.store, 'gone')).toBe(false)
    expect(tab.said()).toContain('no longer there')
    expect(tab.name()).toBe('New')
  })
})

describe('a browser that keeps nothing', () => {
  const refusing = (storage: SlotStorage) => {
    const state = { isFull: true }
    const write: SlotStorage['write'] = (slot, over) =>
      state.isFull ? Promise.reject(new Error('full')) : storage.write(slot, over)
    return { state, storage: { ...storage, write } }
  }

  it('has every document in hand while the page lives', async () => {
    const within = browser()
    const tab = await page(within, within.openTab(), refusing(within.storage).storage)
    await tab.rename('First')
    const first = tab.store.state.getState().documentId
    tab.store.actions.openLayout(called('Second'), 'Open second')
    await settled()
    const list = await tab.keeping.list()
    expect(list?.map(({ jobName, isOnlyInPage }) => [jobName, isOnlyInPage])).toEqual([
      ['Second', true],
      ['First', true],
    ])
    expect(await tab.keeping.settled()).toBe(false)
    expect(tab.keeping.hasUnkept()).toBe(true)
    await tab.keeping.open(tab.store, first)
    expect(tab.name()).toBe('First')
    expect(names(within)).toEqual([])
  })

  it('keeps all of them as soon as it can, each in its own place', async () => {
    const within = browser()
    const { state, storage } = refusing(within.storage)
    const tab = await page(within, within.openTab(), storage)
    await tab.rename('First')
    const first = tab.store.state.getState().documentId
    tab.store.actions.openLayout(called('Second'), 'Open second')
    await settled()
    await tab.keeping.moveToFolder([first], 'Dune club')
    state.isFull = false
    await tab.rename('Second, lower')
    expect(within.filings.get(first)?.folder).toBe('Dune club')
    expect(names(within).toSorted()).toEqual(['First', 'Second, lower'])
    await tab.keeping.open(tab.store, first)
    await tab.rename('First, higher')
    expect(names(within).toSorted()).toEqual(['First, higher', 'Second, lower'])
    expect((await tab.keeping.list())?.some(({ isOnlyInPage }) => isOnlyInPage)).toBe(false)
    expect(await tab.keeping.settled()).toBe(true)
    expect(tab.keeping.hasUnkept()).toBe(false)
  })

  it('does nothing later of what it said it could not do', async () => {
    const within = browser({ slots: [kept('a', 'A', 3), kept('b', 'B', 2)] })
    const { state, storage } = refusing(within.storage)
    const tab = await page(within, within.openTab(), storage)
    expect(await tab.keeping.rename('b', 'Bee')).toBe(false)
    expect(await tab.keeping.duplicate('b')).toBeNull()
    expect(await tab.keeping.settled()).toBe(true)
    state.isFull = false
    await tab.rename('A, lower')
    expect(names(within).toSorted()).toEqual(['A, lower', 'B'])
  })

  it('forgets no folder of what it has in hand', async () => {
    const within = browser({ slots: [kept('a', 'A', 3)] })
    const { state, storage } = refusing(within.storage)
    const tab = await page(within, within.openTab(), storage)
    await tab.keeping.moveToFolder(['a'], 'Dune club')
    await tab.rename('A, lower')
    tab.store.actions.openLayout(called('Second'), 'Open second')
    await settled()
    await tab.keeping.putIntoBin(['a'])
    await tab.keeping.putBack(['a'])
    state.isFull = false
    await tab.rename('Second, lower')
    expect(within.filings.get('a')).toEqual({ folder: 'Dune club', removedAtMs: null })
  })

  it('writes over what lies there once it can, when the one in hand was opened again meanwhile', async () => {
    const within = browser()
    const { state, storage } = refusing(within.storage)
    state.isFull = false
    const tab = await page(within, within.openTab(), storage)
    await tab.rename('1')
    const first = tab.store.state.getState().documentId
    state.isFull = true
    await tab.rename('2')
    tab.store.actions.openLayout(called('Second'), 'Open second')
    await settled()
    await tab.keeping.open(tab.store, first)
    state.isFull = false
    await tab.rename('3')
    expect(names(within).toSorted()).toEqual(['3', 'Second'])
  })
})
