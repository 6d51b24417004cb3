import { expect } from 'vitest'

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

export const expectNear = (point: PointMm, expected: PointMm, withinMm: number): void =>
  expect(pointDistanceMm(point, expected)).toBeLessThanOrEqual(withinMm)

/** Smallest height of a triangle, mm: twice its area (Heron) over its longest side. */
export const smallestHeightMm = ([a, b, c]: readonly [PointMm, PointMm, PointMm]): number => {
  const sides = [pointDistanceMm(a, b), pointDistanceMm(b, c), pointDistanceMm(c, a)] as const
  const half = (sides[0] + sides[1] + sides[2]) / 2
  const square = half * (half - sides[0]) * (half - sides[1]) * (half - sides[2])
  return (2 * Math.sqrt(Math.max(0, square))) / Math.max(...sides)
}

/** How far a point is off the plane of three others, mm: their tetrahedron's height by its determinant. */
export const heightOffMm = (p: PointMm, [a, b, c]: readonly [PointMm, PointMm, PointMm]): number => {
  const u = [b.xMm - a.xMm, b.yMm - a.yMm, b.zMm - a.zMm] as const
  const v = [c.xMm - a.xMm, c.yMm - a.yMm, c.zMm - a.zMm] as const
  const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const
  const volume = (p.xMm - a.xMm) * n[0] + (p.yMm - a.yMm) * n[1] + (p.zMm - a.zMm) * n[2]
  return Math.abs(volume) / Math.hypot(...n)
}
