import { useMemo, useState } from 'react'
import { lastShown } from '../../domain/layout/agreement/agreement'
import { layoutFingerprint } from '../../domain/layout/agreement/fingerprint'
import type { Layout } from '../../domain/layout/document/layout'
import { COUNTS } from '../../domain/layout/document/limits'
import type { AnswerEntry, ShownEntry } from '../../domain/layout/document/review'
import { variantsOf } from '../../domain/layout/edit/changeVariants'
import { withComment, withDecision } from '../../domain/layout/edit/reviews'
import { useActions, useApp } from '../../state/react'
import { uniqueId } from '../../state/uniqueId'
import type { Conversation, NewAnswer } from './conversation'

const NOT_SHOWN = 'Nothing was shown yet: record above that you show it, so that what is agreed to is known.'
const FULL = `The layout holds ${COUNTS.reviews.max} entries already and takes no more.`
const CHANGED =
  'The drawing has changed since it was shown: record above that you show it again, so that what is agreed to is what is drawn.'

/** Whether every variant there is now was shown just so. */
export const isAsShown = (layout: Layout, shown: ShownEntry | null): boolean =>
  shown !== null &&
  variantsOf(layout).every(({ id, layout: own }) =>
    shown.variants.some(
      ({ variantId, fingerprint }) => variantId === id && fingerprint === layoutFingerprint(own),
    ),
  )

const isAnswerTo =
  (shown: ShownEntry | null) =>
  (entry: { readonly kind: string; readonly shownId?: string }): entry is AnswerEntry =>
    entry.kind !== 'shown' && entry.shownId === shown?.id

const WORDS = {
  comment: 'Record a comment',
  agreed: 'Record the agreement',
  'change-asked': 'Record a wish for a change',
}

/** The talk on the builder's own tablet: what is said is recorded in the layout at once, each as one undo step. */
export const useShopTalk = (): Conversation => {
  const layout = useApp((state) => state.layout)
  const { edit } = useActions()
  const shown = useMemo(() => lastShown(layout), [layout])
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({})
  // Empty at first: who agrees types the name.
  const [name, setName] = useState('')
  const said = useMemo(() => (layout.reviews ?? []).filter(isAnswerTo(shown)), [layout.reviews, shown])
  const variants = useMemo(() => variantsOf(layout), [layout])
  const undecidable = useMemo(
    () => (shown === null ? NOT_SHOWN : isAsShown(layout, shown) ? null : CHANGED),
    [layout, shown],
  )
  const say = (answer: NewAnswer): void => {
    if (shown === null) return
    const own = { id: uniqueId(), shownId: shown.id }
    edit(WORDS[answer.kind], (before) =>
      answer.kind === 'comment'
        ? withComment(before, { ...answer, ...own })
        : withDecision(before, { ...answer, ...own }),
    )
  }
  return {
    shown,
    variants,
    said,
    say,
    takeBack: null,
    sentIds: [],
    typed,
    type: (about, text) => setTyped((before) => ({ ...before, [about]: text })),
    name,
    setName,
    full: (layout.reviews ?? []).length < COUNTS.reviews.max ? null : FULL,
    undecidable,
  }
}
