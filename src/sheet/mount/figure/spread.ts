/**
 * Positions as near as possible to the wanted ones with at least `gapMm` between neighbours, all within the range; in the given
 * order, which must be ascending. Null when they cannot all fit.
 *
 * Least squares under an ordering: pool adjacent violators. Source: isotonic regression, textbook method.
 */
export const spread = (
  wanted: readonly number[],
  gapMm: number,
  range: { readonly fromMm: number; readonly toMm: number },
): readonly number[] | null => {
  if (wanted.length === 0) return []
  const spanMm = (wanted.length - 1) * gapMm
  if (spanMm > range.toMm - range.fromMm) return null
  // Without the gaps the task is to find the nearest ascending sequence.
  const pools: { sumMm: number; count: number }[] = []
  for (const [index, positionMm] of wanted.entries()) {
    pools.push({ sumMm: positionMm - index * gapMm, count: 1 })
    mergeTail(pools)
  }
  const mostMm = range.toMm - spanMm
  const levels = pools.flatMap(({ sumMm, count }) =>
    Array.from({ length: count }, () => Math.min(mostMm, Math.max(range.fromMm, sumMm / count))),
  )
  return levels.map((levelMm, index) => levelMm + index * gapMm)
}

const mergeTail = (pools: { sumMm: number; count: number }[]): void => {
  for (;;) {
    const last = pools.at(-1)
    const before = pools.at(-2)
    if (last === undefined || before === undefined || before.sumMm / before.count <= last.sumMm / last.count)
      return
    pools.splice(-2, 2, { sumMm: before.sumMm + last.sumMm, count: before.count + last.count })
  }
}
