import type { VariantLayout } from '../../domain/layout/edit/changeVariants'
import type {
  AnswerEntry,
  CommentEntry,
  DecisionEntry,
  ShownEntry,
} from '../../domain/layout/document/review'

/** What somebody says, before it has an id and belongs to what was shown. */
export type NewAnswer = Omit<CommentEntry, 'id' | 'shownId'> | Omit<DecisionEntry, 'id' | 'shownId'>

/** The talk about one version that was shown; the same on the builder's tablet and on the customer's own device. */
export interface Conversation {
  /** Null on the builder's page while nothing was shown: it can be looked at, but nothing said. */
  readonly shown: ShownEntry | null
  /** As they are on this page, in their order. */
  readonly variants: readonly VariantLayout[]
  /** What was said to it so far, oldest first. */
  readonly said: readonly AnswerEntry[]
  readonly say: (answer: NewAnswer) => void
  /** Takes something back that was not handed over yet; null where what is said is recorded at once. */
  readonly takeBack: ((id: string) => void) | null
  /** Ids of what was handed over. */
  readonly sentIds: readonly string[]
  /** What is being typed, by what it is about; never lost by looking elsewhere. */
  readonly typed: Readonly<Record<string, string>>
  readonly type: (about: string, text: string) => void
  readonly name: string
  readonly setName: (name: string) => void
  /** Why nothing more can be said at all; null when it can. */
  readonly full: string | null
  /** Why nothing can be agreed to now; null when it can. */
  readonly undecidable: string | null
}

/** What comments about one part of one variant are typed under. */
export const typedKey = (variantId: string, partId: string): string => `${variantId}/${partId}`
