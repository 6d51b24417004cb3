import type { AxisError } from '../../../geometry/axisError'
import { errorNodes } from '../../../geometry/axisError'
import { projected } from '../../../geometry/plane'
import { regionContains } from '../../../geometry/region'
import { regionChance } from '../../../geometry/regionChance'
import type { ErrorSpread, WeldTolerance } from '../../../rules/tolerance'
import type { QuantityRule } from '../../../rules/rule'
import { solvePlace } from '../../../straps/solve'
import type { ZoneCase } from '../../../zones/zone'
import { reclinedBy, type UncertainSitting } from './offSitting'
import { homeRegion, LEAST_ERROR_MM, planeErrors } from './zoneStarts'

export interface ChanceQuestion {
  readonly rule: QuantityRule
  /** The anchor whose error is counted; not mirrored where its pair is asked about, since each tab is off by itself. */
  readonly zoneCase: ZoneCase
  readonly tolerance: WeldTolerance
  readonly spread: Exclude<ErrorSpread, 'worst-case'>
  /** Whether a second anchor is off just as much, by itself: only the difference of the two matters to a pair. */
  readonly isPair: boolean
  /** The sittings of the case, in its order. */
  readonly sittings: readonly UncertainSitting[]
}

/** Recline readings looked at: three Gauss–Legendre nodes follow a limit that moves along a smooth curve. */
const RECLINE_NODES = 3

/** Errors of the second anchor looked at along each axis. */
const PAIR_NODES = 8

const axisError = (spread: ChanceQuestion['spread'], halfWidthMm: number): AxisError => ({
  spread,
  halfWidth: Math.max(halfWidthMm, LEAST_ERROR_MM),
})

/** The case with the recline of every sitting read wrongly by the same angle. A rule that speaks as drawn speaks still. */
const reclinedCase = ({ zoneCase, sittings }: ChanceQuestion, offDeg: number): ZoneCase =>
  offDeg === 0
    ? zoneCase
    : {
        ...zoneCase,
        scenes: zoneCase.scenes.map((zoneScene, index) => {
          const sitting = sittings[index]
          if (sitting === undefined) return zoneScene
          const scene = { ...zoneScene.scene, ...reclinedBy(sitting, offDeg) }
          return { ...zoneScene, scene, solved: solvePlace(scene) }
        }),
      }

/** Chance that the rule is kept in all sittings at one reading of the recline; null where its zone cannot tell. */
const keptChance = (question: ChanceQuestion, offDeg: number): number | null => {
  const { rule, tolerance, spread, isPair } = question
  const zoneCase = reclinedCase(question, offDeg)
  const home = homeRegion(rule, zoneCase)
  if (home === null) return null
  const at = projected(zoneCase.anchor.mount.point, home.elevation)
  // A strip that the zones leave out although the rule is kept there would be counted as broken.
  if (offDeg === 0 && !regionContains(home.region, at, 1e-6)) return null
  const [uMm, vMm] = planeErrors(tolerance, home.elevation)
  const uError = axisError(spread, uMm)
  const vError = axisError(spread, vMm)
  if (!isPair) return regionChance(home.region, { at, uError, vError })
  return errorNodes(uError, PAIR_NODES).reduce(
    (sum, u) =>
      sum +
      errorNodes(vError, PAIR_NODES).reduce((part, v) => {
        const there = { uMm: at.uMm - u.error, vMm: at.vMm - v.error }
        return part + u.weight * v.weight * regionChance(home.region, { at: there, uError, vError })
      }, 0),
    0,
  )
}

/**
 * Chance that a rule which is kept as drawn is broken in some sitting: the anchor's error in the plane where the rule lives against the rule's region there,
 * averaged over the readings of the recline. The error across that plane and that of other anchors through the buckle are left
 * out. Null where no zone decides.
 */
export const zoneChance = (question: ChanceQuestion): number | null => {
  const { tolerance, spread } = question
  const readings =
    tolerance.reclineDeg > 0
      ? errorNodes({ spread, halfWidth: tolerance.reclineDeg }, RECLINE_NODES)
      : [{ error: 0, weight: 1 }]
  let kept = 0
  for (const { error, weight } of readings) {
    // The middle node of an odd rule is 0 but for rounding.
    const chance = keptChance(question, Math.abs(error) < 1e-9 ? 0 : error)
    if (chance === null) return null
    kept += weight * chance
  }
  return Math.min(1, Math.max(0, 1 - kept))
}
