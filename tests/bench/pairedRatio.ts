/** Two ways of doing one job timed in turn, so that a drift of the machine's speed falls on both. */
export interface PairedRatio {
  /** Median of first ÷ second over all rounds. */
  readonly median: number
  readonly tenthPercentile: number
  readonly ninetiethPercentile: number
  readonly firstMs: number
  readonly secondMs: number
}

const ROUNDS = 60
const BATCH_MS = 4

const timedMs = (work: () => void, times: number): number => {
  const start = performance.now()
  for (let i = 0; i < times; i += 1) work()
  return (performance.now() - start) / times
}

const batchSize = (work: () => void): number => {
  timedMs(work, 20)
  return Math.max(1, Math.ceil(BATCH_MS / timedMs(work, 5)))
}

export const quantile = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN
}

export const pairedRatio = (first: () => void, second: () => void): PairedRatio => {
  const firstTimes = batchSize(first)
  const secondTimes = batchSize(second)
  const rounds = Array.from({ length: ROUNDS }, (_, round) => {
    if (round % 2 === 0) {
      const a = timedMs(first, firstTimes)
      return { a, b: timedMs(second, secondTimes) }
    }
    const b = timedMs(second, secondTimes)
    return { a: timedMs(first, firstTimes), b }
  })
  const ratios = rounds.map(({ a, b }) => a / b)
  return {
    median: quantile(ratios, 0.5),
    tenthPercentile: quantile(ratios, 0.1),
    ninetiethPercentile: quantile(ratios, 0.9),
    firstMs: quantile(
      rounds.map(({ a }) => a),
      0.5,
    ),
    secondMs: quantile(
      rounds.map(({ b }) => b),
      0.5,
    ),
  }
}
