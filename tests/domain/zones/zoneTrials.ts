import {
  movedInPlane,
  planePoint,
  projected,
  type Elevation,
  type PlanePointMm,
} from '../../../src/domain/geometry/plane'
import { pointBetween } from '../../../src/domain/geometry/point'
import { regionContains, regionDistanceMm } from '../../../src/domain/geometry/region'
import { isWithin } from '../../../src/domain/rules/check'
import type { QuantityRule } from '../../../src/domain/rules/rule'
import type { Anchor } from '../../../src/domain/straps/anchor'
import { solvePlace } from '../../../src/domain/straps/solve'
import { mirroredStrap, strapFamily } from '../../../src/domain/straps/strap'
import { REACH_MM } from '../../../src/domain/zones/cells'
import { isDecidedIn } from '../../../src/domain/zones/rulePlane'
import { anchorZone } from '../../../src/domain/zones/ruleRegion'
import { ruleSubject, scenesOfRule } from '../../../src/domain/zones/subject'
import type { ZoneCase, ZoneScene } from '../../../src/domain/zones/zone'
import { isNearEdge } from './bruteForce'

/*
 * Whether the zone of an anchor holds a place, against the whole place solved anew in every sitting with the anchor there, and its mirror
 * image opposite. That knows nothing of triangles, of straps tried alone, of rooms without jumps or of runs read between corners.
 */

/** Numbers from 0 to 1 that look random and are the same for the same seed. Source: linear congruence of Numerical Recipes (from memory). */
export const evenNumbers = (seed: number): (() => number) => {
  let state = seed
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296
    return state / 4294967296
  }
}

/** An edge is trusted to this, mm: what a tape shows. */
const EDGE_MM = 1

/** Half the side of the squares that places are taken from: all that a zone can reach, and where people put anchors. */
const WIDE_MM = REACH_MM - 10
const NEAR_MM = 700

/** How far beside the centre line of a tube places near tubes are taken, and beside the anchor as drawn those near it. */
const TUBE_MM = 60
const ANCHOR_MM = 100

/** Places all over a drawn plane, and more of them near the hip point, the tubes and the anchor as drawn. */
const placesOf = (
  { scenes, anchor }: ZoneCase,
  elevation: Elevation,
  count: number,
  next: () => number,
): readonly PlanePointMm[] => {
  const [first] = scenes
  if (first === undefined) return []
  const { body, tubes } = first.scene
  const hip = projected(body.hip, elevation)
  const about = (at: PlanePointMm, halfMm: number): PlanePointMm =>
    planePoint(at.uMm + (2 * next() - 1) * halfMm, at.vMm + (2 * next() - 1) * halfMm)
  const onTube = (): PlanePointMm | null => {
    const tube = tubes[Math.floor(next() * tubes.length)]
    const index = Math.floor(next() * ((tube?.points.length ?? 1) - 1))
    const [from, to] = [tube?.points[index], tube?.points[index + 1]]
    return from && to ? projected(pointBetween(from, to, next()), elevation) : null
  }
  return Array.from({ length: count }, (_, index): PlanePointMm => {
    if (index % 4 === 0) return about(hip, WIDE_MM)
    if (index % 4 === 1) return about(onTube() ?? hip, TUBE_MM)
    if (index % 8 === 2) return about(projected(anchor.mount.point, elevation), ANCHOR_MM)
    return about(hip, NEAR_MM)
  }).filter(({ uMm, vMm }) => Math.abs(uMm - hip.uMm) < WIDE_MM && Math.abs(vMm - hip.vMm) < WIDE_MM)
}

/** The anchors of a sitting with the one of the case somewhere else, and with it its mirror image or the other of two joined straps. */
const movedAnchors = (
  { scene }: ZoneScene,
  { anchor, mirrored }: ZoneCase,
  at: PlanePointMm,
  elevation: Elevation,
): readonly Anchor[] => {
  const point = movedInPlane(anchor.mount.point, at, elevation)
  const isOne = strapFamily(anchor.strap) === 'shoulder' && scene.belt.shoulderTailMm !== undefined
  const image = isOne ? point : { ...point, yMm: 2 * scene.body.hip.yMm - point.yMm }
  return scene.anchors.map((each): Anchor => {
    if (each.strap === anchor.strap) return { ...each, mount: { ...each.mount, point } }
    if (!(mirrored || isOne) || each.strap !== mirroredStrap(anchor.strap)) return each
    return { ...each, mount: { ...each.mount, point: image } }
  })
}

/** A rule with the sittings in which it speaks. */
interface Spoken {
  readonly rule: QuantityRule
  readonly scenes: readonly ZoneScene[]
}

/** What is wrong with a place. */
interface Amiss {
  /** The problem, or the rule with its number. */
  readonly what: string
  /** How wide a strip of it may go unseen: zones/README.md. */
  readonly unseenMm: number
  /** How deep in a tube the strap is, mm; null: it is not that. */
  readonly inTubeMm: number | null
}

/** Strips narrower than this may go unseen; of bends at slots narrower than the second; zones/README.md. */
const UNSEEN_MM = 16
const BEND_UNSEEN_MM = 100

