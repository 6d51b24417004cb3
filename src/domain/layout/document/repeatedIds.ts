import type { Contradiction } from './contradiction'
import type { FieldPath } from './problem'

/** Ids that an earlier item of the same list has already. */
export const repeatedIds = (
  items: readonly { readonly id: string }[],
  path: FieldPath,
  whose = 'this list',
): readonly Contradiction[] =>
  items.flatMap((item, index) => {
    const first = items.findIndex((other) => other.id === item.id)
    if (first === index) return []
    const says = `the id "${item.id}" is already used by item ${first + 1} of ${whose}`
    return [{ path: [...path, index, 'id'], received: item.id, says, remedy: 'Give each its own id.' }]
  })
