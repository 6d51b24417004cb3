import { pointMm, type PointMm } from '../geometry/point'
import { err, ok, type Result } from '../result'
import { LARGEST_LENGTH_MM } from '../units/length'
import { agreementOf } from './agreement'
import type { KnownPoint, Measurement } from './measurement'
import type { MeasureProblem, ReadingOf } from './measureProblem'
import { type ReadingRange, type Scatter, scatterOf } from './scatter'
import { tapeSensitivity, type Sensitivity } from './sensitivity'
import { stringEnd, stringSensitivity, type StringReading } from './stringPoint'
import { isExact, type Tape, type TapeObservations } from './observations'
import { placesThatFit } from './tapes'

/** Where a measurement says a point is. */
export interface MeasuredPoint {
  readonly point: PointMm
  /**
   * The most by which an averaged tape, or the coordinate beside the tapes, disagrees with the point, mm ≥ 0; null when nothing
   * was measured more than three times over, so that nothing can disagree.
   */
  readonly residualMm: number | null
  /** The one reading that is likely wrong: without it all others agree. Null where that is not so, or cannot be told. */
  readonly oddOneOut: ReadingOf | null
  /** How far a single wrong reading could have moved the point without showing in `residualMm`; null with it, or where there is no bound. */
  readonly hiddenMm: number | null
  /** The other place that fits the tapes, where there is one. */
  readonly mirror: PointMm | null
  readonly sensitivity: Sensitivity
  /** One for each list of readings, in the order they stand in the measurement. */
  readonly scatters: readonly Scatter[]
}

type Kind<Name extends Measurement['kind']> = Extract<Measurement, { readonly kind: Name }>
type Outcome = Result<MeasuredPoint, MeasureProblem>

/** The position that a measurement gives, from the datum, or why it gives none. */
export const measuredPoint = (measurement: Measurement): Outcome => {
  switch (measurement.kind) {
    case 'coordinates':
      return fromCoordinates(measurement)
    case 'tapes':
      return fromTapes(measurement)
    case 'angle':
      return fromString(measurement)
  }
}

const COORDINATE: ReadingRange = { min: -LARGEST_LENGTH_MM, max: LARGEST_LENGTH_MM, isLength: false }
const LENGTH: ReadingRange = { min: 0, max: LARGEST_LENGTH_MM, isLength: true }
const RIGHT_ANGLE: ReadingRange = { min: -90, max: 90, isLength: false }

/** Each axis off by 1 mm moves the point by the diagonal of a cube, √3 mm. */
const CUBE_DIAGONAL = Math.sqrt(3)

const fromCoordinates = ({ xMm, yMm, zMm }: Kind<'coordinates'>): Outcome => {
  const x = scatterOf({ kind: 'coordinate', axis: 'x' }, 'mm', xMm, COORDINATE)
  if (!x.ok) return x
  const y = scatterOf({ kind: 'coordinate', axis: 'y' }, 'mm', yMm, COORDINATE)
  if (!y.ok) return y
  const z = scatterOf({ kind: 'coordinate', axis: 'z' }, 'mm', zMm, COORDINATE)
  if (!z.ok) return z
  return ok({
    point: pointMm(x.value.mean, y.value.mean, z.value.mean),
    ...NOTHING_TO_SPARE,
    mirror: null,
    sensitivity: { mmPerMm: CUBE_DIAGONAL, mmPerDeg: null },
    scatters: [x.value, y.value, z.value],
  })
}

const knownPointProblem = ({ name, point }: KnownPoint): MeasureProblem | null =>
  [point.xMm, point.yMm, point.zMm].every((mm) => Math.abs(mm) <= LARGEST_LENGTH_MM)
    ? null
    : { kind: 'known-point-unusable', name, point }

const fromTapes = ({ tapes, coordinate, side }: Kind<'tapes'>): Outcome => {
  const averaged: Tape[] = []
  const scatters: Scatter[] = []
  for (const [index, { from, lengthsMm }] of tapes.entries()) {
    const problem = knownPointProblem(from)
    if (problem !== null) return err(problem)
    const scatter = scatterOf({ kind: 'tape', index, name: from.name }, 'mm', lengthsMm, LENGTH)
    if (!scatter.ok) return scatter
    averaged.push({ index, name: from.name, point: from.point, lengthMm: scatter.value.mean })
    scatters.push(scatter.value)
  }
  if (coordinate !== null) {
    const of: ReadingOf = { kind: 'coordinate', axis: coordinate.axis }
    const scatter = scatterOf(of, 'mm', coordinate.readingsMm, COORDINATE)
    if (!scatter.ok) return scatter
    scatters.push(scatter.value)
  }
  const valueMm = scatters[tapes.length]?.mean
  const observations: TapeObservations = {
    tapes: averaged,
    coordinate: coordinate === null || valueMm === undefined ? null : { axis: coordinate.axis, valueMm },
  }
  const places = placesThatFit(observations)
  if (!places.ok) return places
  const { best, pair } = places.value
  if (pair !== null && side === null) return err({ kind: 'side-not-chosen', pair })
  const chosen = side ?? 'normal'
  const point = pair === null ? best : pair[chosen]
  return ok({
    point,
    ...agreement(observations, point, scatters),
    mirror: pair === null ? null : pair[chosen === 'normal' ? 'opposite' : 'normal'],
    sensitivity: tapeSensitivity(observations, point, chosen),
    scatters,
  })
}

type Agreeing = Pick<MeasuredPoint, 'residualMm' | 'oddOneOut' | 'hiddenMm'>

/** Three observations always agree with the point they give. */
const NOTHING_TO_SPARE: Agreeing = { residualMm: null, oddOneOut: null, hiddenMm: null }

/** How the observations agree with the point; the scatters stand in their order. */
const agreement = (
  observations: TapeObservations,
  point: PointMm,
  scatters: readonly Scatter[],
): Agreeing => {
  if (isExact(observations)) return NOTHING_TO_SPARE
  const { residualMm, oddOneOut, hiddenMm } = agreementOf(observations, point)
  return { residualMm, hiddenMm, oddOneOut: oddOneOut === null ? null : (scatters[oddOneOut]?.of ?? null) }
}

const fromString = ({ from, stringDeg, lengthMm, runs, aside }: Kind<'angle'>): Outcome => {
  const problem = knownPointProblem(from)
  if (problem !== null) return err(problem)
  const angle = scatterOf({ kind: 'string-angle' }, 'deg', stringDeg, RIGHT_ANGLE)
  if (!angle.ok) return angle
  const length = scatterOf({ kind: 'string-length' }, 'mm', lengthMm, LENGTH)
  if (!length.ok) return length
  const across =
    aside.kind === 'y'
      ? scatterOf({ kind: 'aside', by: 'y' }, 'mm', aside.readingsMm, COORDINATE)
      : scatterOf({ kind: 'aside', by: 'plan' }, 'deg', aside.readingsDeg, RIGHT_ANGLE)
  if (!across.ok) return across
  const { mean } = across.value
  const reading: StringReading = {
    from: from.point,
    stringDeg: angle.value.mean,
    lengthMm: length.value.mean,
    runs,
    aside: aside.kind === 'y' ? { kind: 'y', mm: mean } : { kind: 'plan', deg: mean },
  }
  const end = stringEnd(reading)
  if (!end.ok) return end
  return ok({
    point: end.value,
    ...NOTHING_TO_SPARE,
    mirror: null,
    sensitivity: stringSensitivity(reading),
    scatters: [angle.value, length.value, across.value],
  })
}
