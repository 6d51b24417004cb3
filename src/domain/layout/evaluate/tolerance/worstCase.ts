import type { Shares } from './offSitting'

/** A value with the errors that make it; null where there is no value with them. */
export interface Extreme {
  readonly value: number | null
  readonly shares: Shares
}

export interface ExtremeQuestion {
  /** The value with these errors; null when it has none. */
  readonly valueWith: (shares: Shares) => number | null
  readonly count: number
  /** +1: the largest value is wanted, −1: the smallest. */
  readonly sign: 1 | -1
  /** Where to look from besides the drawn position and the corners of the first two errors. */
  readonly starts: readonly Shares[]
}

/** Both ends and the middle first: along one error alone nearly every quantity only rises or only falls. */
const ENDS: readonly number[] = [-1, 1, 0]

/** Then finer steps from where that ends, for quantities with a turning point inside. */
const STEPS: readonly number[] = [0.5, 0.25, 0.125, 0.0625]

const corners = (count: number): readonly Shares[] => {
  const rest = Array.from({ length: Math.max(0, count - 2) }, () => 0)
  if (count < 2) return [Array.from({ length: count }, () => 0)]
  return [
    [0, 0, ...rest],
    [-1, -1, ...rest],
    [-1, 1, ...rest],
    [1, -1, ...rest],
    [1, 1, ...rest],
  ]
}

const withShare = (shares: Shares, index: number, share: number): Shares =>
  shares.map((old, i) => (i === index ? Math.min(1, Math.max(-1, share)) : old))

/** What is tried for one error: its ends, or, once those are done, a step either way from inside. */
const tries = (shares: Shares, index: number, step: number | null): readonly number[] => {
  const now = shares[index] ?? 0
  if (step === null) return ENDS.filter((share) => share !== now)
  return Math.abs(now) < 1 ? [now - step, now + step] : []
}

/** Differences below this are rounding: an error that makes no more of it does not matter. */
const NO_DIFFERENCE = 1e-12

/** Moves one error at a time to where the value is better, until none is. `matters` collects the errors that change the value. */
const climbed = (
  question: ExtremeQuestion,
  start: Extreme,
  step: number | null,
  matters: Set<number>,
): Extreme => {
  const { valueWith, count, sign } = question
  let best = start
  for (let sweep = 0; sweep < 6; sweep += 1) {
    const before = best
    for (let index = 0; index < count; index += 1) {
      if ((sweep > 0 || step !== null) && !matters.has(index)) continue
      for (const share of tries(best.shares, index, step)) {
        if (best.value === null) return best
        const shares = withShare(best.shares, index, share)
        const value = valueWith(shares)
        if (value === null || Math.abs(value - best.value) > NO_DIFFERENCE) matters.add(index)
        if (value === null || sign * value > sign * best.value + NO_DIFFERENCE) best = { value, shares }
      }
    }
    if (best === before) break
  }
  return best
}

/**
 * The largest or smallest value within the errors, found by moving one error at a time to its better end, from the best of the drawn
 * position, the corners of the first two errors and the given places, then in finer steps. Exact where the value only rises or only
 * falls along each error; a set of errors without a value comes before any number.
 */
export const extremeWithin = (question: ExtremeQuestion): Extreme => {
  const { valueWith, count, sign, starts } = question
  let best: Extreme | null = null
  for (const shares of [...corners(count), ...starts]) {
    const value = valueWith(shares)
    if (value === null) return { value, shares }
    if (best?.value == null || sign * value > sign * best.value) best = { value, shares }
  }
  if (best === null) return { value: null, shares: [] }
  const matters = new Set<number>()
  const atEnds = climbed(question, best, null, matters)
  return STEPS.reduce((from, step) => climbed(question, from, step, matters), atEnds)
}
