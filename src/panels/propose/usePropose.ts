import { useEffect } from 'react'
import type { Layout, Place } from '../../domain/layout/document/layout'
import { wishProblemText } from '../../domain/layout/wording/proposalText'
import { pageSearch } from '../../state/propose/pageSearch'
import type { SearchDone, SearchEnd } from '../../state/propose/search'
import { areStillGood } from '../../state/propose/staleProposals'
import { pageDraft, wishOf, type WishDraft } from '../../state/propose/wishDraft'
import { useKept } from '../../state/react'
import { failureClause, type WorkView } from '../WorkStatus'

export interface ProposeView {
  readonly draft: WishDraft
  readonly change: (patch: Partial<WishDraft>) => void
  readonly work: WorkView
  /** The last proposals for this place, or null; they may be stale. */
  readonly last: SearchDone | null
  readonly shownId: string | null
  readonly show: (proposalId: string | null) => void
}

const endedWords = (ended: SearchEnd): string => {
  switch (ended.kind) {
    case 'cancelled':
      return 'The search was cancelled.'
    case 'refused':
      return wishProblemText(ended.problem, ended.question.layout)
    case 'failed':
      return `The search came to no end: ${failureClause(ended.message)}.`
  }
}

/** The search counts in pieces that mean nothing to anybody. */
const inHundredths = ({ done, total }: NonNullable<WorkView['running']>): WorkView['running'] =>
  total === 0 ? { done, total } : { done: Math.floor((100 * done) / total), total: 100 }

/** Searches for the current place; the drawing marks what was found while this is in view. */
export const usePropose = (layout: Layout, place: Place): ProposeView => {
  const { running, last: lastOfAny, ended } = useKept(pageSearch.state)
  const { shownId } = useKept(pageSearch.view)
  const draft = useKept(pageDraft)
  useEffect(() => {
    pageSearch.view.setState({ isInView: true })
    return () => pageSearch.view.setState({ isInView: false })
  }, [])
  const last = lastOfAny?.value.placeId === place.id ? lastOfAny : null
  const isGood = last !== null && areStillGood(last.question.layout, layout, last.value)
  return {
    draft,
    change: (patch) => pageDraft.setState(patch),
    last,
    shownId,
    show: (proposalId) => pageSearch.view.setState({ shownId: proposalId }),
    work: {
      running: running && inHundredths(running),
      answer: last === null ? 'none' : isGood ? 'fresh' : 'stale',
      ended:
        ended?.question.wish.placeId === place.id
          ? { words: endedWords(ended), didFail: ended.kind === 'failed' }
          : null,
      start: () => pageSearch.start({ layout, wish: wishOf(draft, layout, place) }),
      cancel: pageSearch.cancel,
    },
  }
}
