import {
  type Direction,
  directionBetween,
  directionDot,
  directionLength,
  type PointMm,
} from '../../geometry/point'
import { directionCross, directionScaled, directionSum } from '../../geometry/vector'

/** Below this the directions lie in one plane or nearly: determinant of their normal equations, 1 for three square ones. Our judgement. */
const FLAT = 1e-9

/**
 * How far the position worked out by least squares from tapes to `from` moves at most when every tape is off by 1 mm one way or
 * the other, mm for each mm ≥ 0; Infinity where the tapes lie in one plane or nearly. Formula: with the rows of J the directions
 * away from the places, the move is (JᵀJ)⁻¹Jᵀe, largest over e = ±1 each. Source: least squares, linearised; derived here. Three
 * tapes square to each other give √3.
 */
export const dilutionMmPerMm = (held: PointMm, from: readonly PointMm[]): number => {
  const rows = from.flatMap((point) => directionBetween(point, held) ?? [])
  let a: Direction = { x: 0, y: 0, z: 0 }
  let b = a
  let c = a
  for (const row of rows) {
    a = directionSum(a, row, row.x)
    b = directionSum(b, row, row.y)
    c = directionSum(c, row, row.z)
  }
  const bc = directionCross(b, c)
  const size = directionDot(a, bc)
  if (!(size > FLAT)) return Number.POSITIVE_INFINITY
  // The inverse of a symmetric matrix has the cross products of its columns as columns, over the determinant.
  const ca = directionCross(c, a)
  const ab = directionCross(a, b)
  const moves = rows.map((row) => ({
    x: directionDot(bc, row) / size,
    y: directionDot(ca, row) / size,
    z: directionDot(ab, row) / size,
  }))
  return worstSum(moves)
}

/** The longest sum of the moves, each taken one way or the other. */
const worstSum = ([first, ...others]: readonly Direction[]): number => {
  if (first === undefined) return 0
  let sums: readonly Direction[] = [first]
  for (const move of others)
    sums = sums.flatMap((sum) => [directionSum(sum, move), directionSum(sum, directionScaled(move, -1))])
  return Math.max(...sums.map(directionLength))
}
