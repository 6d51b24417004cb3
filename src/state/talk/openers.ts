import { parseAnswer } from '../../domain/layout/agreement/answer'
import { parseProposal } from '../../domain/layout/agreement/proposal'
import { readOrSaid } from '../pickedFile'
import { fragmentOf } from '../share/fragment'
import type { AppStore } from '../store'
import { arrivedAnswer } from './arrivedAnswer'

/** How a kind of text that is no layout is told by what it holds, and opened. */
interface Opener<Kind extends string> {
  readonly kind: Kind
  /** Whether parsed JSON means to be one; it may still be damaged. */
  readonly recognises: (value: unknown) => boolean
  /** False when it cannot be opened; a notice says why, and nothing was changed. */
  readonly open: (store: AppStore, text: string, name: string) => boolean
}

const hasField =
  (field: string) =>
  (value: unknown): boolean =>
    typeof value === 'object' && value !== null && field in value

/** A customer's answer: it waits on the customer screen until the builder takes it or puts it aside. */
export const answerOpener: Opener<'answer'> = {
  kind: 'answer',
  recognises: hasField('answer'),
  open: (store, text, name) => {
    const answer = readOrSaid(store, parseAnswer(text), `${name} cannot be opened`)
    if (answer === null) return false
    arrivedAnswer.setState({ answer })
    store.actions.setView({ screen: 'customer' })
    return true
  },
}

/** A proposal from a file: shown by the page that its link would have led to. */
export const proposalOpener: Opener<'proposal'> = {
  kind: 'proposal',
  recognises: hasField('proposal'),
  open: (store, text, name) => {
    if (readOrSaid(store, parseProposal(text), `${name} cannot be opened`) === null) return false
    // The page hears the new address, lets everything be kept, and begins anew.
    window.location.hash = fragmentOf({ kind: 'proposal', text })
    return true
  },
}
