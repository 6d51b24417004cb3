import type { Direction } from '../../geometry/point'

/** Below this the directions lie in one plane or nearly: determinant of their normal equations, 1 for three square ones. Our judgement. */
const FLAT = 1e-9

/**
 * How far the position worked out by least squares from tapes moves at most when every tape is off by 1 mm one way or the other, mm for
 * each mm ≥ 0, from the directions of the tapes, length 1; Infinity where they lie in one plane or nearly. Three tapes square to each
 * other give √3. Formula: with the directions as the rows of J the move is (JᵀJ)⁻¹Jᵀe, largest over e = ±1 each. Source: least
 * squares, linearised; derived here. In plain numbers, because thousands of sets are compared.
 */
export const worstMoveMmPerMm = (rows: readonly Direction[]): number => {
  let xx = 0
  let xy = 0
  let xz = 0
  let yy = 0
  let yz = 0
  let zz = 0
  for (const { x, y, z } of rows) {
    xx += x * x
    xy += x * y
    xz += x * z
    yy += y * y
    yz += y * z
    zz += z * z
  }
  // The inverse of a symmetric matrix: its cofactors over its determinant.
  const ixx = yy * zz - yz * yz
  const ixy = xz * yz - xy * zz
  const ixz = xy * yz - xz * yy
  const iyy = xx * zz - xz * xz
  const iyz = xy * xz - xx * yz
  const izz = xx * yy - xy * xy
  const size = xx * ixx + xy * ixy + xz * ixz
  if (!(size > FLAT)) return Number.POSITIVE_INFINITY
  const moves = rows.map(({ x, y, z }) => ({
    x: (ixx * x + ixy * y + ixz * z) / size,
    y: (ixy * x + iyy * y + iyz * z) / size,
    z: (ixz * x + iyz * y + izz * z) / size,
  }))
  return longestSum(moves)
}

/** The longest sum of the moves, each taken one way or the other; the first one way only, since all turned round are as long. */
const longestSum = (moves: readonly Direction[]): number => {
  let mostSq = 0
  for (let signs = 0; signs < 2 ** Math.max(0, moves.length - 1); signs += 1) {
    let x = 0
    let y = 0
    let z = 0
    for (const [at, move] of moves.entries()) {
      const sign = (signs >> at) & 1 ? -1 : 1
      x += sign * move.x
      y += sign * move.y
      z += sign * move.z
    }
    mostSq = Math.max(mostSq, x * x + y * y + z * z)
  }
  return Math.sqrt(mostSq)
}
