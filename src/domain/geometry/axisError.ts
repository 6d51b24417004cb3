import { gaussNodes } from './quadrature'

/** An error along one axis, never larger than `halfWidth` (> 0) either way, in the axis's unit. */
export interface AxisError {
  /** `even`: any error is as likely as any other. `mostly-small`: normal, standard deviation half of the width, cut at the ends. */
  readonly spread: 'even' | 'mostly-small'
  readonly halfWidth: number
}

/** Widths are two standard deviations. */
const CUT = 2

/**
 * The error function, for |x| ≤ 3. Formula: 2/√π · e^(−x²) · Σ 2ⁿ·x^(2n+1)/(1·3·…·(2n+1)), all terms of one sign.
 * Source: Abramowitz and Stegun 7.1.6 (from memory).
 */
const errorFunction = (x: number): number => {
  let term = x
  let sum = x
  for (let n = 1; Math.abs(term) > 1e-17 && n < 200; n += 1) {
    term *= (2 * x * x) / (2 * n + 1)
    sum += term
  }
  return ((2 / Math.sqrt(Math.PI)) * sum) / Math.exp(x * x)
}

/** Share of the uncut normal distribution within ± CUT standard deviations: 0.954500. */
const WITHIN_CUT = errorFunction(CUT / Math.SQRT2)

/** Chance that an error is at most `error`: 0 at the lower end, 1 at the upper. */
export const errorShare = ({ spread, halfWidth }: AxisError, error: number): number => {
  const share = Math.min(1, Math.max(-1, error / halfWidth))
  return (1 + (spread === 'even' ? share : errorFunction((CUT * share) / Math.SQRT2) / WITHIN_CUT)) / 2
}

/** Chance per unit of error; 0 outside. */
export const errorDensity = ({ spread, halfWidth }: AxisError, error: number): number => {
  const share = error / halfWidth
  if (Math.abs(share) > 1) return 0
  if (spread === 'even') return 0.5 / halfWidth
  return (CUT / halfWidth / Math.sqrt(2 * Math.PI) / WITHIN_CUT) * Math.exp(-((CUT * share) ** 2) / 2)
}

/** Errors that stand for all of an axis, with weights that add up to 1: a Gauss–Legendre rule of `count` nodes. */
export const errorNodes = (
  axis: AxisError,
  count: number,
): readonly { readonly error: number; readonly weight: number }[] => {
  const nodes = gaussNodes(count).map(({ at, weight }) => {
    const error = at * axis.halfWidth
    return { error, weight: weight * errorDensity(axis, error) }
  })
  const sum = nodes.reduce((total, { weight }) => total + weight, 0)
  return nodes.map(({ error, weight }) => ({ error, weight: weight / sum }))
}
