import { beforeEach, describe, expect, it } from 'vitest'

import { answerText } from '../../../src/domain/layout/agreement/answer'
import { createAppStore } from '../../../src/state/store'
import { browserTabs, offerToOthers, takeOffered, type TabTalk } from '../../../src/state/talk/answerHandOver'
import { arrivedAnswer, putAside } from '../../../src/state/talk/arrivedAnswer'
import { flatLayout, flatPlace } from '../../support/flatLayout'
import { comment, shownEntry, shownLayout } from '../../support/reviews'

const plain = flatLayout([flatPlace()])
const shown = shownLayout(plain)
const text = answerText({ shown: shownEntry(plain), jobName: 'Dune', entries: [comment()] })

/** Tabs that hear each other and never themselves, as channels of a browser do (HTML standard, 9.5, from memory). */
const tabs = () => {
  const ears = new Map<number, Set<(message: unknown) => void>>()
  return (): TabTalk => {
    const own = ears.size
    ears.set(own, new Set())
    return {
      say: (message) => {
        for (const [tab, listeners] of ears) if (tab !== own) for (const hear of listeners) hear(message)
      },
      hear: (listener) => {
        ears.get(own)?.add(listener)
        return () => void ears.get(own)?.delete(listener)
      },
    }
  }
}

describe('an answer that came in another tab', () => {
  beforeEach(putAside)

  it('is taken by the tab whose layout was shown so, waits there, and the layout is left as it was', async () => {
    const tab = tabs()
    const other = createAppStore(plain)
    takeOffered(other, tab())
    const store = createAppStore(shown)
    takeOffered(store, tab())
    expect(await offerToOthers(text, tab(), 1_000)).toBe(true)
    expect(arrivedAnswer.getState().answer?.entries).toEqual([comment()])
    expect(store.state.getState().layout).toBe(shown)
    expect(store.state.getState().notice?.text).toMatch(/waits under Customer/)
    expect(other.state.getState().notice).toBeNull()
  })

  it('is taken by nobody where no tab has the layout, where one waits already, and where it is damaged', async () => {
    const tab = tabs()
    takeOffered(createAppStore(plain), tab())
    expect(await offerToOthers(text, tab(), 1)).toBe(false)
    takeOffered(createAppStore(shown), tab())
    expect(await offerToOthers(text.slice(0, -20), tab(), 1)).toBe(false)
    expect(await offerToOthers(text, tab(), 1_000)).toBe(true)
    expect(await offerToOthers(text, tab(), 1)).toBe(false)
  })

  it('is not taken for words that are none of ours, and a tab that stopped hears nothing', async () => {
    const tab = tabs()
    const stop = takeOffered(createAppStore(shown), tab())
    const stranger = tab()
    for (const message of [null, 1, 'answer', { kind: 'answer' }, { kind: 'answer', id: 1, text }])
      stranger.say(message)
    expect(arrivedAnswer.getState().answer).toBeNull()
    stop()
    expect(await offerToOthers(text, tab(), 1)).toBe(false)
  })
})

describe('browserTabs', () => {
  beforeEach(putAside)

  it('reaches other pages by a real channel, and never the page itself', async () => {
    const stop = takeOffered(createAppStore(shown), browserTabs())
    expect(await offerToOthers(text, browserTabs(), 50)).toBe(false)
    expect(arrivedAnswer.getState().answer).toBeNull()
    const other = new BroadcastChannel('tabwright-answers')
    const heard = new Promise((resolve) => other.addEventListener('message', ({ data }) => resolve(data)))
    other.postMessage({ kind: 'answer', id: 'a', text })
    expect(await heard).toEqual({ kind: 'taken', id: 'a' })
    expect(arrivedAnswer.getState().answer?.entries).toEqual([comment()])
    stop()
    other.close()
  })
})
