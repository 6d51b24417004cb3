import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../../src/domain/layout/document/empty'
import { layoutText } from '../../../src/domain/layout/document/layoutText'
import type { SlotStorage } from '../../../src/state/keeping/slot'
import { browser, type Browser, kept, named, nameIn, names, page, settled, slot } from './fakeBrowser'

describe('one tab', () => {
  it('starts empty and says nothing at the first visit, and keeps nothing until something is done', async () => {
    const within = browser()
    const first = await page(within)
    expect(first.layout).toEqual(emptyLayout())
    expect(first.notice).toBeNull()
    expect(within.kept.size).toBe(0)
  })

  it('finds its work again after a reload and at the next visit, always in the same slot', async () => {
    const within = browser()
    const first = await page(within)
    await first.rename('Dune car')
    const again = await first.reload()
    expect(again.name()).toBe('Dune car')
    await again.rename('Dune car 2')
    again.close()
    const next = await page(within)
    expect(next.name()).toBe('Dune car 2')
    expect(next.said()).toBe('')
    await next.rename('Dune car 3')
    expect(names(within)).toEqual(['Dune car 3'])
  })

  it('goes on with what a browser kept when it kept only one', async () => {
    const within = browser({ slots: [{ ...kept('layout', 'From before', 0), stamp: '' }] })
    const tab = await page(within)
    expect(tab.name()).toBe('From before')
    await tab.rename('Still here')
    expect(names(within)).toEqual(['Still here'])
  })
})

describe('two tabs', () => {
  it('never write over each other: each keeps its own, and the second is told', async () => {
    const within = browser()
    const a = await page(within)
    await a.rename('A 1')
    const b = await page(within)
    expect(b.name()).toBe('A 1')
    expect(b.said()).toContain('open in another tab too')
    await b.rename('B 1')
    await a.rename('A 2')
    await b.rename('B 2')
    expect(names(within).toSorted()).toEqual(['A 2', 'B 2'])
    expect((await a.reload()).name()).toBe('A 2')
    expect((await b.reload()).name()).toBe('B 2')
  })

  it('list each other, newest first, with time and job name; what is open elsewhere cannot be removed', async () => {
    const within = browser({ slots: [kept('old', 'Old', 5), kept('older', 'Older', 4)] })
    const a = await page(within)
    await a.rename('A')
    const b = await page(within)
    await b.rename('B')
    const list = (await b.keeping.list())?.filter(({ isOpenHere }) => !isOpenHere)
    expect(
      list?.map(({ jobName, savedAtMs, isOpenElsewhere }) => ({ jobName, savedAtMs, isOpenElsewhere })),
    ).toEqual([
      { jobName: 'A', savedAtMs: 1001, isOpenElsewhere: true },
      { jobName: 'Older', savedAtMs: 4, isOpenElsewhere: false },
    ])
    expect(await b.keeping.putIntoBin(['older', list?.[0]?.id ?? ''])).toEqual(['older'])
    expect(await b.keeping.removeForGood(['older', list?.[0]?.id ?? ''])).toEqual(['older'])
    expect(names(within).toSorted()).toEqual(['A', 'B'])
  })

  it('open the newest at the next visit and tell once of the other', async () => {
    const within = browser()
    const a = await page(within)
    await a.rename('A')
    const b = await page(within)
    await b.rename('B')
    await a.rename('A again')
    a.close()
    b.close()
    const next = await page(within)
    expect(next.name()).toBe('A again')
    expect(next.said()).toContain('under Layouts')
    next.close()
    const later = await page(within)
    expect(later.name()).toBe('A again')
    expect(later.said()).toBe('')
    expect((await later.keeping.list())?.map(({ jobName }) => jobName)).toEqual(['A again', 'B'])
  })

  it('are kept apart by stamps where the browser copied a tab and cannot tell which is open', async () => {
    const within = browser({ hasLocks: false })
    const a = await page(within)
    await a.rename('A 1')
    const reloaded = await a.reload()
    // A copied tab remembers the same slot and takes it for its own.
    const copy = await page(within, within.openTab({ slotId: [...within.kept.keys()][0] ?? null }))
    await copy.rename('B 1')
    await reloaded.rename('A 2')
    expect(names(within).toSorted()).toEqual(['A 2', 'B 1'])
    expect(reloaded.said()).toContain('Another tab has changed')
    await copy.rename('B 2')
    await reloaded.rename('A 3')
    expect(names(within).toSorted()).toEqual(['A 3', 'B 2'])
  })

  it('use a new slot without a word where the browser cannot tell whether another tab is open', async () => {
    const within = browser({ hasLocks: false })
    const a = await page(within)
    await a.rename('A')
    const b = await page(within)
    expect(b.said()).toBe('')
    await b.rename('B')
    expect(names(within).toSorted()).toEqual(['A', 'B'])
    expect((await b.reload()).name()).toBe('B')
  })

  it('lose nothing when one removes what the other is keeping', async () => {
    const within = browser({ hasLocks: false })
    const a = await page(within)
    await a.rename('A 1')
    const b = await page(within)
    const [first] = (await b.keeping.list()) ?? []
    const id = first?.id ?? ''
    expect(await b.keeping.putIntoBin([id])).toEqual([id])
    await a.rename('A 2')
    expect((await a.keeping.list())?.map(({ jobName, removedAtMs }) => [jobName, removedAtMs])).toEqual([
      ['A 2', null],
    ])
    expect(await b.keeping.removeForGood([id])).toEqual([id])
    await a.rename('A 3')
    expect(names(within)).toEqual(['A 3'])
    expect((await a.reload()).name()).toBe('A 3')
  })
})