const brokenRule = ({ quantity, id, min }: QuantityRule, value: number | undefined): Amiss => ({
  what: `${id} ${value?.toFixed(3) ?? 'missing'}`,
  unseenMm: quantity === 'slot-bend' ? BEND_UNSEEN_MM : UNSEEN_MM,
  inTubeMm: quantity === 'tube-clearance' && value !== undefined ? (min ?? 0) - value : null,
})

/** What is wrong with a place in the first sitting that does not take it; null: every rule is kept in every sitting. */
const amissAt = (
  zoneCase: ZoneCase,
  spoken: readonly Spoken[],
  at: PlanePointMm,
  elevation: Elevation,
): Amiss | null => {
  for (const zoneScene of zoneCase.scenes) {
    const anchors = movedAnchors(zoneScene, zoneCase, at, elevation)
    const { problems, quantities } = solvePlace({ ...zoneScene.scene, anchors })
    const problem = problems.find(
      ({ strap, kind }) => strap === zoneCase.anchor.strap && kind !== 'buckle-unknown',
    )
    if (problem !== undefined) {
      const inTubeMm = problem.kind === 'through-tube' ? problem.insideMm : null
      return { what: problem.kind, unseenMm: UNSEEN_MM, inTubeMm }
    }
    for (const { rule, scenes } of spoken) {
      if (!scenes.includes(zoneScene)) continue
      const subject = ruleSubject(rule, zoneCase)
      const value = quantities.find(({ id, subject: of }) => id === rule.quantity && of === subject)?.value
      // Without a tube to be measured against none is too near.
      if (value === undefined && rule.quantity === 'tube-clearance') continue
      if (value === undefined || !isWithin(value, rule)) return brokenRule(rule, value)
    }
  }
  return null
}

/** Farthest that the width of what breaks a rule is looked at, and in what steps, mm. */
const WIDEST_MM = 100
const STEP_MM = 0.5

/** How wide what is amiss about a place is: across its narrowest, in sixteen ways, mm; at most twice `WIDEST_MM`. */
const widthMm = (isAmiss: (at: PlanePointMm) => boolean, { uMm, vMm }: PlanePointMm): number => {
  const farMm = (angle: number): number => {
    let mm = STEP_MM
    while (mm < WIDEST_MM && isAmiss(planePoint(uMm + mm * Math.cos(angle), vMm + mm * Math.sin(angle))))
      mm += STEP_MM
    return mm
  }
  const ways = Array.from({ length: 16 }, (_, index) => (index * Math.PI) / 16)
  return Math.min(...ways.map((angle) => farMm(angle) + farMm(angle + Math.PI)))
}

/** How a zone compares with the solver. */
export interface Compared {
  /** Places asked, and those of them that keep every rule. */
  asked: number
  kept: number
  /** Places in the zone, more than 1 mm from its edge, that break a rule: what must not be. In words. */
  readonly unsafe: string[]
  /** Those of them in a strip too narrow to be promised, or with a tube by less than is promised. In words. */
  readonly narrow: string[]
  /** Places more than 1 mm outside the zone that keep every rule: room not shown. In words. */
  readonly missed: string[]
}

export const nothingCompared = (): Compared => ({ asked: 0, kept: 0, unsafe: [], narrow: [], missed: [] })

/** What was found, when it is more than may be; else nothing. */
export const tooMany = (found: readonly string[], most: number): readonly string[] =>
  found.length > most ? found : []

/** How deep a strap may be in a tube unseen: its place is read between corners to a tenth, and may be off in more than one way. */
const IN_TUBE_MM = 0.2

/** Adds what is found in one drawn plane of a case. */
export const compareZone = (
  into: Compared,
  rules: readonly QuantityRule[],
  zoneCase: ZoneCase,
  elevation: Elevation,
  count: number,
  next: () => number,
): void => {
  const zone = anchorZone(rules, zoneCase)[elevation]
  const spoken = rules
    .filter((rule) => isDecidedIn(rule, zoneCase.mirrored, elevation))
    .map((rule) => ({ rule, scenes: scenesOfRule(rule, zoneCase) }))
  const askedAt = (at: PlanePointMm): Amiss | null => amissAt(zoneCase, spoken, at, elevation)
  for (const at of placesOf(zoneCase, elevation, count, next)) {
    const amiss = askedAt(at)
    const isInside = regionContains(zone, at)
    into.asked += 1
    into.kept += amiss === null ? 1 : 0
    if (isInside === (amiss === null)) continue
    const where = `${zoneCase.anchor.strap} ${elevation} (${at.uMm.toFixed(3)}, ${at.vMm.toFixed(3)})`
    if (amiss === null) {
      const outsideMm = regionDistanceMm(zone, at)
      if (outsideMm > EDGE_MM) into.missed.push(`${where}: ${outsideMm.toFixed(1)} mm outside`)
    } else if (!isNearEdge(zone, at, EDGE_MM)) {
      const acrossMm = widthMm((near) => askedAt(near) !== null, at)
      const isNarrow = acrossMm < amiss.unseenMm || (amiss.inTubeMm !== null && amiss.inTubeMm <= IN_TUBE_MM)
      const said = `${where}: ${amiss.what}, ${acrossMm} mm wide`
      ;(isNarrow ? into.narrow : into.unsafe).push(said)
    }
  }
}
