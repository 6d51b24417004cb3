/** One thing as several variants have it, in their order: null where a variant has no such thing. */
export type Matched<Item> = readonly (Item | null)[]

/**
 * The items of several lists, each beside those of the other lists that are the same thing: equal by the first key, else by the next.
 * Within a list no two items share the first key; an empty key is like no other. In the order in which the things first appear.
 */
export const matched = <Item>(
  lists: readonly (readonly Item[])[],
  keys: readonly ((item: Item) => string)[],
): readonly Matched<Item>[] => {
  const alone: readonly Matched<Item>[] = lists.flatMap((list, at) =>
    list.map((item) => lists.map((_, index) => (index === at ? item : null))),
  )
  return keys.reduce(joinedBy, alone)
}

/** Rows that share a key put together, as long as no list has an item in both. */
const joinedBy = <Item>(
  rows: readonly Matched<Item>[],
  key: (item: Item) => string,
): readonly Matched<Item>[] => {
  const joined: Matched<Item>[] = []
  for (const row of rows) {
    const at = joined.findIndex((other) => sharesKey(other, row, key) && isDisjoint(other, row))
    const partner = joined[at]
    if (partner === undefined) joined.push(row)
    else joined[at] = partner.map((item, index) => item ?? row[index] ?? null)
  }
  return joined
}

const isDisjoint = <Item>(a: Matched<Item>, b: Matched<Item>): boolean =>
  a.every((item, index) => item === null || b[index] === null)

const keysOf = <Item>(row: Matched<Item>, key: (item: Item) => string): readonly string[] =>
  row.flatMap((item) => (item === null ? [] : [key(item)])).filter((text) => text !== '')

const sharesKey = <Item>(a: Matched<Item>, b: Matched<Item>, key: (item: Item) => string): boolean => {
  const own = keysOf(a, key)
  return keysOf(b, key).some((text) => own.includes(text))
}
