/** One value near a point: `value + Σ slopes·step`. */
export interface LinearValue {
  readonly value: number
  /** Change per unit of each coordinate. */
  readonly slopes: readonly number[]
}

/** Below this a slope or a gain counts as none: rounding of double precision in a tableau of millimetres. Our judgement. */
const NOTHING = 1e-9

/** The tableau of a linear program in the standard form `max c·x, A·x ≤ b, x ≥ 0` with b ≥ 0; each row ends with its b. */
interface Tableau {
  readonly rows: number[][]
  /** Reduced gains of the variables, then of the slacks, then minus the value reached. */
  readonly gains: number[]
  /** The variable that each row stands for. */
  readonly basis: number[]
}

const tableauOf = (rows: readonly (readonly number[])[], gain: readonly number[]): Tableau => ({
  rows: rows.map((row, index) => {
    const slacks = rows.map((_, other) => (other === index ? 1 : 0))
    return [...row.slice(0, -1), ...slacks, row.at(-1) ?? 0]
  }),
  gains: [...gain, ...rows.map(() => 0), 0],
  basis: rows.map((_, index) => gain.length + index),
})

const pivot = ({ rows, gains, basis }: Tableau, at: number, column: number): void => {
  const lead = rows[at]
  const size = lead?.[column]
  if (lead === undefined || size === undefined) return
  for (const [index, entry] of lead.entries()) lead[index] = entry / size
  for (const row of [...rows, gains]) {
    const share = row[column] ?? 0
    if (row === lead || share === 0) continue
    for (const [index, entry] of lead.entries()) row[index] = (row[index] ?? 0) - share * entry
  }
  basis[at] = column
}

/** The row that limits how far a column can grow; the first named where two are equal. Null where nothing does. */
const limitingRow = ({ rows, basis }: Tableau, column: number): number | null => {
  let least: { readonly at: number; readonly ratio: number } | null = null
  for (const [at, row] of rows.entries()) {
    const size = row[column] ?? 0
    if (size <= NOTHING) continue
    const ratio = (row.at(-1) ?? 0) / size
    const isLess = least === null || ratio < least.ratio - NOTHING
    const isFirst =
      least !== null && ratio < least.ratio + NOTHING && (basis[at] ?? 0) < (basis[least.at] ?? 0)
    if (isLess || isFirst) least = { at, ratio }
  }
  return least?.at ?? null
}

/** More turns than this a program of this size never needs; a guard against rounding going round in circles. Our judgement. */
const MOST_PIVOTS = 2_000

/** Solves in place. Source: the simplex method with the rule of the lowest index (Bland 1977), which never cycles; from memory. */
const solve = (tableau: Tableau): void => {
  for (let turn = 0; turn < MOST_PIVOTS; turn += 1) {
    const column = tableau.gains.slice(0, -1).findIndex((gain) => gain > NOTHING)
    if (column < 0) return
    const at = limitingRow(tableau, column)
    if (at === null) return
    pivot(tableau, at, column)
  }
}

/**
 * The step within ± `reach` of each coordinate after which the least of several linear values is largest. No values at all: no step.
 * The least value t and the steps are moved so that all are ≥ 0 and "no step down to −reach" is a beginning that keeps everything:
 * with d = d′ − reach and t = t′ + t₀, t′ − g·d′ ≤ value − g·reach − t₀, where t₀ is the least that any value can come to.
 * Source: the usual turning of a max-min of linear functions into a linear program; derived here.
 */
export const maximinStep = (values: readonly LinearValue[], reach: readonly number[]): readonly number[] => {
  if (values.length === 0) return reach.map(() => 0)
  const dot = (slopes: readonly number[], of: (size: number, slope: number) => number): number =>
    reach.reduce((sum, size, index) => sum + of(size, slopes[index] ?? 0), 0)
  const lowest = Math.min(
    ...values.map(({ value, slopes }) => value - dot(slopes, (size, slope) => size * Math.abs(slope))),
  )
  const limits = values.map(({ value, slopes }) => [
    ...reach.map((_, index) => 0 - (slopes[index] ?? 0)),
    1,
    Math.max(0, value - dot(slopes, (size, slope) => size * slope) - lowest),
  ])
  const bounds = reach.map((size, index) => [
    ...reach.map((_, other) => (other === index ? 1 : 0)),
    0,
    2 * size,
  ])
  const tableau = tableauOf([...limits, ...bounds], [...reach.map(() => 0), 1])
  solve(tableau)
  return reach.map((size, index) => {
    const at = tableau.basis.indexOf(index)
    const moved = at < 0 ? 0 : (tableau.rows[at]?.at(-1) ?? 0)
    return Math.min(size, Math.max(-size, moved - size))
  })
}
