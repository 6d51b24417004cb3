import { directionLength, pointDifference, type PointMm, pointSum } from './point'
import { leastSquaresPoint, mostDisagreementMm, misfitMm2, type Observations } from './sphereFit'
import { axisDirection, type Axis, type TapeSphere, threeTapes, twoTapesAndCoordinate } from './spheres'
import { directionScaled, squareTo } from './vector'

/** Known points no further than this off one line lie in it. Our judgement. */
export const IN_LINE_MM = 1

/** Every two of the tapes, in their order. */
export const pairsOf = <End extends TapeSphere>(tapes: readonly End[]): readonly (readonly [End, End])[] =>
  tapes.flatMap((first, at) => tapes.slice(at + 1).map((second) => [first, second] as const))

/** How far the known point of a third tape is off the line through those of two others, mm ≥ 0. */
export const offLineMm = (first: TapeSphere, second: TapeSphere, third: TapeSphere): number => {
  const apart = pointDifference(second.point, first.point)
  const along = directionScaled(apart, 1 / directionLength(apart))
  return directionLength(squareTo(along, pointDifference(third.point, first.point)))
}

/** How far the known points of two tapes are from lying along an axis, mm ≥ 0. */
export const offAxisMm = (first: TapeSphere, second: TapeSphere, axis: Axis): number =>
  directionLength(squareTo(axisDirection(axis), pointDifference(second.point, first.point)))

/** A place where the disagreements have a least sum of squares, for points around it. */
export interface Fit {
  readonly point: PointMm
  readonly misfitMm2: number
  /** The most by which one observation disagrees with it, mm ≥ 0. */
  readonly mostMm: number
}

/**
 * Every place that the searches from all closed forms end in, best first; many of them are the same place. None when no three
 * observations are well placed.
 */
export const fittedPoints = (observations: Observations): readonly Fit[] =>
  startingPlaces(observations)
    .map((start) => leastSquaresPoint(observations, start))
    .map((point) => ({
      point,
      misfitMm2: misfitMm2(observations, point),
      mostMm: mostDisagreementMm(observations, point),
    }))
    .toSorted((a, b) => a.misfitMm2 - b.misfitMm2)

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
