import type { Elevation } from '../geometry/plane'
import type { MoveDirection, Remedy } from '../rules/finding'
import type { QuantityRule } from '../rules/rule'
import type { Anchor } from '../straps/anchor'
import { tubeAt } from '../straps/mount'
import type { Subject } from '../straps/quantity'
import { type SolvedPlace, solvePlace } from '../straps/solve'
import { isKeptNow } from './keptNow'
import { type Move, moveSteps, sceneOf } from './move'
import { leastMove, caseAfter, wantedIn } from './nearestMove'
import { ruleSubject, scenesOfRule } from './subject'
import { turnedTab } from './turnedTab'
import type { ZoneCase, ZoneScene } from './zone'

export interface RemedyQuestion {
  readonly rule: QuantityRule
  readonly zoneCase: ZoneCase
  /** All quantity rules of the set: a remedy that newly breaks none of them is preferred. */
  readonly rules: readonly QuantityRule[]
}

const ELEVATIONS = ['side', 'top'] as const

/** The directions that are tried in each elevation; up, down, forward and rearward alike in both are tried in the first. */
const DIRECTIONS: Readonly<Record<Elevation, readonly MoveDirection[]>> = {
  side: ['up', 'down', 'forward', 'rearward'],
  top: ['inward', 'outward'],
}

const isKeptIn = (
  scenes: readonly ZoneScene[],
  rule: QuantityRule,
  zoneCase: ZoneCase,
  subject: Subject,
): boolean =>
  scenesOfRule(rule, { ...zoneCase, scenes }).every((zoneScene) => isKeptNow(rule, subject, zoneScene))

/** Whether a change breaks a rule about any strap of the place that was kept before. */
const breaksAnother = ({ rules, zoneCase }: RemedyQuestion, after: readonly ZoneScene[]): boolean => {
  const { scenes } = zoneCase
  return (scenes[0]?.scene.anchors ?? []).some((anchor) => {
    const here = { ...zoneCase, anchor }
    const [before, then] = [scenes, after].map((each) => factsFor(each, anchor))
    return rules.some((rule) => {
      const subject = ruleSubject(rule, here)
      if (subject === null || hasNoValue(scenes, rule, subject)) return false
      return isKeptIn(before ?? [], rule, here, subject) && !isKeptIn(then ?? [], rule, here, subject)
    })
  })
}

/** The sittings with the facts for another anchor's strap. */
const factsFor = (scenes: readonly ZoneScene[], { strap, mount }: Anchor): readonly ZoneScene[] =>
  scenes.map((zoneScene) => {
    const { tube: _other, ...facts } = zoneScene.context
    const tube = mount.tubeId === null ? null : tubeAt(zoneScene.scene.tubes, mount.tubeId)
    const own = { ...facts, strap, mount: mount.kind }
    return { ...zoneScene, context: tube === null ? own : { ...own, tube: tube.role } }
  })

const hasNoValue = (scenes: readonly ZoneScene[], rule: QuantityRule, subject: Subject): boolean =>
  scenes.every(({ solved }) => !hasQuantity(solved, rule, subject))

const hasQuantity = ({ quantities }: SolvedPlace, rule: QuantityRule, subject: Subject): boolean =>
  quantities.some(({ id, subject: of }) => id === rule.quantity && of === subject)

const shortestFirst = (moves: readonly Move[]): readonly Move[] => moves.toSorted((a, b) => a.byMm - b.byMm)

/** The smallest moves along the drawing's axes after which a rule is kept, one for each direction that has one, smallest first, in whole mm. */
export const movesInto = (rule: QuantityRule, zoneCase: ZoneCase): readonly Move[] =>
  shortestFirst(
    ELEVATIONS.flatMap((elevation) => {
      const wanted = wantedIn([rule], zoneCase, elevation)
      return DIRECTIONS[elevation].flatMap((direction) => leastMove(wanted, zoneCase, direction) ?? [])
    }),
  )

/** The same further on in the same directions, until some other rules are kept as well. */
export const movesIntoAll = (
  moves: readonly Move[],
  rules: readonly QuantityRule[],
  zoneCase: ZoneCase,
): readonly Move[] =>
  shortestFirst(
    ELEVATIONS.flatMap((elevation) => {
      const wanted = wantedIn(rules, zoneCase, elevation)
      return moves
        .filter(({ direction }) => DIRECTIONS[elevation].includes(direction))
        .flatMap(({ direction, byMm }) => leastMove(wanted, zoneCase, direction, byMm) ?? [])
    }),
  )

/** What a move makes of the sittings, solved anew; null where it cannot be made. */
const scenesAfter = (zoneCase: ZoneCase, move: Move): readonly ZoneScene[] | null => {
  const trial = caseAfter(zoneCase, [move])
  return (
    trial &&
    zoneCase.scenes.map((zoneScene) => {
      const scene = sceneOf(zoneScene.scene, trial)
      return { ...zoneScene, scene, solved: solvePlace(scene) }
    })
  )
}

/** The first of some moves that clears the rule and breaks no other; failing that, the first that clears it. */
const bestMove = (question: RemedyQuestion, subject: Subject, moves: readonly Move[]): Move | null => {
  const { rule, zoneCase } = question
  let second: Move | null = null
  for (const move of moves) {
    const after = scenesAfter(zoneCase, move)
    if (after === null || !isKeptIn(after, rule, zoneCase, subject)) continue
    if (!breaksAnother(question, after)) return move
    second ??= move
  }
  return second
}

/**
 * The smallest change of one thing along a drawn axis that clears a broken finding, checked by solving every sitting anew; one
 * that breaks no other rule of the set comes first. What it moves can be moved so: an anchor on a tube slides along it, or the tube
 * moves with everything on it. `none` says why there is none.
 */
export const remedyFor = (question: RemedyQuestion): Remedy => {
  const { rule, zoneCase } = question
  const subject = ruleSubject(rule, zoneCase)
  if (subject === null) return { kind: 'none', reason: 'No anchor of this strap decides it.' }
  if (rule.quantity === 'tab-twist') return turnedTab(rule, zoneCase)
  // One change is of one thing: where two tubes would have to move it is for the combined remedies.
  const moves = movesInto(rule, zoneCase).filter((move) => moveSteps(move).length === 1)
  const move = bestMove(question, subject, moves)
  const [step] = move === null ? [] : moveSteps(move)
  if (step !== undefined) return step
  return {
    kind: 'none',
    reason:
      'No single move up, down, forward, rearward, inward or outward clears it for everybody who sits here.',
  }
}
