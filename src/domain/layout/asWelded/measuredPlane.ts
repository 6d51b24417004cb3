import type { TabMount } from '../../straps/anchor'
import { wrappedDeg } from '../../units/angle'

/** A tab's turn and lean, degrees, signed as in the plan. */
type TabPlane = Pick<TabMount, 'planDeg' | 'leanDeg'>

/** What was measured of a tab's plane, degrees; null for what was not. */
interface PlaneReading {
  readonly planDeg: number | null
  readonly leanDeg: number | null
}

/** To the same line or plane half a turn on, range (−90°, 90°]. */
const halfTurnDeg = (deg: number): number => wrappedDeg(2 * deg) / 2

/**
 * A tab's plane as it was measured, with the plan for what was not. A plane turned by half a turn and leaned the other way is the same
 * plane: of the two ways to write it the one nearer to the plan is taken, so that an unmeasured lean stays the planned one.
 * Formula: n(plan + 180°, −lean) = −n(plan, lean), from `tabNormal`.
 */
export const measuredPlane = (planned: TabPlane, { planDeg, leanDeg }: PlaneReading): TabPlane => {
  const straightDeg = planDeg === null ? 0 : wrappedDeg(planDeg - planned.planDeg)
  const isOtherWay = Math.abs(straightDeg) > 90
  return {
    planDeg: planDeg === null ? planned.planDeg : wrappedDeg(isOtherWay ? planDeg + 180 : planDeg),
    leanDeg: leanDeg === null ? planned.leanDeg : isOtherWay ? 0 - leanDeg : leanDeg,
  }
}

/**
 * How far a measured plane is turned and leaned from the planned one, degrees, measured less planned. A lean of 90° and one of −90° are
 * both flat: n(plan, lean ± 180°) = −n(plan, lean).
 */
export const planeOff = (planned: TabPlane, measured: TabPlane): TabPlane => ({
  planDeg: wrappedDeg(measured.planDeg - planned.planDeg),
  leanDeg: halfTurnDeg(measured.leanDeg - planned.leanDeg),
})
