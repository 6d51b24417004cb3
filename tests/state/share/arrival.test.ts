import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { emptyLayout } from '../../../src/domain/layout/document/empty'
import { layoutText } from '../../../src/domain/layout/document/layoutText'
import { arrival, settleArrival, takeArrival } from '../../../src/state/share/arrival'
import { fragmentOf } from '../../../src/state/share/fragment'
import { isOnlyThisMachine, linkedText, linkTo } from '../../../src/state/share/link'
import { createAppStore } from '../../../src/state/store'

const named = (name: string) => ({ ...emptyLayout(), job: { ...emptyLayout().job, name } })
const sound = fragmentOf({ kind: 'layout', text: layoutText(named('From a link')) })

/** The address as a page has it: what it shows now, and whether it was loaded anew. */
const address = { shown: '', reloads: 0 }

beforeEach(() => {
  Object.assign(address, { shown: '/app/?x=1#something', reloads: 0 })
  arrival.setState({ layout: null })
  vi.stubGlobal('window', {
    location: { pathname: '/app/', search: '?x=1', reload: () => (address.reloads += 1) },
    history: {
      state: null,
      replaceState: (_state: unknown, _title: string, to: string) => (address.shown = to),
    },
  })
})
afterEach(() => vi.unstubAllGlobals())

const started = () => createAppStore(named('mine'), { documentId: 'first' })

describe('takeArrival', () => {
  it('lets a layout wait and changes nothing; its address stays until it is settled', async () => {
    const store = started()
    const before = store.state.getState()
    await takeArrival(store, sound)
    expect(arrival.getState().layout).toEqual({ layout: named('From a link'), keptId: null })
    expect(store.state.getState()).toBe(before)
    expect(address.shown).toContain('#')
    settleArrival()
    expect(arrival.getState().layout).toBeNull()
    expect(address.shown).toBe('/app/?x=1')
  })

  it.each(['', '#', '#panels'])('leaves the ordinary address %s alone', async (fragment) => {
    const store = started()
    const before = store.state.getState()
    await takeArrival(store, fragment)
    expect(store.state.getState()).toBe(before)
    expect(address.shown).toContain('#')
  })

  it.each([
    ['cut off', sound.slice(0, -9), /cut off.*Nothing was changed/],
    ['of another version', sound.replace('layout1', 'layout3'), /another version/],
    [
      'a layout of a newer version',
      fragmentOf({ kind: 'layout', text: '{"version": 2}' }),
      /no sound layout/,
    ],
    ['no layout at all', fragmentOf({ kind: 'layout', text: 'bolts' }), /no sound layout/],
    ['no answer at all', fragmentOf({ kind: 'answer', text: '{}' }), /cannot be opened/],
  ])(
    'says what is wrong with a link that is %s, and takes it off the address',
    async (_, fragment, words) => {
      const store = started()
      await takeArrival(store, fragment)
      const { notice, documentId, layout } = store.state.getState()
      expect(notice?.kind).toBe('problem')
      expect(notice?.text).toMatch(words)
      expect(documentId).toBe('first')
      expect(layout).toEqual(named('mine'))
      expect(arrival.getState().layout).toBeNull()
      expect(address.shown).toBe('/app/?x=1')
    },
  )

  it('has a proposal shown by the page that begins with it', async () => {
    await takeArrival(started(), fragmentOf({ kind: 'proposal', text: '{}' }))
    expect(address.reloads).toBe(1)
  })
})

describe('linkTo', () => {
  it('puts the fragment behind the address of the page, whatever stands there', () => {
    expect(
      linkTo('https://example.org/app/?x=1#old', { kind: 'layout', text: layoutText(named('From a link')) }),
    ).toBe(`https://example.org/app/?x=1${sound}`)
  })
})

describe('linkedText', () => {
  it('is the whole layout without its photos', () => {
    const photo = {
      id: 'photo-1',
      elevation: 'side',
      pictureId: 'abc',
      name: 'left.jpg',
      size: { widthPx: 4000, heightPx: 3000 },
      mirrored: false,
      calibration: { kind: 'known-length', marks: {}, runs: 'level' },
      opacity: 0.6,
      shown: true,
      locked: false,
    } as const
    expect(linkedText({ ...named('mine'), photos: [photo] })).toBe(layoutText(named('mine')))
  })
})

describe('isOnlyThisMachine', () => {
  it.each([
    ['http://localhost:4173/', true],
    ['http://127.0.0.1/', true],
    ['http://[::1]:8080/', true],
    ['https://example.org/', false],
    ['http://192.168.1.20:4173/', false],
    ['http://localhost.example.org/', false],
  ])('%s: %s', (here, isOnly) => {
    expect(isOnlyThisMachine(here)).toBe(isOnly)
  })
})
