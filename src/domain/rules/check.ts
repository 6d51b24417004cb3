/** A closed interval; null leaves that side open. */
export interface Interval {
  readonly min: number | null
  readonly max: number | null
}

/**
 * A value this far outside a limit still counts as on it, in the value's own unit: rounding of double precision over the
 * whole chain from drawing to angle, far below anything that can be measured. Our judgement, no source.
 */
export const LIMIT_TOLERANCE = 1e-9

/**
 * How far inside the interval a value lies, in the value's unit: the distance to the nearer limit, 0 on a limit, negative
 * outside. Throws for an interval without limits, which no rule may have, and for a value that is not finite.
 */
export const marginInside = (value: number, { min, max }: Interval): number => {
  if (!Number.isFinite(value)) throw new Error(`cannot check the value ${value}`)
  if (min === null && max === null) throw new Error('an interval without limits checks nothing')
  return Math.min(
    min === null ? Number.POSITIVE_INFINITY : value - min,
    max === null ? Number.POSITIVE_INFINITY : max - value,
  )
}

/** Whether a value is inside the closed interval; limits themselves pass. */
export const isWithin = (value: number, limit: Interval): boolean =>
  marginInside(value, limit) >= -LIMIT_TOLERANCE

/** Whether a word is one of the wanted ones. */
export const isWanted = (word: string, wanted: readonly string[]): boolean => wanted.includes(word)
