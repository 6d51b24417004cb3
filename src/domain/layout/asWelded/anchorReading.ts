import type { MeasuredAnchor } from '../../measure/asWeldedRecord'
import { type MeasuredPoint, measuredPoint } from '../../measure/measuredPoint'
import type { Measurement, Readings } from '../../measure/measurement'
import type { MeasureProblem } from '../../measure/measureProblem'
import { type ReadingRange, type Scatter, scatterOf } from '../../measure/scatter'
import { ok, type Result } from '../../result'
import { wrappedDeg } from '../../units/angle'

/** What the readings of one entry say; null for what was not measured. */
export interface AnchorReading {
  readonly entry: MeasuredAnchor
  /** Null too where a way of measuring was picked and nothing read yet. */
  readonly position: Result<MeasuredPoint, MeasureProblem> | null
  /** Turn of a tab's plane in plan, degrees, signed as in the plan; its mean lies from −180 to 180. */
  readonly planDeg: Result<Scatter, MeasureProblem> | null
  /** Lean of a tab's plane, degrees, signed as in the plan. */
  readonly leanDeg: Result<Scatter, MeasureProblem> | null
}

/** Position and tab angles of an entry, worked out from its readings. */
export const anchorReading = (entry: MeasuredAnchor): AnchorReading => ({
  entry,
  position:
    entry.measurement === null || !hasReadings(entry.measurement) ? null : measuredPoint(entry.measurement),
  planDeg: entry.planDeg === undefined ? null : turnOf(entry.planDeg),
  leanDeg: entry.leanDeg === undefined ? null : tabAngle('lean', entry.leanDeg, LEAN),
})

/** Whether anything was read at all: a way of measuring that was only picked says nothing. */
const hasReadings = (measurement: Measurement): boolean => {
  switch (measurement.kind) {
    case 'coordinates':
      return [measurement.xMm, measurement.yMm, measurement.zMm].some(({ length }) => length > 0)
    case 'tapes':
      return [
        ...measurement.tapes.map(({ lengthsMm }) => lengthsMm),
        measurement.coordinate?.readingsMm ?? [],
      ].some(({ length }) => length > 0)
    case 'angle': {
      const { stringDeg, lengthMm, aside } = measurement
      const across = aside.kind === 'y' ? aside.readingsMm : aside.readingsDeg
      return [stringDeg, lengthMm, across].some(({ length }) => length > 0)
    }
  }
}

const LEAN: ReadingRange = { min: -90, max: 90, isLength: false }
const TURN: ReadingRange = { min: -180, max: 180, isLength: false }
/** Half a turn beyond either end, for readings brought to one side of where the turn begins again. */
const UNROLLED: ReadingRange = { min: -540, max: 540, isLength: false }

const tabAngle = (by: 'plan' | 'lean', readings: Readings, range: ReadingRange) =>
  scatterOf({ kind: 'tab-angle', by }, 'deg', readings, range)

/** Readings on both sides of ±180° lie close together, so they are averaged beside the first one. */
const turnOf = (readings: Readings): Result<Scatter, MeasureProblem> => {
  const checked = tabAngle('plan', readings, TURN)
  const [first] = readings
  if (!checked.ok || first === undefined) return checked
  const beside = readings.map((deg) => first + wrappedDeg(deg - first))
  const turned = tabAngle('plan', beside, UNROLLED)
  return turned.ok ? ok({ ...turned.value, mean: wrappedDeg(turned.value.mean) }) : turned
}
