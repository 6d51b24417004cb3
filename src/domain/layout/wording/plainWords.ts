/** One side of a limit in plain words: what is so, and what it can do to the person who sits there. */
export interface PlainFault {
  readonly fact: string
  readonly means: string
}

/**
 * What a rule is about, for somebody who sits in the seat and knows no word of the trade. "You" is whoever sits there. Source of what
 * is said to matter: the reasons of the rules (`why` in rules/sets); the words are ours.
 */
export interface PlainWords {
  /** What is looked at, as a short heading. */
  readonly topic: string
  /** What the number or the word is, so that the picture beside it can be read. */
  readonly number: string
  readonly low: PlainFault
  readonly high: PlainFault
  /** What such rules are for, to follow "so that": a purpose and never a fact about this drawing, because limits differ. */
  readonly aim: string
  /** What it cannot tell. */
  readonly limit: string
}

/** Where nobody but the workshop itself would set a limit on that side. */
export const typedLimit = (fact: string): PlainFault => ({
  fact,
  means: 'We know of no harm in that by itself; the workshop asks for it and can say why.',
})

/** What a rule about something typed is about, for somebody who knows no word of the trade. */
export interface PlainProperty {
  readonly topic: string
  /** What the value beside it is. */
  readonly number: string
  /** What is so and what it means, by the value that was found; a number is `low` or `high`. */
  readonly faults: Readonly<Record<string, PlainFault>>
  /** What such rules are for, to follow "so that". */
  readonly aim: string
  readonly limit: string
}

/** What a typed value cannot tell. */
export const TYPED_ONLY = 'It is as the workshop typed it; look at the label or at the part itself.'

/** Items with the same key together, in the order of the first of each. */
export const grouped = <Item>(
  items: readonly Item[],
  keyOf: (item: Item) => string,
): readonly (readonly Item[])[] => {
  const groups = new Map<string, Item[]>()
  for (const item of items) {
    const group = groups.get(keyOf(item))
    if (group === undefined) groups.set(keyOf(item), [item])
    else group.push(item)
  }
  return [...groups.values()]
}
