import { projected, type Elevation, type PlanePointMm } from '../geometry/plane'
import type { ConvexPolygon, Region } from '../geometry/polygon'
import type { MoveDirection, Remedy, RemedyStep } from '../rules/finding'
import type { QuantityRule } from '../rules/rule'
import type { Anchor } from '../straps/anchor'
import type { Subject } from '../straps/quantity'
import { type SolvedPlace, solvePlace } from '../straps/solve'
import { mirroredStrap, strapSide } from '../straps/strap'
import { tubeAt } from '../straps/mount'
import { type Move, movedScene } from './move'
import { ruleRegion } from './ruleRegion'
import { ruleSubject, scenesOfRule } from './subject'
import { isKeptNow } from './keptNow'
import { turnedTab } from './turnedTab'
import type { ZoneCase, ZoneScene } from './zone'

export interface RemedyQuestion {
  readonly rule: QuantityRule
  readonly zoneCase: ZoneCase
  /** All quantity rules of the set: a remedy that newly breaks none of them is preferred. */
  readonly rules: readonly QuantityRule[]
}

/** Farther than this nobody moves a mount to mend an angle; beyond it there is no remedy. Our judgement. */
export const FARTHEST_MM = 1000

const SIDE_DIRECTIONS: readonly MoveDirection[] = ['up', 'down', 'forward', 'rearward']

/** The drawn direction of a move of this anchor; null for inward and outward at the centre line. */
const towards = (direction: MoveDirection, zoneCase: ZoneCase): PlanePointMm | null => {
  const { anchor, scenes } = zoneCase
  const centreYMm = scenes[0]?.scene.body.hip.yMm ?? 0
  const outward = anchor.mount.point.yMm >= centreYMm ? 1 : -1
  switch (direction) {
    case 'up':
      return { uMm: 0, vMm: 1 }
    case 'down':
      return { uMm: 0, vMm: -1 }
    case 'forward':
      return { uMm: -1, vMm: 0 }
    case 'rearward':
      return { uMm: 1, vMm: 0 }
    case 'outward':
    case 'inward':
      if (strapSide(anchor.strap) === 'centre') return null
      return { uMm: 0, vMm: direction === 'outward' ? outward : -outward }
  }
}

/** How far along a line a convex polygon is first met, mm ≥ 0; null when the line misses it. */
const firstMeetingMm = (polygon: ConvexPolygon, from: PlanePointMm, along: PlanePointMm): number | null => {
  let enterMm = 0
  let leaveMm = Infinity
  for (const [index, corner] of polygon.entries()) {
    const next = polygon[(index + 1) % polygon.length] ?? corner
    const nu = next.vMm - corner.vMm
    const nv = corner.uMm - next.uMm
    const speed = nu * along.uMm + nv * along.vMm
    const rest = nu * (corner.uMm - from.uMm) + nv * (corner.vMm - from.vMm)
    if (speed > 0) leaveMm = Math.min(leaveMm, rest / speed)
    else if (speed < 0) enterMm = Math.max(enterMm, rest / speed)
    else if (rest < 0) return null
  }
  return enterMm <= leaveMm ? enterMm : null
}

const distanceIntoMm = (region: Region, from: PlanePointMm, along: PlanePointMm): number | null => {
  const distances = region.flatMap((polygon) => firstMeetingMm(polygon, from, along) ?? [])
  return distances.length === 0 ? null : Math.min(...distances)
}

/** The anchors that move with this one: its mirror image in a mirrored pair. */
const movingIds = ({ anchor, mirrored, scenes }: ZoneCase): readonly string[] => {
  const partner = mirrored ? mirroredStrap(anchor.strap) : null
  const other = scenes[0]?.scene.anchors.find(({ strap }) => strap === partner)
  return other === undefined ? [anchor.id] : [anchor.id, other.id]
}

/** The tube that has to move for this anchor to move up, down, forward or rearward; null when the anchor moves alone. */
const carryingTubeId = ({ anchor, scenes }: ZoneCase): string | null => {
  const { mount } = anchor
  if (mount.kind === 'wrap') return mount.tubeId
  const tube = mount.tubeId === null ? null : tubeAt(scenes[0]?.scene.tubes ?? [], mount.tubeId)
  return tube?.role === 'harness-bar' ? tube.id : null
}

/** A move of this anchor in a drawn direction: with its pair, or with the bar that carries it. */
export const moveOf = (direction: MoveDirection, byMm: number, zoneCase: ZoneCase): Move => {
  const isAcross = direction === 'inward' || direction === 'outward'
  const tubeId = isAcross ? null : carryingTubeId(zoneCase)
  return { anchorIds: movingIds(zoneCase), tubeId, direction, byMm }
}

/** A move as a remedy. */
export const moveRemedy = ({ tubeId, anchorIds, direction, byMm }: Move): RemedyStep =>
  tubeId === null
    ? { kind: 'move-anchors', anchorIds, direction, byMm }
    : { kind: 'move-tube', tubeId, direction, byMm }

