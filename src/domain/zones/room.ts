import { type Elevation, type PlanePointMm, projected } from '../geometry/plane'
import type { HalfPlane } from '../geometry/polygon'
import { regionClipped, regionDistanceMm } from '../geometry/region'
import type { QuantityRule } from '../rules/rule'
import { type CasePlane, casePlane } from './caseFields'
import { polygonEdges } from './cells'
import { type Frontier, onKeptSide } from './frontier'
import { lookAt } from './asked'
import { type Demand, readIn } from './evenRun'
import { judged, type Matters } from './follow'
import { judgedAtOnce } from './judge'
import { isFineEnough, type Triangle, trianglePolygon } from './lattice'
import { homeElevation, isDecidedIn } from './rulePlane'
import { caseBox, nearestKeptMm } from './ruleRegion'
import { ruleSubject, scenesOfRule } from './subject'
import { isKeptNow, marginNow } from './keptNow'
import type { ZoneCase } from './zone'

/** A search for the nearest place where some limits are not all kept in one sitting. */
interface Search {
  readonly from: PlanePointMm
  readonly plane: CasePlane
  /** Nothing outside it is looked at. */
  readonly box: readonly HalfPlane[]
}

const isOfPath = ({ limit }: Demand): boolean => limit.what === 'path'

/** Every limit matters to a room. */
const ALWAYS: Matters = () => true

/** How far from `from` the part of a triangle inside some half-planes is, mm; Infinity when there is none. */
const awayMm = (triangle: Triangle, from: PlanePointMm, inside: readonly HalfPlane[]): number =>
  regionDistanceMm(regionClipped([trianglePolygon(triangle)], inside), from)

/** How far from `from` the part of a triangle on the broken side of a frontier is, mm. */
const brokenPartMm = (
  triangle: Triangle,
  from: PlanePointMm,
  box: readonly HalfPlane[],
  { points, isKeptLeft }: Frontier,
): number =>
  regionDistanceMm(
    onKeptSide(regionClipped([trianglePolygon(triangle)], box), { points, isKeptLeft: !isKeptLeft }),
    from,
  )

/** Distance to the nearest place that breaks one of the demands, or `nearestMm` when none is nearer. Near triangles come first. */
const nearestBrokenMm = (
  { from, plane, box }: Search,
  demands: readonly Demand[],
  nearestMm: number,
): number => {
  let bestMm = nearestMm
  const inHalves = (triangle: Triangle, active: readonly Demand[]): void => {
    const halves = triangle
      .halves()
      .map((half) => ({ half, mm: regionDistanceMm([trianglePolygon(half)], from) }))
      .toSorted((a, b) => a.mm - b.mm)
    for (const { half, mm } of halves) if (mm < bestMm) visit(half, active)
  }
  const visit = (triangle: Triangle, active: readonly Demand[]): void => {
    if (!isFineEnough(triangle, plane.foci)) return inHalves(triangle, active)
    const open: Demand[] = []
    for (const each of active) {
      const demand = readIn(each, triangle)
      if (demand === 'kept') continue
      const { asked, limit } = demand
      const judgement = judgedAtOnce(lookAt(asked, limit.of, triangle), limit, triangle, null)
      if (judgement === 'broken') bestMm = Math.min(bestMm, awayMm(triangle, from, box))
      if (judgement === 'broken') return
      if (judgement === null) open.push(demand)
    }
    const unclear: Demand[] = []
    for (const demand of open) {
      const judgement = judged(demand.asked, demand.limit, triangle, ALWAYS)
      if (judgement === 'unclear' || (judgement === 'unknown' && unclear.some(isOfPath))) unclear.push(demand)
      else if (judgement === 'broken') bestMm = Math.min(bestMm, awayMm(triangle, from, box))
      else if (typeof judgement !== 'string')
        bestMm = Math.min(bestMm, brokenPartMm(triangle, from, box, judgement))
    }
    if (unclear.length > 0) inHalves(triangle, unclear)
  }
  for (const root of plane.lattice.roots) visit(root, demands)
  return bestMm
}

/**
 * How far the anchor can move in a drawn plane before the rule is broken in some sitting, mm; negative: how far it must move until
 * it is kept in all of them. A mirrored pair moves together. Null where no position in that plane decides the rule, where it
 * holds everywhere within reach, and where it holds nowhere.
 */
export const roomInPlaneMm = (
  rule: QuantityRule,
  zoneCase: ZoneCase,
  elevation: Elevation,
  withinMm = Infinity,
): number | null => {
  const subject = ruleSubject(rule, zoneCase)
  const scenes = scenesOfRule(rule, zoneCase)
  if (subject === null || scenes.length === 0 || !isDecidedIn(rule, zoneCase.mirrored, elevation)) return null
  const from = projected(zoneCase.anchor.mount.point, elevation)
  if (!scenes.every((zoneScene) => isKeptNow(rule, subject, zoneScene))) {
    const distanceMm = nearestKeptMm(rule, zoneCase, elevation, from)
    return Number.isFinite(distanceMm) ? -distanceMm : null
  }
  const plane = casePlane(zoneCase, elevation)
  const box = caseBox(zoneCase, elevation).flatMap(polygonEdges)
  let nearestMm = withinMm
  // Where least is left the nearest way out is likely: it makes the search in the others short.
  for (const zoneScene of scenes.toSorted(
    (a, b) => marginNow(rule, subject, a) - marginNow(rule, subject, b),
  )) {
    const asked = plane.asked.get(zoneScene)
    if (asked === undefined) continue
    const demands = plane.limitsOf(rule).map((limit) => ({ asked, limit }))
    nearestMm = nearestBrokenMm({ from, plane, box }, demands, nearestMm)
  }
  return Number.isFinite(nearestMm) ? nearestMm : null
}

/**
 * The room in the plane where the rule lives. Of a rule that is kept no more than `withinMm` is looked for: what has at least so
 * much is given as so much, and found sooner.
 */
export const ruleRoomMm = (rule: QuantityRule, zoneCase: ZoneCase, withinMm = Infinity): number | null =>
  roomInPlaneMm(rule, zoneCase, homeElevation(rule, zoneCase.mirrored), withinMm)
