import type { QuantityId, Subject } from '../../straps/quantity'
import type { SolvedSitting } from './solvedSittings'

/** The values of one quantity of one subject in the order of the sittings; null where it could not be computed. */
type Column = readonly (number | null)[]

/** Every number of a place over its sittings. */
type PlaceNumbers = ReadonlyMap<QuantityId, ReadonlyMap<Subject, Column>>

const numbersOf = (sittings: readonly SolvedSitting[]): PlaceNumbers => {
  const all = new Map<QuantityId, Map<Subject, (number | null)[]>>()
  for (const [index, { solved }] of sittings.entries())
    for (const { id, subject, value } of solved.quantities) {
      const columns = all.get(id) ?? new Map<Subject, (number | null)[]>()
      all.set(id, columns)
      let column = columns.get(subject)
      if (column === undefined) {
        column = sittings.map(() => null)
        columns.set(subject, column)
      }
      // The first of a name counts, as for whoever looks through the list.
      column[index] ??= value
    }
  return all
}

/** By the list of sittings itself, which never changes once it is made. */
const known = new WeakMap<readonly SolvedSitting[], PlaceNumbers>()

/**
 * The values of one quantity of one subject, one for each sitting, in their order; null where it could not be computed. All numbers
 * of the sittings are sorted once, so that many questions about many sittings cost no search each.
 */
export const valuesOf = (
  sittings: readonly SolvedSitting[],
  quantity: QuantityId,
  subject: Subject,
): Column => {
  const found = known.get(sittings) ?? numbersOf(sittings)
  known.set(sittings, found)
  return found.get(quantity)?.get(subject) ?? sittings.map(() => null)
}
