import type { MeasuredAnchor } from '../../measure/asWeldedRecord'
import { type MeasuredPoint, measuredPoint } from '../../measure/measuredPoint'
import type { Readings } from '../../measure/measurement'
import type { MeasureProblem } from '../../measure/measureProblem'
import { type ReadingRange, type Scatter, scatterOf } from '../../measure/scatter'
import { ok, type Result } from '../../result'

/** What the readings of one entry say; null for what was not measured. */
export interface AnchorReading {
  readonly entry: MeasuredAnchor
  readonly position: Result<MeasuredPoint, MeasureProblem> | null
  /** Turn of a tab's plane in plan, degrees, signed as in the plan; its mean lies from −180 to 180. */
  readonly planDeg: Result<Scatter, MeasureProblem> | null
  /** Lean of a tab's plane, degrees, signed as in the plan. */
  readonly leanDeg: Result<Scatter, MeasureProblem> | null
}

/** Position and tab angles of an entry, worked out from its readings. */
export const anchorReading = (entry: MeasuredAnchor): AnchorReading => ({
  entry,
  position: entry.measurement === null ? null : measuredPoint(entry.measurement),
  planDeg: entry.planDeg === undefined ? null : turnOf(entry.planDeg),
  leanDeg: entry.leanDeg === undefined ? null : tabAngle('lean', entry.leanDeg, LEAN),
})

const LEAN: ReadingRange = { min: -90, max: 90, isLength: false }
const TURN: ReadingRange = { min: -180, max: 180, isLength: false }
/** Half a turn beyond either end, for readings brought to one side of where the turn begins again. */
const UNROLLED: ReadingRange = { min: -540, max: 540, isLength: false }

const tabAngle = (by: 'plan' | 'lean', readings: Readings, range: ReadingRange) =>
  scatterOf({ kind: 'tab-angle', by }, 'deg', readings, range)

/** An angle brought into −180 (left out) to 180 (counted in), degrees. */
export const foldedTurnDeg = (deg: number): number => {
  const rest = ((deg % 360) + 360) % 360
  return rest > 180 ? rest - 360 : rest
}

/** Readings on both sides of ±180° lie close together, so they are averaged beside the first one. */
const turnOf = (readings: Readings): Result<Scatter, MeasureProblem> => {
  const checked = tabAngle('plan', readings, TURN)
  const [first] = readings
  if (!checked.ok || first === undefined) return checked
  const beside = readings.map((deg) => first + foldedTurnDeg(deg - first))
  const turned = tabAngle('plan', beside, UNROLLED)
  return turned.ok ? ok({ ...turned.value, mean: foldedTurnDeg(turned.value.mean) }) : turned
}
