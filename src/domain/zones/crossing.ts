/** Halvings and secant steps after which a change of sign is taken as found. Sixty halvings alone exhaust double precision. */
const MOST_STEPS = 80

/** A secant step after which the margin is not this much smaller has met a jump; the bracket is then halved. */
const SMALLER = 0.5

/** Where a line through two places meets 0. */
const zeroOf = (at: number, value: number, other: number, otherValue: number): number =>
  at - (value * (at - other)) / (value - otherValue)

/**
 * Where along a line a margin changes from kept (≥ 0) to broken, as a share from 0 to 1, to `toShare`: the kept end of the last
 * bracket. `first` and `last` are the margins at 0 and 1, one of them kept and one broken. ±Infinity and NaN say kept or broken
 * without a measure; where only the broken side has one, its last two places are carried on.
 * Method: regula falsi with halved weights, every third step a plain halving, and nothing else where the margin is seen to jump.
 * Source: M. Dowell and P. Jarratt, A modified regula falsi method, BIT 11 (1971) 168–174 (from memory).
 */
export const crossingShare = (
  marginAt: (share: number) => number,
  first: number,
  last: number,
  toShare: number,
): number => {
  const isKeptFirst = first >= 0
  let [kept, broken] = isKeptFirst ? [0, 1] : [1, 0]
  let [keptMargin, brokenMargin] = isKeptFirst ? [first, last] : [last, first]
  let before: { readonly at: number; readonly margin: number } | null = null
  let side: 'kept' | 'broken' | null = null
  let isJump = false
  for (let step = 0; step < MOST_STEPS && Math.abs(kept - broken) > toShare; step += 1) {
    let wanted = NaN
    if (step % 3 !== 2 && !isJump && Number.isFinite(brokenMargin)) {
      if (Number.isFinite(keptMargin)) wanted = zeroOf(kept, keptMargin, broken, brokenMargin)
      else if (before !== null) wanted = zeroOf(broken, brokenMargin, before.at, before.margin)
    }
    if (!Number.isFinite(wanted)) wanted = (kept + broken) / 2
    // A quarter of the tolerance inside the bracket: a step that lands on the crossing itself closes it from the other side.
    const low = Math.min(kept, broken) + toShare / 4
    const at = Math.min(Math.max(kept, broken) - toShare / 4, Math.max(low, wanted))
    const margin = marginAt(at)
    if (at === wanted && step < 2)
      isJump = Math.abs(margin) > SMALLER * Math.min(Math.abs(keptMargin), Math.abs(brokenMargin))
    if (margin >= 0) {
      kept = at
      keptMargin = margin
      if (side === 'kept') brokenMargin /= 2
      side = Number.isFinite(margin) ? 'kept' : null
    } else {
      before = { at: broken, margin: brokenMargin }
      broken = at
      brokenMargin = margin
      if (side === 'broken') keptMargin /= 2
      side = 'broken'
    }
  }
  return kept
}
