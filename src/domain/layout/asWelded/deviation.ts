import { pointDifference, pointDistanceMm, type PointMm } from '../../geometry/point'
import type { Tube } from '../../geometry/tube'
import type { AsWeldedRecord } from '../../measure/asWeldedRecord'
import type { Scatter } from '../../measure/scatter'
import { LIMIT_TOLERANCE } from '../../rules/check'
import type { WeldTolerance } from '../../rules/tolerance'
import type { TabMount } from '../../straps/anchor'
import type { Layout } from '../document/layout'
import { type AnchorReading, anchorReading } from './anchorReading'
import { measuredPlane, planeOff } from './measuredPlane'
import { plannedHeldPoint } from './plannedHeld'
import { angleReadOff, uncertaintyMm } from './uncertainty'

/** What can be said of one deviation; `no-tolerance`: nobody has typed what is allowed. */
export type DeviationVerdict = 'within' | 'outside' | 'cannot-be-told' | 'no-tolerance'

/** One deviation from the plan, in mm or degrees. */
export interface Deviation {
  /** Measured less planned, signed as in the plan. */
  readonly off: number
  /** How far off the measurement itself may be, either way, ≥ 0; null when that has no bound. */
  readonly uncertainty: number | null
  /** Plus or minus, as typed with the layout; null when nothing is typed. */
  readonly allowed: number | null
  readonly verdict: DeviationVerdict
}

export interface PositionDeviation {
  readonly x: Deviation
  readonly y: Deviation
  readonly z: Deviation
  /** Straight distance between the planned and the measured position, mm ≥ 0. */
  readonly totalMm: number
}

/** What one entry of a record comes to beside what was planned when it was taken in. */
export interface AnchorDeviation {
  readonly reading: AnchorReading
  /** Where the tape was to be held by the plan, from the datum: on the outside of a wrapped bar, else the mount's own point. */
  readonly planned: PointMm
  /** Null when there is no measured position. */
  readonly position: PositionDeviation | null
  /** Of a tab's plane; null where it was not measured. */
  readonly planDeg: Deviation | null
  readonly leanDeg: Deviation | null
  /** A tab whose turn or lean was not measured: the verdict says nothing about it. */
  readonly areAnglesUnmeasured: boolean
  /** The worst of everything that was measured; `cannot-be-told` too where the readings give no position. */
  readonly verdict: DeviationVerdict | 'not-measured'
}

/**
 * Whether a deviation keeps what is allowed, when the measurement may be off itself: it is within only where even the worst reading
 * would be, and outside only where even the best one would be. A deviation exactly on the limit is within.
 * Source of the rule: ISO 14253-1, proving conformity and non-conformity (from memory).
 */
export const deviationVerdict = (
  off: number,
  allowed: number | null,
  uncertainty: number | null,
): DeviationVerdict => {
  if (allowed === null) return 'no-tolerance'
  if (uncertainty === null) return 'cannot-be-told'
  if (Math.abs(off) + uncertainty <= allowed + LIMIT_TOLERANCE) return 'within'
  return Math.abs(off) - uncertainty > allowed + LIMIT_TOLERANCE ? 'outside' : 'cannot-be-told'
}

const deviation = (off: number, allowed: number | null, uncertainty: number | null): Deviation => ({
  off,
  uncertainty,
  allowed,
  verdict: deviationVerdict(off, allowed, uncertainty),
})

/**
 * Deviations of every entry of a record, in its order, against what the layout allows; for a signed record against what it allowed when
 * it was signed.
 */
export const recordDeviations = (
  layout: DeviationCase,
  record: AsWeldedRecord,
): readonly AnchorDeviation[] => {
  const { tubes } = layout
  const tolerance = toleranceOf(layout, record)
  const judged = tolerance === undefined ? { tubes } : { tubes, tolerance }
  return record.anchors.map((entry) => anchorDeviation(judged, anchorReading(entry)))
}

/** What the deviations of a record are held against; undefined where nothing is, or was, typed. */
export const toleranceOf = (
  layout: Pick<Layout, 'tolerance'>,
  { signed }: AsWeldedRecord,
): WeldTolerance | undefined => (signed === undefined ? layout.tolerance : signed.tolerance)

/** What deviations are judged by. */
export type DeviationCase = Pick<Layout, 'tolerance' | 'tubes'>

/** What one entry's readings come to. */
export const anchorDeviation = (
  { tolerance: typed, tubes }: DeviationCase,
  reading: AnchorReading,
): AnchorDeviation => {
  const { planned } = reading.entry
  const tolerance = typed ?? null
  const position = positionDeviation(reading, tubes, tolerance)
  const { planDeg, leanDeg } = planned.kind === 'tab' ? tabDeviations(planned, reading, tolerance) : NO_ANGLES
  const found = [position?.x, position?.y, position?.z, planDeg, leanDeg]
  return {
    reading,
    planned: plannedHeldPoint(reading.entry, tubes),
    position,
    planDeg,
    leanDeg,
    areAnglesUnmeasured: planned.kind === 'tab' && (planDeg === null || leanDeg === null),
    verdict: overall(
      reading,
      found.flatMap((each) => (each === undefined || each === null ? [] : [each.verdict])),
    ),
  }
}

const NO_ANGLES = { planDeg: null, leanDeg: null } as const

const positionDeviation = (
  { entry, position }: AnchorReading,
  tubes: readonly Tube[],
  tolerance: WeldTolerance | null,
): PositionDeviation | null => {
  if (entry.measurement === null || position?.ok !== true) return null
  const uncertainty = uncertaintyMm(entry.measurement)
  const planned = plannedHeldPoint(entry, tubes)
  const { x, y, z } = pointDifference(position.value.point, planned)
  return {
    x: deviation(x, tolerance?.xMm ?? null, uncertainty?.x ?? null),
    y: deviation(y, tolerance?.yMm ?? null, uncertainty?.y ?? null),
    z: deviation(z, tolerance?.zMm ?? null, uncertainty?.z ?? null),
    totalMm: pointDistanceMm(position.value.point, planned),
  }
}

/** Without a measured lean only the turn can be compared, as if the tab leaned as planned; and the other way round. */
const tabDeviations = (
  planned: TabMount,
  { planDeg, leanDeg }: AnchorReading,
  tolerance: WeldTolerance | null,
): Pick<AnchorDeviation, 'planDeg' | 'leanDeg'> => {
  const allowed = tolerance?.tabDeg ?? null
  const turn: Scatter | null = planDeg?.ok === true ? planDeg.value : null
  const lean: Scatter | null = leanDeg?.ok === true ? leanDeg.value : null
  const measured = measuredPlane(planned, { planDeg: turn?.mean ?? null, leanDeg: lean?.mean ?? null })
  const off = planeOff(planned, measured)
  return {
    planDeg: turn === null ? null : deviation(off.planDeg, allowed, angleReadOff(turn)),
    leanDeg: lean === null ? null : deviation(off.leanDeg, allowed, angleReadOff(lean)),
  }
}

const overall = (
  { position, planDeg, leanDeg }: AnchorReading,
  verdicts: readonly DeviationVerdict[],
): AnchorDeviation['verdict'] => {
  if (verdicts.includes('outside')) return 'outside'
  if ([position, planDeg, leanDeg].some((result) => result?.ok === false)) return 'cannot-be-told'
  if (position === null) return 'not-measured'
  if (verdicts.includes('cannot-be-told')) return 'cannot-be-told'
  return verdicts.includes('no-tolerance') ? 'no-tolerance' : 'within'
}
