import { planeDistanceMm, type PlanePointMm, projected, type Elevation } from '../geometry/plane'
import { regionDistanceMm } from '../geometry/region'
import type { Region } from '../geometry/polygon'
import type { QuantityRule } from '../rules/rule'
import { casePlane } from './caseFields'
import { type Cell, polygonEdges, REACH_MM, reachBox, squareAbout } from './cells'
import { joinedRegion } from './joined'
import { type Limit, STRAP_CLEAR, STRAP_PATH } from './limit'
import { isDecidedIn } from './rulePlane'
import { regionOfSieve, sieveOf, sifted } from './sieve'
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

/** What the sittings leave of the box, one after another, inside some half-planes. */
const leftBy = (
  zoneCase: ZoneCase,
  elevation: Elevation,
  demands: readonly { readonly zoneScene: ZoneScene; readonly limits: readonly Limit[] }[],
  inside: Cell = [],
): Region => {
  const { lattice, foci, asked } = casePlane(zoneCase, elevation)
  const sieve = sieveOf(lattice, [...caseBox(zoneCase, elevation).flatMap(polygonEdges), ...inside])
  const all = unlikeFirst(demands).flatMap(({ zoneScene, limits }) => {
    const here = asked.get(zoneScene)
    return here === undefined ? [] : limits.map((limit) => ({ asked: here, limit }))
  })
  return joinedRegion(regionOfSieve(sifted(sieve, all, foci)))
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

/** The first square about an anchor in which a place that keeps a broken rule is looked for, half its side; the next is three times as large. */
const NEAR_MM = 100

/** How far a place is from the nearest one where a rule is kept in every sitting, mm; Infinity where there is none. */
export const nearestKeptMm = (
  rule: QuantityRule,
  zoneCase: ZoneCase,
  elevation: Elevation,
  from: PlanePointMm,
): number => {
  const limits = casePlane(zoneCase, elevation).limitsOf(rule)
  const demands = decidedScenes(rule, zoneCase, elevation).map((zoneScene) => ({ zoneScene, limits }))
  const first = zoneCase.scenes[0]
  if (first === undefined || demands.length === 0) return Infinity
  const allMm = REACH_MM + planeDistanceMm(projected(first.scene.body.hip, elevation), from)
  for (let halfMm = NEAR_MM; ; halfMm *= 3) {
    const square = squareAbout(from, Math.min(halfMm, allMm)).flatMap(polygonEdges)
    const nearestMm = regionDistanceMm(leftBy(zoneCase, elevation, demands, square), from)
    // What is farther than half a side may be nearer outside the square.
    if (nearestMm <= halfMm || halfMm >= allMm) return nearestMm
  }
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
