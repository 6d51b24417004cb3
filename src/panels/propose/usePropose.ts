import { useEffect, useSyncExternalStore } from 'react'
import type { Layout, Place } from '../../domain/layout/document/layout'
import { wishProblemText } from '../../domain/layout/wording/proposalText'
import { pageProposeRunner } from '../../state/propose/pageProposeRunner'
import type { ProposeDone, ProposeState } from '../../state/propose/proposeRunner'
import { areStillGood } from '../../state/propose/staleProposals'
import { pageDraft, wishOf, type WishDraft } from '../../state/propose/wishDraft'

export interface ProposeView {
  readonly draft: WishDraft
  readonly change: (patch: Partial<WishDraft>) => void
  readonly running: ProposeState['running']
  /** The last proposals for this place, or null; they may be stale. */
  readonly last: ProposeDone | null
  readonly shownId: string | null
  /** The layout has changed since, so that they may no longer hold. */
  readonly isStale: boolean
  /** Why the last search came to nothing, in words; null when it did not. */
  readonly endedText: string | null
  readonly start: () => void
  readonly cancel: () => void
  readonly show: (proposalId: string | null) => void
}

const endedWords = (ended: ProposeState['ended']): string | null => {
  switch (ended?.kind) {
    case undefined:
      return null
    case 'cancelled':
      return 'The search was cancelled.'
    case 'refused':
      return wishProblemText(ended.problem, ended.question.layout)
    case 'failed':
      return `The search came to no end: ${ended.message}`
  }
}

/** Searches for the current place; the drawing marks what was found while this is in view. */
export const usePropose = (layout: Layout, place: Place): ProposeView => {
  const state = useSyncExternalStore(pageProposeRunner.subscribe, pageProposeRunner.state)
  const draft = useSyncExternalStore(pageDraft.subscribe, pageDraft.draft)
  useEffect(() => {
    pageProposeRunner.setInView(true)
    return () => pageProposeRunner.setInView(false)
  }, [])
  const last = state.last?.result.placeId === place.id ? state.last : null
  const isEnded = state.ended?.question.wish.placeId === place.id
  return {
    draft,
    change: pageDraft.change,
    running: state.running,
    last,
    shownId: state.shownId,
    isStale: last !== null && !areStillGood(last.question.layout, layout, last.result),
    endedText: isEnded ? endedWords(state.ended) : null,
    start: () => pageProposeRunner.start({ layout, wish: wishOf(draft, layout, place) }),
    cancel: pageProposeRunner.cancel,
    show: pageProposeRunner.show,
  }
}
