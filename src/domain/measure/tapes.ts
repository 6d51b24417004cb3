import { pointDifference, pointDistanceMm, type PointMm } from '../geometry/point'
import { fittedPoints } from '../geometry/sphereFits'
import {
  facing,
  largestAxis,
  type MirroredPlaces,
  placesOf,
  threeTapes,
  twoTapesAndCoordinate,
} from '../geometry/spheres'
import { err, ok, type Result } from '../result'
import type { MeasureProblem, MirrorPair } from './measureProblem'
import { isExact, type TapeObservations } from './observations'
import { missProblem, placingProblem, widestTapes } from './tapeProblems'

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
export const placesThatFit = (observations: TapeObservations): Result<TapePlaces, MeasureProblem> => {
  const problem = placingProblem(observations) ?? missProblem(observations)
  if (problem !== null) return err(problem)
  return ok(isExact(observations) ? exactPlaces(observations) : fittedPlaces(observations))
}

/** The closed form for three observations. Throws with fewer tapes: `placingProblem` finds those. */
export const closedForm = ({ tapes, coordinate }: TapeObservations): MirroredPlaces => {
  const [first, second] = widestTapes(tapes) ?? []
  const third = tapes.find((tape) => tape !== first && tape !== second)
  if (first !== undefined && second !== undefined) {
    if (coordinate !== null) return twoTapesAndCoordinate(first, second, coordinate)
    if (third !== undefined) return threeTapes(first, second, third)
  }
  throw new RangeError(`two tapes and one observation more are needed, there are ${tapes.length} tapes`)
}

const exactPlaces = (observations: TapeObservations): TapePlaces => {
  const { normal, opposite } = placesOf(closedForm(observations))
  const isOne = pointDistanceMm(normal, opposite) <= ONE_PLACE_MM
  return { best: normal, pair: isOne ? null : mirrorPair(normal, opposite, observations) }
}

const mirrorPair = (one: PointMm, other: PointMm, { tapes }: TapeObservations): MirrorPair => {
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
const fittedPlaces = (observations: TapeObservations): TapePlaces => {
  const fits = fittedPoints(observations)
  const best = fits[0]
  if (best === undefined) throw new RangeError('tapes that are well placed start somewhere')
  const other = fits.find(
    ({ point, mostMm }) =>
      pointDistanceMm(point, best.point) > ONE_PLACE_MM && mostMm <= best.mostMm + TOLD_APART_MM,
  )
  return {
    best: best.point,
    pair: other === undefined ? null : mirrorPair(best.point, other.point, observations),
  }
}
