import { dot, minus, norm, plus, times, type Vector } from './vector'

/** A flat opening: the points origin + u·across + v·up with u and v in their ranges (`across` and `up` square, of length 1). */
export interface Opening {
  readonly origin: Vector
  readonly across: Vector
  readonly up: Vector
  readonly low: readonly [number, number]
  readonly high: readonly [number, number]
  /** The rim: only a half-plane, met where it lies between the ends. */
  readonly isOpenAbove?: true
}

export const openingPoint = (opening: Opening, u: number, v: number): Vector =>
  plus(plus(opening.origin, opening.across, u), opening.up, v)

const within = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value))

/** Where the line through two points meets the plane of an opening, in the opening's own coordinates, and at which share of the way. */
export const crossing = (
  opening: Opening,
  from: Vector,
  to: Vector,
): { u: number; v: number; share: number } => {
  const { origin, across, up } = opening
  const normal: Vector = [
    across[1] * up[2] - across[2] * up[1],
    across[2] * up[0] - across[0] * up[2],
    across[0] * up[1] - across[1] * up[0],
  ]
  const run = minus(to, from)
  const share = dot(minus(origin, from), normal) / dot(run, normal)
  const at = minus(plus(from, run, share), origin)
  return { u: dot(at, across), v: dot(at, up), share }
}

export const isInside = ({ low, high }: Opening, u: number, v: number): boolean =>
  u >= low[0] && u <= high[0] && v >= low[1] && v <= high[1]

interface Slope {
  readonly length: number
  readonly gradient: number[]
  readonly curvature: number[][]
}

const pointsAt = (openings: readonly Opening[], x: readonly number[]): readonly Vector[] =>
  openings.map((opening, i) => openingPoint(opening, x[2 * i] ?? 0, x[2 * i + 1] ?? 0))

const chainLength = (points: readonly Vector[]): number =>
  points.reduce((sum, point, i) => sum + (i === 0 ? 0 : norm(minus(point, points[i - 1] ?? point))), 0)

const zeros = (size: number): number[] => Array.from({ length: size }, () => 0)

/** Length of the chain with its first and second derivatives by the coordinates of the inner points. */
const slopeAt = (start: Vector, openings: readonly Opening[], end: Vector, x: readonly number[]): Slope => {
  const points = [start, ...pointsAt(openings, x), end]
  const size = x.length
  const gradient = zeros(size)
  const curvature = Array.from({ length: size }, () => zeros(size))
  const axes = openings.flatMap(({ across, up }) => [across, up])
  for (let piece = 0; piece + 1 < points.length; piece += 1) {
    const run = minus(points[piece + 1] ?? start, points[piece] ?? start)
    const length = norm(run)
    const along = times(run, 1 / length)
    // The piece's end `piece` moves with variables 2(piece − 1) and +1, its other end with 2·piece and +1.
    const first = Math.max(0, 2 * piece - 2)
    const last = Math.min(size, 2 * piece + 2)
    for (let index = first; index < last; index += 1) {
      const axis = axes[index] ?? along
      const sign = index < 2 * piece ? -1 : 1
      const share = dot(along, axis)
      gradient[index] = (gradient[index] ?? 0) + sign * share
      const row = curvature[index] ?? []
      for (let other = first; other < last; other += 1) {
        const second = axes[other] ?? along
        const square = dot(axis, second) - share * dot(along, second)
        row[other] = (row[other] ?? 0) + ((other < 2 * piece ? -sign : sign) * square) / length
      }
    }
  }
  return { length: chainLength(points), gradient, curvature }
}

/** Solves a small symmetric system by Gaussian elimination with pivots. */
const solved = (matrix: readonly (readonly number[])[], right: readonly number[]): number[] => {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0])
  const size = rows.length
  for (let column = 0; column < size; column += 1) {
    let pivot = column
    for (let row = column + 1; row < size; row += 1)
      if (Math.abs(rows[row]?.[column] ?? 0) > Math.abs(rows[pivot]?.[column] ?? 0)) pivot = row
    const top = rows[pivot] ?? []
    rows[pivot] = rows[column] ?? []
    rows[column] = top
    for (let row = 0; row < size; row += 1) {
      const line = rows[row]
      if (row === column || line === undefined) continue
      const factor = (line[column] ?? 0) / (top[column] ?? 1)
      for (let k = column; k <= size; k += 1) line[k] = (line[k] ?? 0) - factor * (top[k] ?? 0)
    }
  }
  return rows.map((row, i) => (row[size] ?? 0) / (row[i] ?? 1))
}

/** Pull along the opening below which a point counts as at rest; the pull of the strap is 1. */
const AT_REST = 1e-12

/**
 * The shortest chain start → one point of each opening → end: projected Newton steps on a convex function with bounds
 * (Bertsekas 1982, SIAM J. Control Optim. 20, from memory). Returns the points and the variables to start the next search from.
 */
export const shortestChain = (
  start: Vector,
  openings: readonly Opening[],
  end: Vector,
  from: readonly number[],
): { readonly points: readonly Vector[]; readonly x: readonly number[]; readonly length: number } => {
  const low = openings.flatMap((opening) => opening.low)
  const high = openings.flatMap((opening) => opening.high)
  const clamped = (x: readonly number[]): number[] =>
    x.map((value, i) => within(value, low[i] ?? value, high[i] ?? value))
  let x = clamped(from)
  for (let round = 0; round < 100; round += 1) {
    const { length, gradient, curvature } = slopeAt(start, openings, end, x)
    const free = x.flatMap((value, i) => {
      const pull = -(gradient[i] ?? 0)
      const isHeld = (value >= (high[i] ?? 0) && pull >= 0) || (value <= (low[i] ?? 0) && pull <= 0)
      return isHeld ? [] : [i]
    })
    if (free.every((i) => Math.abs(gradient[i] ?? 0) < AT_REST)) break
    const step = solved(
      free.map((i) => free.map((j) => (curvature[i]?.[j] ?? 0) + (i === j ? 1e-13 : 0))),
      free.map((i) => -(gradient[i] ?? 0)),
    )
    const lengthAt = (tried: readonly number[]): number =>
      chainLength([start, ...pointsAt(openings, tried), end])
    const next = steppedDown(x, free, step, clamped, length, lengthAt)
    // Bounds can turn a Newton step uphill; straight down the slope is never uphill.
    const slope = free.map((i) => -100 * (gradient[i] ?? 0))
    const found = isSame(next, x) ? steppedDown(x, free, slope, clamped, length, lengthAt) : next
    if (isSame(found, x)) break
    x = found
  }
  const points = pointsAt(openings, x)
  return { points, x, length: chainLength([start, ...points, end]) }
}

const isSame = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((value, i) => Math.abs(value - (b[i] ?? 0)) < 1e-12)

/** The longest of the halved steps that does not lengthen the chain. */
const steppedDown = (
  x: readonly number[],
  free: readonly number[],
  step: readonly number[],
  clamped: (x: readonly number[]) => number[],
  length: number,
  lengthAt: (x: readonly number[]) => number,
): number[] => {
  for (let share = 1; share > 1e-9; share /= 2) {
    const tried = [...x]
    free.forEach((index, k) => {
      tried[index] = (x[index] ?? 0) + share * (step[k] ?? 0)
    })
    const next = clamped(tried)
    if (lengthAt(next) <= length * (1 + 1e-15)) return next
  }
  return [...x]
}
