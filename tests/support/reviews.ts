import fc from 'fast-check'

import type {
  AnswerEntry,
  CommentEntry,
  DecisionEntry,
  ShownEntry,
} from '../../src/domain/layout/document/review'
import type { Layout } from '../../src/domain/layout/document/layout'
import { layoutFingerprint, reviewedVariantsOf } from '../../src/domain/layout/agreement/fingerprint'
import { withShown } from '../../src/domain/layout/edit/reviews'

/** Said by an invented customer to the drawing that `shownLayout` shows. */
export const comment = (part: Partial<CommentEntry> = {}): CommentEntry => ({
  kind: 'comment',
  id: 'comment-1',
  date: '2026-06-02',
  by: 'Ines',
  shownId: 'shown-1',
  variantId: '',
  partId: '',
  text: 'Does it rub?',
  ...part,
})

export const decision = (layout: Layout, part: Partial<DecisionEntry> = {}): DecisionEntry => ({
  kind: 'agreed',
  id: 'decision-1',
  date: '2026-06-03',
  by: 'Ines',
  shownId: 'shown-1',
  variantId: '',
  fingerprint: layoutFingerprint(layout),
  text: '',
  ...part,
})

/** The layout after it was shown. */
export const shownLayout = (layout: Layout): Layout =>
  withShown(layout, {
    id: 'shown-1',
    date: '2026-06-01',
    by: 'Kit',
    to: 'Ines',
    variants: reviewedVariantsOf(layout),
  })

/** What `shownLayout` records, as it travels. */
export const shownEntry = (layout: Layout): ShownEntry => ({
  kind: 'shown',
  id: 'shown-1',
  date: '2026-06-01',
  by: 'Kit',
  to: 'Ines',
  variants: reviewedVariantsOf(layout).map(({ parts: _parts, ...variant }) => variant),
})

const said = {
  date: fc.constantFrom('2024-02-29', '2026-06-02', '2026-12-31'),
  by: fc.string({ minLength: 1, maxLength: 12 }).filter((text) => text.trim() !== ''),
}

/** Answers to `shown-1` of a layout without variants, each with an id of its own. */
export const answersArb: fc.Arbitrary<readonly AnswerEntry[]> = fc
  .array(
    fc.oneof(
      fc.record({
        kind: fc.constant('comment' as const),
        ...said,
        shownId: fc.constant('shown-1'),
        variantId: fc.constant(''),
        partId: fc.constantFrom('', 'anchor:driver:lap-left-anchor', 'hip:driver'),
        text: fc.string({ minLength: 1, maxLength: 40 }).filter((text) => text.trim() !== ''),
      }),
      fc.record({
        kind: fc.constantFrom('agreed' as const, 'change-asked' as const),
        ...said,
        shownId: fc.constant('shown-1'),
        variantId: fc.constant(''),
        fingerprint: fc.constantFrom('0123456789abcdef0123', 'f'.repeat(20)),
        text: fc.string({ maxLength: 40 }),
      }),
    ),
    { minLength: 1, maxLength: 12 },
  )
  .map((entries) => entries.map((entry, index): AnswerEntry => ({ ...entry, id: `said-${index + 1}` })))