describe('writing', () => {
  /** Every write waits until the test lets it finish. */
  const slowly = (within: Browser) => {
    const begun: string[] = []
    let waiting: (() => void)[] = []
    const storage: SlotStorage = {
      ...within.storage,
      write: async (written, over) => {
        begun.push(nameIn(written.text))
        await new Promise<void>((resolve) => waiting.push(resolve))
        return await within.storage.write(written, over)
      },
    }
    const finish = async (): Promise<void> => {
      const now = waiting
      waiting = []
      for (const done of now) done()
      await settled()
    }
    return { storage, begun, finish }
  }

  it('goes one at a time and skips what was overtaken: the last change is the last write', async () => {
    const within = browser()
    const { storage, begun, finish } = slowly(within)
    const tab = await page(within, within.openTab(), storage)
    await tab.rename('1')
    for (const name of ['2', '3', '4']) tab.store.actions.edit(name, named(name))
    await settled()
    expect(begun).toEqual(['1'])
    await finish()
    expect(begun).toEqual(['1', '4'])
    await finish()
    expect(begun).toEqual(['1', '4'])
    expect(names(within)).toEqual(['4'])
  })

  it('happens once for a drag, when it ends, and not while it runs or when it is called off', async () => {
    const within = browser()
    const { storage, begun, finish } = slowly(within)
    const { store } = await page(within, within.openTab(), storage)
    store.actions.beginGesture('Move')
    store.actions.dragTo(named('half way'))
    store.actions.cancelGesture()
    await settled()
    expect(begun).toHaveLength(0)
    store.actions.beginGesture('Move')
    store.actions.dragTo(named('half way'))
    store.actions.dragTo(named('there'))
    store.actions.endGesture()
    await settled()
    expect(begun).toEqual(['there'])
    await finish()
    store.actions.undo()
    await settled()
    expect(begun).toEqual(['there', ''])
  })

  it.each([
    [new DOMException('no room', 'QuotaExceededError'), 'no room left'],
    [new Error('denied'), 'could not keep the last change'],
  ])(
    'that fails (%s) is said once, goes on being tried, and works again without a word',
    async (error, words) => {
      const within = browser()
      let attempts = 0
      let isBroken = true
      const tab = await page(within, within.openTab(), {
        ...within.storage,
        write: (written, over) => {
          attempts += 1
          return isBroken ? Promise.reject(error) : within.storage.write(written, over)
        },
      })
      await tab.rename('1')
      expect(tab.store.state.getState().notice?.kind).toBe('problem')
      expect(tab.said()).toContain(words)
      tab.store.actions.dismissNotice()
      await tab.rename('2')
      expect(attempts).toBe(2)
      expect(tab.said()).toBe('')
      isBroken = false
      await tab.rename('3')
      expect(names(within)).toEqual(['3'])
      expect(tab.said()).toBe('')
    },
  )
})

describe('what cannot be read', () => {
  it.each([
    ['text that is no JSON', '{"version": 1,'],
    ['a foreign file', '{"widgets": []}'],
    [
      'a layout with a wrong value',
      layoutText(emptyLayout()).replace('"statureMm": 1755', '"statureMm": 17'),
    ],
    ['something that is not text', { version: 1 }],
  ])('%s: is set aside untouched, an empty layout is started, and it is said', async (_, text) => {
    const within = browser({ slots: [slot('damaged', text)] })
    const tab = await page(within)
    expect(within.aside).toEqual([text])
    expect(tab.setAside).toBe(typeof text === 'string' ? text : '{"version":1}')
    expect(tab.layout).toEqual(emptyLayout())
    expect(tab.notice?.kind).toBe('problem')
  })

  it('is offered at later visits too', async () => {
    const within = browser({ slots: [kept('sound', 'Sound', 1)] })
    within.aside.push('{"version": 1,')
    expect((await page(within)).setAside).toBe('{"version": 1,')
  })

  it('leaves the page working, with a warning, where the browser forbids storage', async () => {
    const within = browser()
    const denied = (): Promise<never> => Promise.reject(new Error('denied'))
    const tab = await page(within, within.openTab(), {
      all: denied,
      write: denied,
      remove: denied,
      filings: denied,
      file: denied,
      fileLink: denied,
      keepFileLink: denied,
      setAside: denied,
      readSetAside: denied,
    })
    expect(tab.said()).toContain('keeps nothing')
    tab.store.actions.dismissNotice()
    await tab.rename('Goes on')
    expect(tab.name()).toBe('Goes on')
    // It was said; said again it would only hide what comes after.
    expect(tab.said()).toBe('')
    // While the page lives it has it in hand.
    expect((await tab.keeping.list())?.map(({ jobName, isOnlyInPage }) => [jobName, isOnlyInPage])).toEqual([
      ['Goes on', true],
    ])
    expect(await tab.keeping.putIntoBin(['any'])).toEqual([])
    expect(await tab.keeping.putBack(['any'])).toBe(false)
    expect(await tab.keeping.duplicate('any')).toBeNull()
  })
})
