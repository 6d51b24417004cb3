import { planeDistanceMm, projected, type Elevation, type PlanePointMm } from '../geometry/plane'
import type { Region } from '../geometry/polygon'
import { regionContains, regionIntersection } from '../geometry/region'
import type { MoveDirection, RemedyStep } from '../rules/finding'
import type { QuantityRule } from '../rules/rule'
import { strapSide } from '../straps/strap'
import { FARTHEST_MM, moveOf, moveRemedy } from './remedy'
import { caseBox, ruleRegion } from './ruleRegion'
import type { ZoneCase } from './zone'

/** The point of a segment nearest to `point`. Formula: foot of the perpendicular, held between the ends. */
const nearestOnSegment = (point: PlanePointMm, from: PlanePointMm, to: PlanePointMm): PlanePointMm => {
  const du = to.uMm - from.uMm
  const dv = to.vMm - from.vMm
  const size = du * du + dv * dv
  const along = (point.uMm - from.uMm) * du + (point.vMm - from.vMm) * dv
  const share = size === 0 ? 0 : Math.min(1, Math.max(0, along / size))
  return { uMm: from.uMm + share * du, vMm: from.vMm + share * dv }
}

/** The point of each polygon's edge nearest to `point`, nearest polygon first. For points outside the region. */
const nearestPoints = (region: Region, point: PlanePointMm): readonly PlanePointMm[] =>
  region
    .flatMap((polygon) => {
      const feet = polygon.map((corner, index) =>
        nearestOnSegment(point, polygon.at(index - 1) ?? corner, corner),
      )
      return feet.toSorted((a, b) => planeDistanceMm(a, point) - planeDistanceMm(b, point)).slice(0, 1)
    })
    .toSorted((a, b) => planeDistanceMm(a, point) - planeDistanceMm(b, point))

/** Whole millimetres looked at about the nearest point; beyond, a corner narrower than this is passed over. */
const ROUNDING_MM = 2

/** Offsets in whole mm along both axes that lie in the region, smallest first. */
const wholeOffsets = (region: Region, from: PlanePointMm): readonly PlanePointMm[] => {
  const offsets = new Map<string, PlanePointMm>()
  for (const near of nearestPoints(region, from).slice(0, 3)) {
    const du = Math.round(near.uMm - from.uMm)
    const dv = Math.round(near.vMm - from.vMm)
    for (let i = du - ROUNDING_MM; i <= du + ROUNDING_MM; i += 1)
      for (let k = dv - ROUNDING_MM; k <= dv + ROUNDING_MM; k += 1) {
        const at = { uMm: from.uMm + i, vMm: from.vMm + k }
        if (Math.hypot(i, k) <= FARTHEST_MM && regionContains(region, at))
          offsets.set(`${i},${k}`, { uMm: i, vMm: k })
      }
  }
  return [...offsets.values()].toSorted(
    (a, b) => Math.hypot(a.uMm, a.vMm) - Math.hypot(b.uMm, b.vMm) || a.uMm - b.uMm || a.vMm - b.vMm,
  )
}

const acrossDirection = (dvMm: number, { anchor, scenes }: ZoneCase): MoveDirection => {
  const centreYMm = scenes[0]?.scene.body.hip.yMm ?? 0
  const isOutward = anchor.mount.point.yMm >= centreYMm === dvMm > 0
  return isOutward ? 'outward' : 'inward'
}

/** An offset in a drawn plane as moves along its two axes; null where it would take the anchor to the other side of the seat. */
const stepsOf = (
  offset: PlanePointMm,
  elevation: Elevation,
  zoneCase: ZoneCase,
): readonly RemedyStep[] | null => {
  const { anchor, scenes } = zoneCase
  const steps: RemedyStep[] = []
  if (offset.uMm !== 0) {
    const along = offset.uMm > 0 ? 'rearward' : 'forward'
    steps.push(moveRemedy(moveOf(along, Math.abs(offset.uMm), zoneCase)))
  }
  if (offset.vMm !== 0) {
    const isTop = elevation === 'top'
    const centreYMm = scenes[0]?.scene.body.hip.yMm ?? 0
    const sideMm = anchor.mount.point.yMm - centreYMm
    if (isTop && (strapSide(anchor.strap) === 'centre' || sideMm * (sideMm + offset.vMm) <= 0)) return null
    const direction = isTop ? acrossDirection(offset.vMm, zoneCase) : offset.vMm > 0 ? 'up' : 'down'
    steps.push(moveRemedy(moveOf(direction, Math.abs(offset.vMm), zoneCase)))
  }
  return steps
}

/** At most this many are worth solving anew: they differ by a millimetre or two. */
const MOST_MOVES = 6

/**
 * The smallest moves along both axes of a drawn plane at once, in whole mm, that bring the anchor to where all the given rules are
 * kept as the zones know it, smallest first. They still have to be checked by solving.
 */
export const nearestMoves = (
  rules: readonly QuantityRule[],
  zoneCase: ZoneCase,
  elevation: Elevation,
): readonly (readonly RemedyStep[])[] => {
  const regions = rules.flatMap((rule) => {
    const region = ruleRegion(rule, zoneCase, elevation)
    return region === null ? [] : [region]
  })
  if (regions.length === 0) return []
  const region = regions.reduce<Region>(
    (rest, next) => (rest.length === 0 ? rest : regionIntersection(rest, next)),
    caseBox(zoneCase, elevation),
  )
  const from = projected(zoneCase.anchor.mount.point, elevation)
  return wholeOffsets(region, from)
    .slice(0, MOST_MOVES)
    .flatMap((offset) => {
      const steps = stepsOf(offset, elevation, zoneCase)
      return steps === null || steps.length === 0 ? [] : [steps]
    })
}
