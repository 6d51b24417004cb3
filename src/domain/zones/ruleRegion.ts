import { planeDistanceMm, type PlanePointMm, projected, type Elevation } from '../geometry/plane'
import type { Region } from '../geometry/polygon'
import type { QuantityRule } from '../rules/rule'
import { casePlane } from './caseFields'
import { polygonEdges, reachBox } from './cells'
import type { Demand } from './evenRun'
import { joinedRegion } from './joined'
import { type Limit, STRAP_CLEAR, STRAP_PATH } from './limit'
import { isDecidedIn } from './rulePlane'
import type { Focus } from './lattice'
import { nearestLeftMm, regionOfSieve, type Sieve, sieveOf, sifted } from './sieve'
import { scenesOfRule } from './subject'
import type { AnchorZone, ZoneCase, ZoneScene } from './zone'

/** The square every region of a case is cut to: about the hip point of its first sitting. */
export const caseBox = (zoneCase: ZoneCase, elevation: Elevation): Region => {
  const first = zoneCase.scenes[0]
  return first === undefined ? [] : reachBox(projected(first.scene.body.hip, elevation))
}

/** How unlike two sittings are: where hip and shoulders are, mm. */
const unlikeMm = ({ scene: { body: a } }: ZoneScene, { scene: { body: b } }: ZoneScene): number =>
  Math.hypot(a.hip.xMm - b.hip.xMm, a.hip.zMm - b.hip.zMm) +
  planeDistanceMm(a.shoulderArc.centre, b.shoulderArc.centre) +
  Math.abs(a.lapArc.radiusMm - b.lapArc.radiusMm)

/** Sittings in an order in which each is as unlike those before it as can be: the first few take most away, and the rest look at less. */
const unlikeFirst = <Of extends { readonly zoneScene: ZoneScene }>(all: readonly Of[]): readonly Of[] => {
  const order: Of[] = []
  const rest = new Set(all)
  while (rest.size > 0) {
    let next: { readonly one: Of; readonly mm: number } | null = null
    for (const one of rest) {
      const mm = Math.min(...order.map((other) => unlikeMm(one.zoneScene, other.zoneScene)))
      if (next === null || mm > next.mm) next = { one, mm }
    }
    if (next === null) break
    order.push(next.one)
    rest.delete(next.one)
  }
  return order
}

/** What is demanded in each sitting, the most unlike first, and the box it is demanded in. */
interface Demanded {
  readonly sieve: Sieve
  readonly demands: readonly Demand[]
  readonly foci: readonly Focus[]
}

const demandedOf = (
  zoneCase: ZoneCase,
  elevation: Elevation,
  sittings: readonly { readonly zoneScene: ZoneScene; readonly limits: readonly Limit[] }[],
): Demanded => {
  const { lattice, foci, asked } = casePlane(zoneCase, elevation)
  const demands = unlikeFirst(sittings).flatMap(({ zoneScene, limits }) => {
    const here = asked.get(zoneScene)
    return here === undefined ? [] : limits.map((limit) => ({ asked: here, limit }))
  })
  return { sieve: sieveOf(lattice, caseBox(zoneCase, elevation).flatMap(polygonEdges)), demands, foci }
}

/** What the sittings leave of the box. */
const leftBy = (...of: Parameters<typeof demandedOf>): Region => {
  const { sieve, demands, foci } = demandedOf(...of)
  return joinedRegion(regionOfSieve(sifted(sieve, demands, foci)))
}

/** The sittings in which a rule speaks; none where the anchor's position in this plane does not matter to it. */
const decidedScenes = (rule: QuantityRule, zoneCase: ZoneCase, elevation: Elevation): readonly ZoneScene[] =>
  isDecidedIn(rule, zoneCase.mirrored, elevation) ? scenesOfRule(rule, zoneCase) : []

/** Where an anchor keeps a rule in each sitting in which the rule speaks and in which its position in this plane matters. */
export const sittingRegions = (
  rule: QuantityRule,
  zoneCase: ZoneCase,
  elevation: Elevation,
): readonly { readonly sittingId: string; readonly region: Region }[] => {
  const limits = casePlane(zoneCase, elevation).limitsOf(rule)
  return decidedScenes(rule, zoneCase, elevation).map((zoneScene) => ({
    sittingId: zoneScene.sittingId,
    region: leftBy(zoneCase, elevation, [{ zoneScene, limits }]),
  }))
}

/**
 * Where an anchor keeps a rule in every sitting in which the rule speaks, everything else as drawn, cut to 1.5 m about the hip
 * point. Null when no position in that plane decides the rule. For a wrap: where the tube's centre may be.
 */
export const ruleRegion = (rule: QuantityRule, zoneCase: ZoneCase, elevation: Elevation): Region | null => {
  const scenes = decidedScenes(rule, zoneCase, elevation)
  if (scenes.length === 0) return null
  const limits = casePlane(zoneCase, elevation).limitsOf(rule)
  return leftBy(
    zoneCase,
    elevation,
    scenes.map((zoneScene) => ({ zoneScene, limits })),
  )
}

/** How far a place is from the nearest one where a rule is kept in every sitting, mm; Infinity where there is none. */
export const nearestKeptMm = (
  rule: QuantityRule,
  zoneCase: ZoneCase,
  elevation: Elevation,
  from: PlanePointMm,
): number => {
  const limits = casePlane(zoneCase, elevation).limitsOf(rule)
  const sittings = decidedScenes(rule, zoneCase, elevation).map((zoneScene) => ({ zoneScene, limits }))
  if (sittings.length === 0) return Infinity
  const { sieve, demands, foci } = demandedOf(zoneCase, elevation, sittings)
  return nearestLeftMm(sieve, demands, foci, from)
}

/**
 * The overlap over all rules and sittings, where the strap has a path in each. Rules that no position decides do not narrow it. Each
 * plane is worked out when it is first asked for: most zones are never drawn.
 */
export const anchorZone = (rules: readonly QuantityRule[], zoneCase: ZoneCase): AnchorZone => {
  const zoneIn = (elevation: Elevation): Region => {
    const { limitsOf } = casePlane(zoneCase, elevation)
    const speaking = rules.map((rule) => ({ rule, scenes: decidedScenes(rule, zoneCase, elevation) }))
    const demands = zoneCase.scenes.map((zoneScene) => {
      const here = speaking.filter(({ scenes }) => scenes.includes(zoneScene))
      const limits = [STRAP_PATH, ...here.flatMap(({ rule }) => limitsOf(rule))]
      return { zoneScene, limits: [...new Set([...limits, STRAP_CLEAR])] }
    })
    return leftBy(zoneCase, elevation, demands)
  }
  let side: Region | null = null
  let top: Region | null = null
  return {
    anchorId: zoneCase.anchor.id,
    get side() {
      return (side ??= zoneIn('side'))
    },
    get top() {
      return (top ??= zoneIn('top'))
    },
  }
}
