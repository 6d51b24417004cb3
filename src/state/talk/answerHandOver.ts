import { shownById } from '../../domain/layout/agreement/agreement'
import { parseAnswer } from '../../domain/layout/agreement/answer'
import { uniqueId } from '../uniqueId'
import type { AppStore } from '../store'
import { arrivedAnswer } from './arrivedAnswer'

/*
 * A link opens in a new tab, and the layout that it answers to is often open in another one. An answer that is added there reaches
 * what the builder works on; added here it would go into a copy.
 */

/** Where the tabs of one browser hear each other; nobody hears oneself. */
export interface TabTalk {
  readonly say: (message: unknown) => void
  /** Gives the way to stop. */
  readonly hear: (listener: (message: unknown) => void) => () => void
}

let pageChannel: BroadcastChannel | null = null

/** The page's one channel, for two of one page would hear each other; null in a browser that knows none. */
const channelOfPage = (): BroadcastChannel | null =>
  typeof BroadcastChannel === 'undefined' ? null : (pageChannel ??= new BroadcastChannel('tabwright-answers'))

/** The other tabs of this browser; one that knows no channels between them hears nothing. */
export const browserTabs = (): TabTalk => {
  const channel = channelOfPage()
  return {
    say: (message) => channel?.postMessage(message),
    hear: (listener) => {
      const hear = ({ data }: MessageEvent<unknown>): void => listener(data)
      channel?.addEventListener('message', hear)
      return () => channel?.removeEventListener('message', hear)
    },
  }
}

interface Offered {
  readonly kind: 'answer'
  readonly id: string
  readonly text: string
}

/** A tab that is open answers at once; one that the browser has put to sleep does not. Our judgement. */
const PATIENCE_MS = 1_500

const fieldsOf = (message: unknown): Readonly<Record<string, unknown>> =>
  typeof message === 'object' && message !== null ? { ...message } : {}

const offeredIn = (message: unknown): Offered | null => {
  const { kind, id, text } = fieldsOf(message)
  return kind === 'answer' && typeof id === 'string' && typeof text === 'string' ? { kind, id, text } : null
}

/** Takes over answers that another tab offers, where the open layout was shown so; they wait on the customer screen. Gives the way to stop. */
export const takeOffered = (store: AppStore, talk: TabTalk): (() => void) =>
  talk.hear((message) => {
    const offered = offeredIn(message)
    const parsed = offered === null ? null : parseAnswer(offered.text)
    if (offered === null || parsed === null || !parsed.ok) return
    if (shownById(store.state.getState().history.present, parsed.value.shown.id) === null) return
    // One that waits already is not put away for another.
    if (arrivedAnswer.getState().answer !== null) return
    arrivedAnswer.setState({ answer: parsed.value })
    store.actions.notify(
      'info',
      'An answer of the customer has come from another tab. It waits under Customer.',
    )
    talk.say({ kind: 'taken', id: offered.id })
  })

/** Offers an answer to the other tabs; true when one of them has taken it. */
export const offerToOthers = (text: string, talk: TabTalk, patienceMs = PATIENCE_MS): Promise<boolean> =>
  new Promise((resolve) => {
    const id = uniqueId()
    const end = (isTaken: boolean): void => {
      clearTimeout(timer)
      stop()
      resolve(isTaken)
    }
    const stop = talk.hear((message) => {
      const said = fieldsOf(message)
      if (said['kind'] === 'taken' && said['id'] === id) end(true)
    })
    const timer = setTimeout(() => end(false), patienceMs)
    talk.say({ kind: 'answer', id, text } satisfies Offered)
  })
