/**
 * The stretch of one body measure that tells best who passes from who does not: inside it lie as many as possible of those who
 * pass and as few as possible of the others.
 */
export interface Separation<Measure extends string> {
  readonly measure: Measure
  /** Lowest and highest value inside, both included, mm or kg; null leaves that side open. */
  readonly from: number | null
  readonly to: number | null
  readonly passingInside: number
  readonly passing: number
  readonly notPassingInside: number
  readonly notPassing: number
  /**
   * Share inside of those who pass minus share inside of the others, 0 … 1; 1 tells them apart without a mistake.
   * Source: Youden's index, sensitivity + specificity − 1 (Cancer 3, 1950; from memory), at its best stretch.
   */
  readonly strength: number
}

/** With fewer people than this on either side any measure may tell them apart by chance. Our judgement. */
export const FEWEST_ON_A_SIDE = 5

/** A stretch closed on both sides must be this much better than one open on a side: it has one more limit to choose. Our judgement. */
const CLOSED_STRETCH_GAIN = 0.05

/** One body measure of everybody, put in order once for many questions. */
export interface RankedMeasure<Measure extends string> {
  readonly measure: Measure
  /** Every value that somebody has, once, rising. */
  readonly values: readonly number[]
  /** For each person the place of their value in `values`: equals stay together, so that a stretch never parts them. */
  readonly rankOf: readonly number[]
}

/** A measure of everybody, in the order of the people, ranked. */
export const rankedMeasure = <Measure extends string>(
  measure: Measure,
  column: readonly number[],
): RankedMeasure<Measure> => {
  const values = [...new Set(column)].sort((a, b) => a - b)
  const rank = new Map(values.map((value, index) => [value, index]))
  return { measure, values, rankOf: column.map((value) => rank.get(value) ?? 0) }
}

/** How many people there are at each rank who pass, and how many who do not. */
interface Counts {
  readonly pass: Uint32Array
  readonly rest: Uint32Array
}

const countsByRank = ({ values, rankOf }: RankedMeasure<string>, passes: readonly boolean[]): Counts => {
  const pass = new Uint32Array(values.length)
  const rest = new Uint32Array(values.length)
  for (let index = 0; index < rankOf.length; index += 1) {
    const rank = rankOf[index] ?? 0
    if (passes[index] === true) pass[rank] = (pass[rank] ?? 0) + 1
    else rest[rank] = (rest[rank] ?? 0) + 1
  }
  return { pass, rest }
}

/** Sum over the ranks from `first` to `last`, both included. */
const countIn = (counts: Uint32Array, first: number, last: number): number => {
  let total = 0
  for (let rank = first; rank <= last; rank += 1) total += counts[rank] ?? 0
  return total
}

interface Stretch {
  readonly first: number
  readonly last: number
  readonly strength: number
}

const NOTHING: Stretch = { first: 0, last: -1, strength: 0 }

const better = (a: Stretch, b: Stretch): Stretch => (b.strength > a.strength ? b : a)

/** Best stretch from the lowest value up, from the highest down, and between any two: running sums of the gains by rank. */
const bestStretch = (gains: Float64Array): Stretch => {
  const last = gains.length - 1
  let open = NOTHING
  let closed = NOTHING
  let fromStart = 0
  let running = 0
  let runningFirst = 0
  for (let index = 0; index < gains.length; index += 1) {
    const gain = gains[index] ?? 0
    fromStart += gain
    open = better(open, { first: 0, last: index, strength: fromStart })
    // All gains add up to nothing, so what lies above is worth the opposite of what lies below.
    if (index < last) open = better(open, { first: index + 1, last, strength: -fromStart })
    if (running <= 0) {
      running = 0
      runningFirst = index
    }
    running += gain
    closed = better(closed, { first: runningFirst, last: index, strength: running })
  }
  return closed.strength > open.strength + CLOSED_STRETCH_GAIN ? closed : open
}

const separationBy = <Measure extends string>(
  ranked: RankedMeasure<Measure>,
  passes: readonly boolean[],
): Separation<Measure> => {
  const { measure, values } = ranked
  const { pass, rest } = countsByRank(ranked, passes)
  const passing = countIn(pass, 0, values.length - 1)
  const notPassing = countIn(rest, 0, values.length - 1)
  const gains = new Float64Array(values.length)
  for (let rank = 0; rank < gains.length; rank += 1)
    gains[rank] = (pass[rank] ?? 0) / passing - (rest[rank] ?? 0) / notPassing
  const { first, last } = bestStretch(gains)
  const passingInside = countIn(pass, first, last)
  const notPassingInside = countIn(rest, first, last)
  return {
    measure,
    from: first === 0 ? null : (values[first] ?? null),
    to: last === values.length - 1 ? null : (values[last] ?? null),
    passingInside,
    passing,
    notPassingInside,
    notPassing,
    // From the counts, so that no rounding of the sums above is in it.
    strength: passingInside / passing - notPassingInside / notPassing,
  }
}

/**
 * The limiting body measure: of all measures the one with the strongest separation; the first named where two are equal. Null with
 * fewer than FEWEST_ON_A_SIDE people who pass or who do not. It says what goes together with failing, not what causes it.
 */
export const limitingMeasure = <Measure extends string>(
  ranked: readonly RankedMeasure<Measure>[],
  passes: readonly boolean[],
): Separation<Measure> | null => {
  const passing = passes.filter(Boolean).length
  if (Math.min(passing, passes.length - passing) < FEWEST_ON_A_SIDE) return null
  let best: Separation<Measure> | null = null
  for (const each of ranked) {
    const found = separationBy(each, passes)
    // Equal but for the rounding of sums is equal: the first named stays.
    if (best === null || found.strength > best.strength + 1e-9) best = found
  }
  return best
}
