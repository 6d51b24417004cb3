import { pointDistanceMm, pointMm, type PointMm } from '../../../src/domain/geometry/point'
import type { KnownCoordinate, Measurement, TapeReading } from '../../../src/domain/measure/measurement'
import { measuredPoint, type MeasuredPoint } from '../../../src/domain/measure/measuredPoint'
import type { MeasureProblem } from '../../../src/domain/measure/measureProblem'

export type Triple = readonly [number, number, number]

export const at = ([x, y, z]: Triple): PointMm => pointMm(x, y, z)

export const triple = ({ xMm, yMm, zMm }: PointMm): Triple => [xMm, yMm, zMm]

/** Tapes from points that are named A, B, C … in their order. */
export const tapesFrom = (ends: readonly (readonly [Triple, ...number[]])[]): readonly TapeReading[] =>
  ends.map(([from, ...lengthsMm], index) => ({
    from: { name: String.fromCodePoint(65 + index), point: at(from) },
    lengthsMm,
  }))

export const byTapes = (
  tapes: readonly TapeReading[],
  side: 'normal' | 'opposite' | null = null,
  coordinate: KnownCoordinate | null = null,
): Measurement => ({ kind: 'tapes', tapes, coordinate, side })

/** Tapes to `target` from every one of the points, read exactly. */
export const exactTapes = (from: readonly PointMm[], target: PointMm): readonly TapeReading[] =>
  from.map((point, index) => ({
    from: { name: String.fromCodePoint(65 + index), point },
    lengthsMm: [pointDistanceMm(point, target)],
  }))

export const found = (measurement: Measurement): MeasuredPoint => {
  const result = measuredPoint(measurement)
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

export const refused = (measurement: Measurement): MeasureProblem => {
  const result = measuredPoint(measurement)
  if (result.ok) throw new Error(`found ${JSON.stringify(result.value.point)}`)
  return result.error
}
