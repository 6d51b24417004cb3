import { pointDistanceMm, type PointMm, pointSum } from '../geometry/point'
import { leastSquaresPoint } from '../geometry/sphereFit'
import { placesOf } from '../geometry/spheres'
import { isExact, type TapeObservations } from './observations'
import { closedForm } from './tapes'

/** How far a point moves at worst when the readings are off. */
export interface Sensitivity {
  /** mm that the point moves at most when every length that was read is off by 1 mm one way or the other; 1.7 for three tapes square to each other. */
  readonly mmPerMm: number
  /** mm that it moves at most when every angle that was read is off by 1° one way or the other; null where no angle was read. */
  readonly mmPerDeg: number | null
}

/**
 * From here on a measurement is bad however carefully it is read: 1 mm in the tapes is 4 mm in the point, while three tapes square
 * to each other make 1.7 mm of it. Our judgement.
 */
export const BAD_MM_PER_MM = 4

/** Angle finders are read to half a degree at best: from here on that alone is 4 mm. Our judgement. */
export const BAD_MM_PER_DEG = 8

/** Whether 1 mm, or 1°, of reading moves the point so far that it should be measured from elsewhere. */
export const isBadlyPlaced = ({ mmPerMm, mmPerDeg }: Sensitivity): boolean =>
  mmPerMm >= BAD_MM_PER_MM || (mmPerDeg ?? 0) >= BAD_MM_PER_DEG

/** Every way that so many readings can each be off by −1 or +1. */
const signsOf = (count: number): readonly (readonly number[])[] =>
  Array.from({ length: 2 ** count }, (_, bits) =>
    Array.from({ length: count }, (__, at) => ((bits >> at) & 1 ? 1 : -1)),
  )

/**
 * How far a point is at most from where it would be with each of `values` off by 1 one way or the other. Looked at by working the
 * whole measurement again, not by slopes: near the plane of the known points those have no bound, the point has. Derived here.
 */
export const worstMoveMm = (
  point: PointMm,
  values: readonly number[],
  pointWith: (values: readonly number[]) => PointMm,
): number =>
  Math.max(
    ...signsOf(values.length).map((signs) =>
      pointDistanceMm(point, pointWith(values.map((value, at) => value + (signs[at] ?? 0)))),
    ),
  )

/** Off the found point in no direction that a car is built along: from the mirror plane itself no search would start. Our judgement. */
const NUDGE = { x: 0.05, y: 0.06, z: 0.07 } as const

/** How far `point`, one of the places that fit the observations, moves at worst for 1 mm in each tape and in the coordinate. */
export const tapeSensitivity = (
  observations: TapeObservations,
  point: PointMm,
  side: 'normal' | 'opposite',
): Sensitivity => {
  const { tapes, coordinate } = observations
  const values = [
    ...tapes.map(({ lengthMm }) => lengthMm),
    ...(coordinate === null ? [] : [coordinate.valueMm]),
  ]
  const mmPerMm = worstMoveMm(point, values, (changed) => {
    const other: TapeObservations = {
      tapes: tapes.map((tape, at) => ({ ...tape, lengthMm: changed[at] ?? tape.lengthMm })),
      coordinate: coordinate && { ...coordinate, valueMm: changed[tapes.length] ?? coordinate.valueMm },
    }
    return isExact(other)
      ? placesOf(closedForm(other))[side]
      : leastSquaresPoint(other, pointSum(point, NUDGE))
  })
  return { mmPerMm, mmPerDeg: null }
}
