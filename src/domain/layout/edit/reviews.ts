import { err, ok, type Result } from '../../result'
import { canonicalText } from '../document/canonicalText'
import type { Layout } from '../document/layout'
import { COUNTS } from '../document/limits'
import type { AnswerEntry, CommentEntry, DecisionEntry, ReviewEntry, ShownEntry } from '../document/review'
import { saidContradictions } from '../document/reviewContradictions'

/*
 * Edits of the talk with the customer. Entries are only ever added; none of these changes or removes one. Ids are made by the
 * caller and must be ones that no entry of any layout has, because an answer finds what it answers to by them.
 */

const reviewsOf = ({ reviews }: Layout): readonly ReviewEntry[] => reviews ?? []

/**
 * The drawn layout and its variants put before somebody; `variants` is how they are now (agreement/fingerprint.ts). Unchanged when
 * nobody is named as showing it, the day does not exist, the id is taken or the list is full.
 */
export const withShown = (layout: Layout, said: Omit<ShownEntry, 'kind'>): Layout => {
  const reviews = reviewsOf(layout)
  const entry: ShownEntry = { kind: 'shown', ...said }
  const isTaken = reviews.some((other) => other.id === entry.id)
  if (isTaken || reviews.length >= COUNTS.reviews.max || saidContradictions(entry, []).length > 0)
    return layout
  return { ...layout, reviews: [...reviews, entry] }
}

/** One more comment; unchanged where `withAnswersTaken` refuses it. */
export const withComment = (layout: Layout, entry: CommentEntry): Layout => withOne(layout, entry)

/** One more decision; unchanged where `withAnswersTaken` refuses it. */
export const withDecision = (layout: Layout, entry: DecisionEntry): Layout => withOne(layout, entry)

const withOne = (layout: Layout, entry: AnswerEntry): Layout => {
  const taken = withAnswersTaken(layout, [entry])
  return taken.ok ? taken.value.layout : layout
}

/** Why an answer is not taken; nothing of it is. */
export type AnswerRefusal =
  /** It answers to something that was never shown from this layout. */
  | { readonly kind: 'never-shown'; readonly shownId: string }
  /** It speaks of a variant that was not shown then. */
  | { readonly kind: 'unknown-variant'; readonly variantId: string }
  /** An entry of this id is here already and says something else. */
  | { readonly kind: 'said-otherwise'; readonly entryId: string }
  /** An entry by nobody, without words, or of a day that does not exist. */
  | { readonly kind: 'says-nothing'; readonly entryId: string }
  | { readonly kind: 'full'; readonly most: number }

export interface AnswersTaken {
  readonly layout: Layout
  /** What was not here yet, in its order. */
  readonly added: readonly AnswerEntry[]
}

/**
 * What a customer said put behind what was said so far. Entries that are here already are not added twice, so that answers can be
 * taken in any order and again; the very same layout where all are here. All or nothing.
 */
export const withAnswersTaken = (
  layout: Layout,
  entries: readonly AnswerEntry[],
): Result<AnswersTaken, AnswerRefusal> => {
  const added: AnswerEntry[] = []
  for (const entry of entries) {
    const known = [...reviewsOf(layout), ...added]
    const twin = known.find(({ id }) => id === entry.id)
    const refusal = twin === undefined ? refusalOf(known, entry) : twinRefusal(twin, entry)
    if (refusal !== null) return err(refusal)
    if (twin === undefined) added.push(entry)
  }
  if (added.length === 0) return ok({ layout, added })
  return ok({ layout: { ...layout, reviews: [...reviewsOf(layout), ...added] }, added })
}

const twinRefusal = (twin: ReviewEntry, entry: AnswerEntry): AnswerRefusal | null =>
  canonicalText(twin) === canonicalText(entry) ? null : { kind: 'said-otherwise', entryId: entry.id }

const refusalOf = (known: readonly ReviewEntry[], entry: AnswerEntry): AnswerRefusal | null => {
  if (saidContradictions(entry, []).length > 0) return { kind: 'says-nothing', entryId: entry.id }
  const shown = known.find(
    (other): other is ShownEntry => other.kind === 'shown' && other.id === entry.shownId,
  )
  if (shown === undefined) return { kind: 'never-shown', shownId: entry.shownId }
  if (!shown.variants.some(({ variantId }) => variantId === entry.variantId))
    return { kind: 'unknown-variant', variantId: entry.variantId }
  return known.length >= COUNTS.reviews.max ? { kind: 'full', most: COUNTS.reviews.max } : null
}

/** How many entries of `before` are missing from `after`, changed or moved; 0 where only something was added at the end. */
export const reviewsLost = (before: Layout, after: Layout): number => {
  const kept = reviewsOf(after)
  if (kept === reviewsOf(before)) return 0
  return reviewsOf(before).filter((entry, index) => {
    const now = kept[index]
    return now !== entry && (now === undefined || canonicalText(now) !== canonicalText(entry))
  }).length
}
