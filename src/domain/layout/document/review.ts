/** What a variant was when somebody looked at it: `fingerprint` changes with anything that bears on the person who sits there. */
export interface ReviewedVariant {
  /** Empty where the layout had no variants. */
  readonly variantId: string
  readonly name: string
  /** Lower-case hexadecimal. */
  readonly fingerprint: string
}

interface Said {
  readonly id: string
  /** ISO 8601 calendar date, YYYY-MM-DD. */
  readonly date: string
  readonly by: string
}

/**
 * One thing of the talk with the customer, in the order it happened; the list is only ever added to. `shown` is a version of the layout
 * put before the customer; the others answer to it by `shownId`.
 */
export type ReviewEntry =
  | (Said & { readonly kind: 'shown'; readonly to: string; readonly variants: readonly ReviewedVariant[] })
  | (Said & {
      readonly kind: 'comment'
      readonly shownId: string
      readonly variantId: string
      /** The handle id of the part it is pinned to; empty: about the whole. */
      readonly partId: string
      readonly text: string
    })
  | (Said & {
      readonly kind: 'agreed' | 'change-asked'
      readonly shownId: string
      readonly variantId: string
      readonly text: string
    })
