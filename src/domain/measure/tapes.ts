import { pointDifference, pointDistanceMm, type PointMm, pointSum } from '../geometry/point'
import { err, ok, type Result } from '../result'
import { disagreementsMm, leastSquaresPoint, misfitMm2, type Observations } from './leastSquares'
import type { MeasureProblem, MirrorPair } from './measureProblem'
import {
  facing,
  largestAxis,
  type MirroredPlaces,
  placesOf,
  threeTapes,
  twoTapesAndCoordinate,
} from './spheres'
import {
  IN_LINE_MM,
  isExact,
  missProblem,
  offAxisMm,
  offLineMm,
  pairsOf,
  placingProblem,
  widestTapes,
} from './tapeProblems'

/** Where tapes say a point is, before it is told which side of the mirror is meant. */
export interface TapePlaces {
  readonly best: PointMm
  /** The other place that fits; null where one of the tapes or the coordinate tells them apart, or where both are one. */
  readonly pair: MirrorPair | null
}

/** Two places no further apart than this are one: what a tape is read to. Our judgement. */
const ONE_PLACE_MM = 0.1

/**
 * The mirrored place is out when some reading disagrees with it by this much more than any does with the better one: several
 * times what a tape may be read wrong by. Otherwise the builder is asked. Our judgement.
 */
const TOLD_APART_MM = 10

/** The place or places that fit tapes and a coordinate, three observations or more. */
export const tapePlaces = (observations: Observations): Result<TapePlaces, MeasureProblem> => {
  const problem = placingProblem(observations) ?? missProblem(observations)
  if (problem !== null) return err(problem)
  return ok(isExact(observations) ? exactPlaces(observations) : fittedPlaces(observations))
}

/** The closed form for three observations. Throws with fewer tapes: `placingProblem` finds those. */
export const closedForm = ({ tapes, coordinate }: Observations): MirroredPlaces => {
  const [first, second] = widestTapes(tapes) ?? []
  const third = tapes.find((tape) => tape !== first && tape !== second)
  if (first !== undefined && second !== undefined) {
    if (coordinate !== null) return twoTapesAndCoordinate(first, second, coordinate)
    if (third !== undefined) return threeTapes(first, second, third)
  }
  throw new RangeError(`two tapes and one observation more are needed, there are ${tapes.length} tapes`)
}

const exactPlaces = (observations: Observations): TapePlaces => {
  const { normal, opposite } = placesOf(closedForm(observations))
  const isOne = pointDistanceMm(normal, opposite) <= ONE_PLACE_MM
  return { best: normal, pair: isOne ? null : mirrorPair(normal, opposite, observations) }
}

const mirrorPair = (one: PointMm, other: PointMm, { tapes }: Observations): MirrorPair => {
  const across = pointDifference(one, other)
  const normal = facing(across)
  const faces = normal === across
  return {
    normal: faces ? one : other,
    opposite: faces ? other : one,
    normalFaces: largestAxis(normal),
    through: tapes.map(({ index, name }) => ({ index, name })),
  }
}

/** The best fit to more than three observations, and the next best place where it fits nearly as well. */
const fittedPlaces = (observations: Observations): TapePlaces => {
  const fitted = startingPlaces(observations)
    .map((start) => leastSquaresPoint(observations, start))
    .map((point) => ({ point, misfitMm2: misfitMm2(observations, point) }))
    .toSorted((a, b) => a.misfitMm2 - b.misfitMm2)
  const best = fitted[0]?.point
  if (best === undefined) throw new RangeError('tapes that are well placed start somewhere')
  const mostMm = mostDisagreementMm(observations, best) + TOLD_APART_MM
  const other = fitted.find(
    ({ point }) =>
      pointDistanceMm(point, best) > ONE_PLACE_MM && mostDisagreementMm(observations, point) <= mostMm,
  )
  return { best, pair: other === undefined ? null : mirrorPair(best, other.point, observations) }
}

const mostDisagreementMm = (observations: Observations, point: PointMm): number =>
  Math.max(...disagreementsMm(observations, point).map(Math.abs))

/** How far off the mirror plane a search starts at least: in it there is no way out, since both sides are alike. Our judgement. */
const OFF_MIRROR_MM = 10

/** Both places of every three observations that have a closed form: the best fit lies near one of them. */
const startingPlaces = ({ tapes, coordinate }: Observations): readonly PointMm[] => {
  const pairs = pairsOf(tapes)
  const byCoordinate = pairs.flatMap(([first, second]) =>
    coordinate === null || offAxisMm(first, second, coordinate.axis) <= IN_LINE_MM
      ? []
      : [twoTapesAndCoordinate(first, second, coordinate)],
  )
  const byTapes = pairs.flatMap(([first, second]) =>
    tapes
      .slice(tapes.indexOf(second) + 1)
      .flatMap((third) =>
        offLineMm(first, second, third) <= IN_LINE_MM ? [] : [threeTapes(first, second, third)],
      ),
  )
  return [...byTapes, ...byCoordinate].flatMap(({ foot, normal, heightSqMm2 }) => {
    const heightMm = Math.sqrt(Math.max(OFF_MIRROR_MM ** 2, heightSqMm2))
    return [pointSum(foot, normal, heightMm), pointSum(foot, normal, -heightMm)]
  })
}
