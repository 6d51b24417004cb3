import type { QuantityId } from '../straps/quantity'
import type { StrapFamily } from '../straps/strap'

/** The families of straps that a quantity is measured on; empty for what is of the head or the rest of the person. */
export const quantityFamilies = (id: QuantityId): readonly StrapFamily[] => {
  if (id === 'helmet-clearance' || id === 'body-clearance') return []
  if (id === 'spine-load-share' || id.startsWith('shoulder-')) return ['shoulder']
  if (id.startsWith('lap-')) return ['lap']
  return id.startsWith('sub-') ? ['sub'] : ['shoulder', 'lap', 'sub']
}
