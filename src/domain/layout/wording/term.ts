/** One word explained: where it is from, what it means, what to watch. */
export interface Term {
  readonly word: string
  /** The meaning in a sentence or two. */
  readonly says: string
  /** What goes wrong, or what the number is taken between. */
  readonly watch: string
  /** Whether builders say it anyway, or it has its meaning only here. */
  readonly from: 'trade' | 'here'
  /** Where a fact in it is written and how it reached us; left out where it only says what a word means. */
  readonly source?: string
}
