import type { QuantityId } from '../../straps/quantity'
import { PLAIN_FITTINGS } from './plainFittings'
import { PLAIN_CROTCH, PLAIN_LAP } from './plainLapAndCrotch'
import { PLAIN_SHOULDER } from './plainShoulder'
import type { PlainWords } from './plainWords'

const QUANTITIES: Readonly<Record<QuantityId, PlainWords>> = {
  ...PLAIN_SHOULDER,
  ...PLAIN_LAP,
  ...PLAIN_CROTCH,
  ...PLAIN_FITTINGS,
}

/** What a computed number is about, for somebody who knows no word of the trade. */
export const plainQuantity = (id: QuantityId): PlainWords => QUANTITIES[id]
