import type { PlanePointMm } from './plane'

/**
 * Whether a point lies within a closed outline; on the outline itself either answer may come.
 *
 * Formula: a ray from the point meets the outline an odd number of times. Source: Jordan's curve theorem.
 */
export const isInsideOutline = (outline: readonly PlanePointMm[], { uMm, vMm }: PlanePointMm): boolean => {
  let isInside = false
  let before = outline.at(-1)
  for (const corner of outline) {
    if (before !== undefined && corner.vMm > vMm !== before.vMm > vMm) {
      const atMm = corner.uMm + ((vMm - corner.vMm) / (before.vMm - corner.vMm)) * (before.uMm - corner.uMm)
      if (uMm < atMm) isInside = !isInside
    }
    before = corner
  }
  return isInside
}
