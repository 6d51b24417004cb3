import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../../src/domain/layout/document/empty'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { layoutText } from '../../../src/domain/layout/document/layoutText'
import { exampleLayout } from '../../support/exampleLayouts'
import { browser, kept, named, names, page, settled, slot } from './fakeBrowser'

const three = () => browser({ slots: [kept('a', 'A', 3), kept('b', 'B', 2), kept('c', 'C', 1)] })

describe('duplicate', () => {
  it('makes a copy beside the one it is of, in the same folder, and opens nothing', async () => {
    const within = three()
    const tab = await page(within)
    await tab.keeping.moveToFolder(['b'], 'Dune club')
    const copy = await tab.keeping.duplicate('b')
    const list = await tab.keeping.list()
    expect(list?.find(({ id }) => id === copy)).toMatchObject({ jobName: 'B, copy', folder: 'Dune club' })
    expect(list).toHaveLength(4)
    expect(tab.name()).toBe('A')
  })

  it('copies the open document as it is now', async () => {
    const within = browser()
    const tab = await page(within)
    tab.store.actions.edit('Name', named('Just now'))
    await tab.keeping.duplicate(tab.store.state.getState().documentId)
    expect(names(within)).toEqual(['Just now', 'Just now, copy'])
  })

  it('gives belts ids of their own, so that calendars keep the days of both', async () => {
    const withBelts = exampleLayout('trail-car-two-seat.layout.json')
    const within = browser({ slots: [slot('a', layoutText(withBelts))] })
    const tab = await page(within)
    const copy = await tab.keeping.duplicate('a')
    const copied = JSON.parse(String(within.kept.get(copy ?? '')?.text)) as Layout
    const ids = (layout: Layout): readonly string[] => (layout.belts ?? []).map(({ id }) => id)
    expect(ids(withBelts).length).toBeGreaterThan(0)
    expect(new Set([...ids(withBelts), ...ids(copied)]).size).toBe(2 * ids(withBelts).length)
    expect({ ...copied, job: withBelts.job, belts: withBelts.belts }).toEqual(withBelts)
  })

  it('copies nothing that is no layout', async () => {
    const within = browser({ slots: [kept('a', 'A', 3), slot('bad', '{"version":', 1)] })
    const tab = await page(within)
    expect(await tab.keeping.duplicate('bad')).toBeNull()
    expect(await tab.keeping.duplicate('gone')).toBeNull()
    expect(within.kept.size).toBe(2)
  })
})

describe('rename', () => {
  it('calls a layout that is not open otherwise, and the open one as a step to undo', async () => {
    const within = three()
    const tab = await page(within)
    expect(await tab.keeping.rename('b', 'Bee')).toBe(true)
    expect(await tab.keeping.rename('a', 'Ay')).toBe(true)
    await settled()
    expect(names(within).toSorted()).toEqual(['Ay', 'Bee', 'C'])
    expect(tab.store.state.getState().history.past).toHaveLength(1)
  })

  it('leaves alone what another tab is working on', async () => {
    const within = three()
    const a = await page(within)
    const b = await page(within)
    await b.keeping.open(b.store, 'b')
    expect(await a.keeping.rename('b', 'Bee')).toBe(false)
    expect(names(within).toSorted()).toEqual(['A', 'B', 'C'])
    await b.keeping.open(b.store, 'c')
    await settled()
    expect(await a.keeping.rename('b', 'Bee')).toBe(true)
    expect(await b.keeping.open(b.store, 'b')).toBe(true)
    expect(b.name()).toBe('Bee')
  })
})

describe('the bin', () => {
  it('takes layouts and gives them back, folder and all', async () => {
    const within = three()
    const tab = await page(within)
    await tab.keeping.moveToFolder(['b', 'c'], 'Dune club')
    expect(await tab.keeping.putIntoBin(['b', 'c'])).toEqual(['b', 'c'])
    const inBin = async () =>
      (await tab.keeping.list())?.filter(({ removedAtMs }) => removedAtMs !== null).map(({ id }) => id)
    expect(await inBin()).toEqual(['b', 'c'])
    expect(await tab.keeping.putBack(['b'])).toBe(true)
    expect(await inBin()).toEqual(['c'])
    expect((await tab.keeping.list())?.find(({ id }) => id === 'b')?.folder).toBe('Dune club')
    expect(names(within).toSorted()).toEqual(['A', 'B', 'C'])
  })

  it('is not opened by a new tab, however new what lies in it', async () => {
    const within = three()
    const tab = await page(within)
    await tab.keeping.putIntoBin(['a', 'b'])
    tab.close()
    expect((await page(within)).name()).toBe('C')
  })

  it('takes the open document too: an empty one is open then', async () => {
    const within = three()
    const tab = await page(within)
    await tab.rename('A, lower')
    expect(await tab.keeping.putIntoBin(['a'])).toEqual(['a'])
    expect(tab.store.state.getState().layout).toEqual(emptyLayout())
    await tab.rename('New')
    expect(names(within).toSorted()).toEqual(['A, lower', 'B', 'C', 'New'])
    expect(await tab.keeping.removeForGood(['a', 'b', tab.store.state.getState().documentId])).toEqual(['a'])
    expect(names(within).toSorted()).toEqual(['B', 'C', 'New'])
  })

  it('takes nothing that another tab is working on, and keeps what is opened from it', async () => {
    const within = three()
    const a = await page(within)
    const b = await page(within)
    await b.keeping.open(b.store, 'b')
    expect(await a.keeping.putIntoBin(['b', 'c'])).toEqual(['c'])
    await b.keeping.open(b.store, 'c')
    await settled()
    expect(await a.keeping.removeForGood(['c'])).toEqual([])
    expect(within.kept.has('c')).toBe(true)
  })
})

describe('a new layout', () => {
  it('in which nobody did anything takes no place', async () => {
    const within = three()
    const tab = await page(within)
    tab.store.actions.openLayout(emptyLayout(), 'Start a new layout')
    await settled()
    expect(within.kept.size).toBe(3)
    await tab.rename('First word')
    expect(within.kept.size).toBe(4)
    expect((await tab.reload()).name()).toBe('First word')
  })
})
