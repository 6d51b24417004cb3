import { createStore } from 'zustand/vanilla'
import type { Layout } from '../../domain/layout/document/layout'
import { parseLayoutText } from '../../domain/layout/document/parseLayout'
import { pageKeeping } from '../keeping/pageKeeping'
import { keptAlready } from '../keeping/shelf'
import { problemLines } from '../pickedFile'
import type { AppStore } from '../store'
import { answerOpener } from '../talk/openers'
import { carriedIn } from './fragment'

/** A layout that came in a link and waits to be opened or left. */
export interface ArrivedLayout {
  readonly layout: Layout
  /** Where exactly this layout is kept already; null: nowhere. */
  readonly keptId: string | null
}

/** What the page's address carried and nobody has decided about yet. */
export const arrival = createStore<{ readonly layout: ArrivedLayout | null }>(() => ({ layout: null }))

/** Takes what an address carried off it, so that loading the page again does not ask again. */
const clearAddress = (): void =>
  window.history.replaceState(window.history.state, '', window.location.pathname + window.location.search)

/** The arrived layout was opened or left. */
export const settleArrival = (): void => {
  arrival.setState({ layout: null })
  clearAddress()
}

const refuse = (store: AppStore, text: string, details: readonly string[] = []): void => {
  clearAddress()
  store.actions.notify('problem', text, details)
}

/**
 * Looks at what the address carries: a layout waits for the builder's word, an answer goes to its screen, a proposal to the customer's own
 * page. What cannot be read changes nothing and says why.
 */
export const takeArrival = async (store: AppStore, fragment: string): Promise<void> => {
  const carried = carriedIn(fragment)
  if (!carried.ok) return refuse(store, `${carried.error} Nothing was changed.`)
  if (carried.value === null) return
  const { kind, text } = carried.value
  switch (kind) {
    case 'proposal':
      // Another composition of the page shows it, from its start.
      await pageKeeping.settled()
      return window.location.reload()
    case 'answer':
      clearAddress()
      answerOpener.open(store, text, 'The answer in the link')
      return
    case 'layout': {
      const parsed = parseLayoutText(text)
      if (!parsed.ok)
        return refuse(
          store,
          'The link holds no sound layout. Nothing was changed.',
          problemLines(parsed.error),
        )
      const kept = keptAlready((await pageKeeping.list()) ?? [], parsed.value)
      arrival.setState({ layout: { layout: parsed.value, keptId: kept?.id ?? null } })
    }
  }
}
