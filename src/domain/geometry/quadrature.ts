/** A node and its weight on [−1, 1]; the weights of a rule add up to 2. */
export interface QuadratureNode {
  readonly at: number
  readonly weight: number
}

/** The Legendre polynomial of a degree and its derivative. Source: Bonnet's recursion, (k+1)P₊ = (2k+1)xP − kP₋ (from memory). */
const legendre = (degree: number, x: number): { readonly value: number; readonly slope: number } => {
  let before = 1
  let value = x
  for (let k = 1; k < degree; k += 1)
    [before, value] = [value, ((2 * k + 1) * x * value - k * before) / (k + 1)]
  return { value, slope: (degree * (x * value - before)) / (x * x - 1) }
}

/**
 * Gauss–Legendre nodes, `count` ≥ 2: exact for polynomials up to degree 2·count − 1. Each root by Newton from Tricomi's guess;
 * weight 2 / ((1 − x²)·P′²). Source: Abramowitz and Stegun 25.4.29 (from memory).
 */
export const gaussNodes = (count: number): readonly QuadratureNode[] =>
  Array.from({ length: count }, (_, index) => {
    let at = Math.cos((Math.PI * (index + 0.75)) / (count + 0.5))
    for (let step = 0; step < 8; step += 1) {
      const { value, slope } = legendre(count, at)
      at -= value / slope
    }
    const { slope } = legendre(count, at)
    return { at, weight: 2 / ((1 - at * at) * slope * slope) }
  })
