import {
  type Direction,
  directionDot,
  directionLength,
  pointDifference,
  pointDistanceMm,
  type PointMm,
  pointSum,
} from './point'
import { directionCross, directionScaled, directionSum } from './vector'
import { axisDirection, type CoordinatePlane, coordinateOf, type TapeSphere } from './spheres'

/** Everything that was measured of one point. */
export interface Observations {
  readonly tapes: readonly TapeSphere[]
  readonly coordinate: CoordinatePlane | null
}

/** By how much each tape, then the coordinate, is shorter than the point asks for: computed less measured, mm. */
export const disagreementsMm = ({ tapes, coordinate }: Observations, point: PointMm): readonly number[] => [
  ...tapes.map((tape) => pointDistanceMm(tape.point, point) - tape.lengthMm),
  ...(coordinate === null ? [] : [coordinateOf(point, coordinate.axis) - coordinate.valueMm]),
]

/** How each observation grows as the point moves: for a tape the direction away from its known point, for a coordinate its axis. */
export const slopes = ({ tapes, coordinate }: Observations, point: PointMm): readonly Direction[] => [
  ...tapes.map((tape) => {
    const away = pointDifference(point, tape.point)
    const lengthMm = directionLength(away)
    // In the known point itself every direction leads away; none is better than another.
    return lengthMm === 0 ? axisDirection('z') : directionScaled(away, 1 / lengthMm)
  }),
  ...(coordinate === null ? [] : [axisDirection(coordinate.axis)]),
]

/** The most by which one observation disagrees with the point, mm ≥ 0. */
export const mostDisagreementMm = (observations: Observations, point: PointMm): number =>
  Math.max(...disagreementsMm(observations, point).map(Math.abs))

/** Sum of the squares of the disagreements, mm². */
export const misfitMm2 = (observations: Observations, point: PointMm): number =>
  disagreementsMm(observations, point).reduce((sum, mm) => sum + mm * mm, 0)

/** A symmetric 3 × 3 matrix by its columns. */
type Columns = readonly [Direction, Direction, Direction]

/**
 * Second derivatives of half the misfit, with `damping` added along the diagonal. Formula: s sᵀ + (e/L)(1 − s sᵀ) for a tape whose
 * slope is s, whose disagreement is e and which is L long to the point; s sᵀ for the coordinate. The second part is what Gauss–Newton
 * leaves out; without it a point near the plane of its known points is not found in hundreds of steps. Derived here.
 */
const curvature = (observations: Observations, point: PointMm, damping: number): Columns => {
  const rows = slopes(observations, point)
  const off = disagreementsMm(observations, point)
  let first: Direction = { x: damping, y: 0, z: 0 }
  let second: Direction = { x: 0, y: damping, z: 0 }
  let third: Direction = { x: 0, y: 0, z: damping }
  for (const [index, row] of rows.entries()) {
    const tape = observations.tapes[index]
    const lengthMm = tape === undefined ? 0 : pointDistanceMm(tape.point, point)
    const bend = lengthMm === 0 ? 0 : (off[index] ?? 0) / lengthMm
    const share = 1 - bend
    first = { ...directionSum(first, row, share * row.x), x: first.x + share * row.x * row.x + bend }
    second = { ...directionSum(second, row, share * row.y), y: second.y + share * row.y * row.y + bend }
    third = { ...directionSum(third, row, share * row.z), z: third.z + share * row.z * row.z + bend }
  }
  return [first, second, third]
}

/** What solves the three equations, by Cramer's rule; null when they have no one solution. */
const solved = ([a, b, c]: Columns, right: Direction): Direction | null => {
  const bc = directionCross(b, c)
  const size = directionDot(a, bc)
  if (size === 0) return null
  return {
    x: directionDot(right, bc) / size,
    y: directionDot(a, directionCross(right, c)) / size,
    z: directionDot(a, directionCross(b, right)) / size,
  }
}

/** Σ s · e over the slopes and what stands beside each. */
const weighted = (rows: readonly Direction[], values: readonly number[]): Direction =>
  rows.reduce((sum, row, index) => directionSum(sum, row, values[index] ?? 0), { x: 0, y: 0, z: 0 })

/** Steps shorter than this have arrived; far below any tape, above the rounding of coordinates of some metres. Our judgement. */
const ARRIVED_MM = 1e-9

/** Far more steps than it takes from any start near the car; the search then stops where it is. Our judgement. */
const MOST_STEPS = 300

/** Damping to start with, and how far it may fall and grow, as shares of a unit slope. Our judgement. */
const DAMPING = { start: 1e-3, least: 1e-12, most: 1e9, faster: 0.1, slower: 10 } as const

/**
 * The point whose disagreements have the least sum of squares, searched from `start`. Newton steps with the exact second derivatives,
 * damped where a full one would make it worse, so that the sum never grows. Source: Levenberg, A method for the solution of certain
 * non-linear problems in least squares, 1944, for the damping (from memory).
 */
export const leastSquaresPoint = (observations: Observations, start: PointMm): PointMm => {
  let point = start
  let misfit = misfitMm2(observations, point)
  let damping: number = DAMPING.start
  for (let step = 0; step < MOST_STEPS && damping <= DAMPING.most; step += 1) {
    const pull = weighted(slopes(observations, point), disagreementsMm(observations, point))
    const move = solved(curvature(observations, point, damping), directionScaled(pull, -1))
    const moved = move === null ? point : pointSum(point, move)
    const after = misfitMm2(observations, moved)
    if (after < misfit) {
      point = moved
      misfit = after
      damping = Math.max(DAMPING.least, damping * DAMPING.faster)
    } else damping *= DAMPING.slower
    if (move !== null && directionLength(move) < ARRIVED_MM) break
  }
  return point
}
