import type { QuantityValue } from '../straps/quantity'
import { STRAP_IDS, type StrapId } from '../straps/strap'

/**
 * The length of webbing to order for each strap, mm: the longest `strap-length` over all sittings of a place, since one belt
 * serves everyone who sits there. Straps without a length in any sitting are left out.
 */
export const longestOrderLengths = (
  quantitiesBySitting: readonly (readonly QuantityValue[])[],
): ReadonlyMap<StrapId, number> => {
  const longest = new Map<StrapId, number>()
  for (const { id, subject, value } of quantitiesBySitting.flat()) {
    const strap = STRAP_IDS.find((each) => each === subject)
    if (id !== 'strap-length' || strap === undefined) continue
    longest.set(strap, Math.max(value, longest.get(strap) ?? 0))
  }
  return longest
}