/** What a change makes of the sittings, solved anew. */
const changedScenes = (
  scenes: readonly ZoneScene[],
  change: (scene: ZoneScene['scene']) => ZoneScene['scene'],
): readonly ZoneScene[] =>
  scenes.map((zoneScene) => {
    const scene = change(zoneScene.scene)
    return { ...zoneScene, scene, solved: solvePlace(scene) }
  })

const isKeptIn = (
  scenes: readonly ZoneScene[],
  rule: QuantityRule,
  zoneCase: ZoneCase,
  subject: Subject,
): boolean =>
  scenesOfRule(rule, { ...zoneCase, scenes }).every((zoneScene) => isKeptNow(rule, subject, zoneScene))

/** Rules about any strap of the place that a change breaks, and that were kept before. */
const newlyBroken = ({ rules, zoneCase }: RemedyQuestion, after: readonly ZoneScene[]): number => {
  const anchors = zoneCase.scenes[0]?.scene.anchors ?? []
  return anchors.reduce((count, anchor) => {
    const here = { ...zoneCase, anchor }
    const broken = rules.filter((rule) => {
      const subject = ruleSubject(rule, here)
      if (subject === null || hasNoValue(zoneCase.scenes, rule, subject)) return false
      return (
        isKeptIn(withMount(zoneCase.scenes, anchor), rule, here, subject) &&
        !isKeptIn(withMount(after, anchor), rule, here, subject)
      )
    })
    return count + broken.length
  }, 0)
}

/** The sittings with the facts for another anchor's strap. */
const withMount = (scenes: readonly ZoneScene[], { strap, mount }: Anchor): readonly ZoneScene[] =>
  scenes.map((zoneScene) => ({
    ...zoneScene,
    context: { ...zoneScene.context, strap, mount: mount.kind },
  }))

const hasNoValue = (scenes: readonly ZoneScene[], rule: QuantityRule, subject: Subject): boolean =>
  scenes.every(({ solved }) => !hasQuantity(solved, rule, subject))

const hasQuantity = ({ quantities }: SolvedPlace, rule: QuantityRule, subject: Subject): boolean =>
  quantities.some(({ id, subject: of }) => id === rule.quantity && of === subject)

/** The moves along the drawing's axes that bring the anchor into the rule's region, smallest first, in whole mm. */
export const movesInto = ({ rule, zoneCase }: Pick<RemedyQuestion, 'rule' | 'zoneCase'>): readonly Move[] => {
  const moves = (elevation: Elevation, directions: readonly MoveDirection[]): readonly Move[] => {
    const region = ruleRegion(rule, zoneCase, elevation)
    if (region === null) return []
    const from = projected(zoneCase.anchor.mount.point, elevation)
    return directions.flatMap((direction) => {
      const along = towards(direction, zoneCase)
      const mm = along && distanceIntoMm(region, from, along)
      return mm === null || mm > FARTHEST_MM ? [] : [moveOf(direction, Math.max(1, Math.ceil(mm)), zoneCase)]
    })
  }
  return [...moves('side', SIDE_DIRECTIONS), ...moves('top', ['inward', 'outward'])]
    .filter((move) => staysOnItsSide(move, zoneCase))
    .toSorted((a, b) => a.byMm - b.byMm)
}

/** An anchor moved inward stays on its own side of the seat. */
const staysOnItsSide = ({ direction, byMm }: Move, { anchor, scenes }: ZoneCase): boolean =>
  direction !== 'inward' || byMm < Math.abs(anchor.mount.point.yMm - (scenes[0]?.scene.body.hip.yMm ?? 0))

/** A move after the same with one mm less: a region's edge is drawn by chords a little inside it, which may cost the last mm. */
const leastFirst = (move: Move): readonly Move[] =>
  move.byMm > 1 ? [{ ...move, byMm: move.byMm - 1 }, move] : [move]

/** The first of some moves that clears the rule and breaks no other; failing that, the first that clears it. */
const bestMove = (question: RemedyQuestion, subject: Subject, moves: readonly Move[]): Move | null => {
  const { rule, zoneCase } = question
  let second: Move | null = null
  for (const move of moves.flatMap(leastFirst)) {
    const after = changedScenes(zoneCase.scenes, (scene) => movedScene(scene, move))
    if (!isKeptIn(after, rule, zoneCase, subject)) continue
    if (newlyBroken(question, after) === 0) return move
    second ??= move
  }
  return second
}

/**
 * The smallest change of one thing along a drawn axis that clears a broken finding, checked by solving every sitting anew; one
 * that breaks no other rule of the set comes first. `none` says why there is none.
 */
export const remedyFor = (question: RemedyQuestion): Remedy => {
  const { rule, zoneCase } = question
  const subject = ruleSubject(rule, zoneCase)
  if (subject === null) return { kind: 'none', reason: 'No anchor of this strap decides it.' }
  if (rule.quantity === 'tab-twist') return turnedTab(rule, zoneCase)
  const move = bestMove(question, subject, movesInto(question))
  if (move !== null) return moveRemedy(move)
  return {
    kind: 'none',
    reason:
      'No single move up, down, forward, rearward, inward or outward clears it for everybody who sits here.',
  }
}
