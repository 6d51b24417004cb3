import { type Direction, directionDot, directionLength, type PointMm } from '../geometry/point'
import { disagreementsMm, leastSquaresPoint, mostDisagreementMm, slopes } from '../geometry/sphereFit'
import { directionCross, directionScaled, directionSum } from '../geometry/vector'
import type { TapeObservations } from './observations'

/** Observations that disagree with the point by more than this are worth another look: what tapes are read to, with some to spare. Our judgement. */
export const DISAGREE_MM = 3

/** How well more observations than a point needs agree with it. */
export interface Agreement {
  /** The most by which one observation disagrees with the point, mm ≥ 0. */
  readonly residualMm: number
  /**
   * The one observation, counted over the tapes and then the coordinate, without which all others agree; null where they agree as it is,
   * where leaving out any one does not mend it, or where several would: with a single observation to spare it can never be told.
   */
  readonly oddOneOut: number | null
  /**
   * How far a single wrong reading could have moved the point, mm, and still leave every disagreement within `DISAGREE_MM`; null where
   * there is one that could be wrong by anything. From slopes at the point.
   */
  readonly hiddenMm: number | null
}

/** How four observations or more agree with the point that fits them best. */
export const agreementOf = (observations: TapeObservations, point: PointMm): Agreement => {
  const residualMm = Math.max(...disagreementsMm(observations, point).map(Math.abs))
  return {
    residualMm,
    oddOneOut: residualMm <= DISAGREE_MM ? null : oddOneOut(observations, point),
    hiddenMm: hiddenMm(observations, point),
  }
}

/** The observations without one of them. */
const without = ({ tapes, coordinate }: TapeObservations, index: number): TapeObservations =>
  index === tapes.length
    ? { tapes, coordinate: null }
    : { tapes: tapes.filter((_, at) => at !== index), coordinate }

/**
 * Leaves out each in turn: a wrong one among others that are right shows in that the rest agree without it. The size of its own
 * disagreement shows nothing, since the fit leans toward it; with four observations all four are always in the same proportion.
 */
const oddOneOut = (observations: TapeObservations, point: PointMm): number | null => {
  const count = observations.tapes.length + (observations.coordinate === null ? 0 : 1)
  // Four without one are three, which agree whatever they are.
  if (count < 5) return null
  const mending = Array.from({ length: count }, (_, index) => index).filter((index) => {
    const rest = without(observations, index)
    return mostDisagreementMm(rest, leastSquaresPoint(rest, point)) <= DISAGREE_MM
  })
  const [only] = mending
  return mending.length === 1 && only !== undefined ? only : null
}

/** A determinant of unit slopes below this has no inverse worth anything: they lie in a plane to 0.1 %. Our judgement. */
const NO_VOLUME = 1e-6

/** A wrong reading that shows in no disagreement by more than this share of itself does not show. Our judgement. */
const NO_SHARE = 1e-3

/**
 * With slopes s, N = Σ s sᵀ and gᵢ = N⁻¹ sᵢ, an error b of observation i moves the point by gᵢ·b and changes disagreement j by (sⱼ·gᵢ − δ)·b.
 * Source: external reliability as in adjustment of geodetic networks (Baarda, A testing procedure for use in geodetic networks, 1968, from memory).
 */
const hiddenMm = (observations: TapeObservations, point: PointMm): number | null => {
  const rows = slopes(observations, point)
  const zero: Direction = { x: 0, y: 0, z: 0 }
  const column = (axis: 'x' | 'y' | 'z'): Direction =>
    rows.reduce((sum, row) => directionSum(sum, row, row[axis]), zero)
  const [a, b, c] = [column('x'), column('y'), column('z')]
  const size = directionDot(a, directionCross(b, c))
  if (size < NO_VOLUME) return null
  const inverse = [directionCross(b, c), directionCross(c, a), directionCross(a, b)].map((each) =>
    directionScaled(each, 1 / size),
  )
  const hidden = rows.map((row, index) => {
    const [x = 0, y = 0, z = 0] = inverse.map((each) => directionDot(each, row))
    const move: Direction = { x, y, z }
    const shows = Math.max(
      ...rows.map((other, at) => Math.abs(directionDot(other, move) - (at === index ? 1 : 0))),
    )
    return shows < NO_SHARE ? null : (directionLength(move) * DISAGREE_MM) / shows
  })
  return hidden.reduce<number | null>(
    (most, each) => (most === null || each === null ? null : Math.max(most, each)),
    0,
  )
}
