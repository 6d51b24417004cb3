import { useEffect, useMemo, useRef, useState } from 'react'
import { layoutFingerprint } from '../../domain/layout/agreement/fingerprint'
import type { Proposal } from '../../domain/layout/agreement/proposal'
import { COUNTS } from '../../domain/layout/document/limits'
import { drawnVariantId, variantsOf } from '../../domain/layout/edit/changeVariants'
import {
  draftKey,
  keepDraft,
  keptDraft,
  mergedDraft,
  type ProposalDraft,
} from '../../state/talk/proposalDraft'
import { uniqueId } from '../../state/uniqueId'
import type { Conversation } from './conversation'

const pageStorage = (): Storage => localStorage

/** Beside what was shown, which goes along. */
const MOST_ENTRIES = COUNTS.answerEntries.max - 1
const FULL = `An answer holds ${MOST_ENTRIES} entries and you have said as many. Send it; the workshop can show the proposal again.`

const ALTERED =
  'This drawing is not the one that the workshop recorded when it sent it: something came between. Ask for the link or the file once more before you agree.'

/** Whether every variant is what the workshop recorded that it showed. */
const isAsSent = ({ shown, layout }: Proposal): boolean =>
  variantsOf(layout).every(({ id, layout: own }) =>
    shown.variants.some(
      ({ variantId, fingerprint }) => variantId === id && fingerprint === layoutFingerprint(own),
    ),
  )

/** The talk on the customer's own device: kept there, entry by entry and letter by letter. */
export const useProposalTalk = (proposal: Proposal) => {
  const { shown, layout } = proposal
  const [draft, setDraft] = useState(() => keptDraft(shown, pageStorage))
  const [isKept, setKept] = useState(true)
  // Several changes may come of one press of a button, before the page is drawn again.
  const newest = useRef(draft)
  const change = (changed: (before: ProposalDraft) => ProposalDraft): void => {
    const kept = keepDraft(shown, changed(newest.current), pageStorage)
    newest.current = kept.draft
    setKept(kept.isKept)
    setDraft(kept.draft)
  }
  // What is said in another tab of the same proposal.
  useEffect(() => {
    const hear = ({ key }: StorageEvent): void => {
      if (key !== draftKey(shown)) return
      newest.current = mergedDraft(keptDraft(shown, pageStorage), newest.current)
      setDraft(newest.current)
    }
    window.addEventListener('storage', hear)
    return () => window.removeEventListener('storage', hear)
  }, [shown])
  const variants = useMemo(() => variantsOf(layout), [layout])
  const undecidable = useMemo(() => (isAsSent(proposal) ? null : ALTERED), [proposal])
  const talk: Conversation = {
    shown,
    variants,
    said: draft.entries,
    say: (answer) =>
      change((before) => ({
        ...before,
        entries: [...before.entries, { ...answer, id: uniqueId(), shownId: shown.id }],
      })),
    takeBack: (id) => change((before) => ({ ...before, takenBackIds: [...before.takenBackIds, id] })),
    sentIds: draft.sentIds,
    typed: draft.typed,
    type: (about, text) => change((before) => ({ ...before, typed: { ...before.typed, [about]: text } })),
    name: draft.name,
    setName: (name) => change((before) => ({ ...before, name })),
    full: draft.entries.length < MOST_ENTRIES ? null : FULL,
    undecidable,
  }
  const markSent = (): void =>
    change((before) => ({ ...before, sentIds: before.entries.map(({ id }) => id) }))
  return { talk, isKept, markSent, firstId: drawnVariantId(layout) }
}
