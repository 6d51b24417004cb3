import { pointMm, type PointMm } from '../geometry/point'
import { ok, type Result } from '../result'
import { LARGEST_LENGTH_MM } from '../units/length'
import type { Measurement } from './measurement'
import type { MeasureProblem } from './measureProblem'
import { type Scatter, scatterOf } from './scatter'

/** How far the point moves at worst when the readings are off. */
export interface Sensitivity {
  /** mm that the point moves at most when every length that was read is off by up to 1 mm; 1.7 for three tapes square to each other. */
  readonly mmPerMm: number
  /** mm that it moves at most when every angle that was read is off by up to 1°; null where no angle was read. */
  readonly mmPerDeg: number | null
}

/** Where a measurement says a point is. */
export interface MeasuredPoint {
  readonly point: PointMm
  /** The most by which a tape (or the coordinate beside the tapes) disagrees with the point, mm ≥ 0; null when nothing was read more than once over. */
  readonly residualMm: number | null
  /** The other place that fits the tapes, where there is one. */
  readonly mirror: PointMm | null
  readonly sensitivity: Sensitivity
  /** One for each list of readings, in the order they stand in the measurement. */
  readonly scatters: readonly Scatter[]
}

/** The position that a measurement gives, from the datum, or why it gives none. */
export const measuredPoint = (measurement: Measurement): Result<MeasuredPoint, MeasureProblem> => {
  switch (measurement.kind) {
    case 'coordinates':
      return fromCoordinates(measurement)
    case 'tapes':
    case 'angle':
      throw new RangeError(`a measurement by ${measurement.kind} cannot be read yet`)
  }
}

type Coordinates = Extract<Measurement, { readonly kind: 'coordinates' }>

const COORDINATE_RANGE = { min: -LARGEST_LENGTH_MM, max: LARGEST_LENGTH_MM, isLength: false }

/** Each axis off by 1 mm moves the point by √3 mm: the diagonal of a cube. */
const CUBE_DIAGONAL = Math.sqrt(3)

const fromCoordinates = ({ xMm, yMm, zMm }: Coordinates): Result<MeasuredPoint, MeasureProblem> => {
  const x = scatterOf({ kind: 'coordinate', axis: 'x' }, 'mm', xMm, COORDINATE_RANGE)
  if (!x.ok) return x
  const y = scatterOf({ kind: 'coordinate', axis: 'y' }, 'mm', yMm, COORDINATE_RANGE)
  if (!y.ok) return y
  const z = scatterOf({ kind: 'coordinate', axis: 'z' }, 'mm', zMm, COORDINATE_RANGE)
  if (!z.ok) return z
  return ok({
    point: pointMm(x.value.mean, y.value.mean, z.value.mean),
    residualMm: null,
    mirror: null,
    sensitivity: { mmPerMm: CUBE_DIAGONAL, mmPerDeg: null },
    scatters: [x.value, y.value, z.value],
  })
}
