import type { PointMm } from '../geometry/point'
import type { QuantityValue, Subject } from '../straps/quantity'
import { isWithin } from '../rules/check'
import type { QuantityRule } from '../rules/rule'
import { solvePlace } from '../straps/solve'
import { mirroredStrap, strapFamily, type StrapId } from '../straps/strap'
import { anchorAt } from './move'
import { solvedValue } from './subject'
import type { ZoneCase, ZoneScene } from './zone'

/** The other anchor's place when a mirrored pair moves: mirrored about the seat's centre line. */
const mirroredPoint = (point: PointMm, centreYMm: number): PointMm => ({
  ...point,
  yMm: 2 * centreYMm - point.yMm,
})

/** The quantities of the place with the anchor somewhere else, solved anew with only the straps that matter to it. */
const trialQuantities = (
  { scene }: ZoneScene,
  { anchor, mirrored }: ZoneCase,
  subject: Subject,
  point: PointMm,
): readonly QuantityValue[] => {
  const partner = mirroredStrap(anchor.strap)
  // The lap straps decide where the buckle is; the other side matters to a pair only.
  const matters = (strap: StrapId): boolean =>
    strap === anchor.strap || strapFamily(strap) === 'lap' || (strap === partner && subject !== anchor.strap)
  const anchors = scene.anchors
    .filter(({ strap }) => matters(strap))
    .map((other) => {
      if (other.id === anchor.id) return anchorAt(other, point)
      return mirrored && other.strap === partner
        ? anchorAt(other, mirroredPoint(point, scene.body.hip.yMm))
        : other
    })
  // Only tubes that a strap wraps matter: the helmet's clearance is not asked.
  const wrapped = anchors.flatMap(({ mount }) => (mount.kind === 'wrap' ? [mount.tubeId] : []))
  const tubes = scene.tubes.filter(({ id }) => wrapped.includes(id))
  return solvePlace({ ...scene, anchors, tubes }).quantities
}

/** Whether a rule would be kept in a sitting with the anchor at `point`; a number that cannot be computed does not keep it. */
export const isKeptAt = (
  rule: QuantityRule,
  subject: Subject,
  zoneScene: ZoneScene,
  zoneCase: ZoneCase,
  point: PointMm,
): boolean => {
  const quantities = trialQuantities(zoneScene, zoneCase, subject, point)
  const value = quantities.find(({ id, subject: of }) => id === rule.quantity && of === subject)?.value
  return value !== undefined && isWithin(value, rule)
}

/** Whether a rule is kept in a sitting as drawn. */
export const isKeptNow = (rule: QuantityRule, subject: Subject, { solved }: ZoneScene): boolean => {
  const value = solvedValue(solved, rule.quantity, subject)
  return value !== null && isWithin(value, rule)
}
