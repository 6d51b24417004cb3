/** Inside diameter, mm; 0 when the wall is at least half the outside diameter: then it is a solid bar. */
const insideDiameterMm = (outsideDiameterMm: number, wallMm: number): number =>
  Math.max(0, outsideDiameterMm - 2 * Math.max(0, wallMm))

/** Cross-section area of a round tube, mm² ≥ 0. Formula: π(D² − d²)/4. Source: area of a ring, any handbook of mechanics. */
export const tubeAreaMm2 = (outsideDiameterMm: number, wallMm: number): number => {
  const outsideMm = Math.max(0, outsideDiameterMm)
  const insideMm = insideDiameterMm(outsideMm, wallMm)
  return (Math.PI * (outsideMm ** 2 - insideMm ** 2)) / 4
}

/**
 * Second moment of area of a round tube about a diameter, mm⁴ ≥ 0.
 * Formula: π(D⁴ − d⁴)/64. Source: second moment of a ring, any handbook of mechanics.
 */
export const tubeSecondMomentMm4 = (outsideDiameterMm: number, wallMm: number): number => {
  const outsideMm = Math.max(0, outsideDiameterMm)
  const insideMm = insideDiameterMm(outsideMm, wallMm)
  return (Math.PI * (outsideMm ** 4 - insideMm ** 4)) / 64
}
