/** What a variant was when somebody looked at it: `fingerprint` changes with anything that bears on the person who sits there. */
export interface ReviewedVariant {
  /** Empty where the layout had no variants. */
  readonly variantId: string
  readonly name: string
  /** Lower-case hexadecimal (agreement/fingerprint.ts). */
  readonly fingerprint: string
  /** The same of each part, so that it can be said later which of them have changed; left out where nobody kept it. */
  readonly parts?: readonly PartPrint[]
}

/** One part of a drawing as it was: an anchor, a tube, a seat, … and the fingerprint of that part alone. */
export interface PartPrint {
  readonly partId: string
  readonly fingerprint: string
}

interface Said {
  readonly id: string
  /** ISO 8601 calendar date, YYYY-MM-DD. */
  readonly date: string
  /** Never blank. */
  readonly by: string
}

/** A version of the layout, in all its variants, was put before the customer. */
export interface ShownEntry extends Said {
  readonly kind: 'shown'
  readonly to: string
  /** One for each variant that there was, one where there were none. */
  readonly variants: readonly ReviewedVariant[]
}

/** A question or a remark. */
export interface CommentEntry extends Said {
  readonly kind: 'comment'
  readonly shownId: string
  readonly variantId: string
  /** The handle id of the part it is pinned to; empty: about the whole. */
  readonly partId: string
  /** Never blank. */
  readonly text: string
}

/** The customer agrees to one variant, or asks for a change of it. */
export interface DecisionEntry extends Said {
  readonly kind: 'agreed' | 'change-asked'
  readonly shownId: string
  readonly variantId: string
  /** Of what the customer really looked at, worked out on the page that showed it; where it is not the shown one, something came between. */
  readonly fingerprint: string
  /** May be empty. */
  readonly text: string
  /** The ids of rules that order something and were broken, which was said before the customer agreed; left out where there were none. */
  readonly toldBroken?: readonly string[]
}

export type AnswerEntry = CommentEntry | DecisionEntry

/**
 * One thing of the talk with the customer, in the order it was entered; the list is only ever added to. `shown` is a version of the
 * layout put before the customer; the others answer to an earlier one by `shownId`.
 */
export type ReviewEntry = ShownEntry | AnswerEntry
