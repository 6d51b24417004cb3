import type { StrapScene } from '../../../../src/domain/straps/scene'
import { shoulderEnd, type BodyEnd } from './bodyEnds'
import { mountEnd, type MountEnd } from './mountEnd'
import { cutsBackrest, openingsOf } from './openings'
import type { OracleStrap } from './place'
import { bentPasses, tautStrap, type Taut } from './taut'
import { apart, minus, norm, plus, times, towards, unit, type Vector } from './vector'

const STILL_MM = 1e-7
const MOST_ROUNDS = 2000
const MOST_HALVINGS = 200

interface Half {
  readonly strap: 'shoulder-left' | 'shoulder-right'
  readonly body: BodyEnd
}

/** A strap from the junction to its shoulder, with everything on the way. */
const fromJunction = (scene: StrapScene, { strap, body }: Half, junction: Vector): Taut | null => {
  const { centre } = scene.body.shoulderArc
  const openings = openingsOf(scene, strap, junction, [centre.uMm, scene.body.hip.yMm, centre.vMm])
  if (openings === 'slot-not-reached') return null
  const taut = tautStrap(() => junction, [openings], body, junction)
  const isCut = taut?.passes.length === 0 && cutsBackrest(scene, strap, junction, taut.arrival.touch)
  return isCut ? null : taut
}

const nextOf = (taut: Taut): Vector => bentPasses(taut, 1e-6)[0] ?? taut.arrival.touch

interface Pair {
  readonly tauts: readonly [Taut, Taut]
  /** Where the two straps are held next, and midway between. */
  readonly held: readonly [Vector, Vector]
  readonly between: Vector
  /** Sum of the two unit pulls. */
  readonly pull: Vector
}

const pairFrom = (scene: StrapScene, halves: readonly [Half, Half], junction: Vector): Pair | null => {
  const left = fromJunction(scene, halves[0], junction)
  const right = left && fromJunction(scene, halves[1], junction)
  if (left === null || right === null) return null
  const held = [nextOf(left), nextOf(right)] as const
  return {
    tauts: [left, right],
    held,
    between: times(plus(held[0], held[1]), 1 / 2),
    pull: plus(towards(junction, held[0]), towards(junction, held[1])),
  }
}

interface Rest extends Pair {
  readonly contact: Vector
  readonly junction: Vector
}

/**
 * The junction at rest on a tail of some length, begun at `begin`: steps toward where the straps pull it, each so short that it does not
 * swing over the line of balance, and halved as long as they lead where a strap has no way. Null where it does not come to rest.
 */
const atRest = (
  scene: StrapScene,
  halves: readonly [Half, Half],
  mount: MountEnd,
  begin: Vector,
  tailMm: number,
): Rest | null => {
  let [junction, before]: [Vector, Vector | null] = [begin, null]
  let contact: Vector | null = null
  let halvings = 0
  for (let round = 0; round < MOST_ROUNDS && halvings < MOST_HALVINGS; round += 1) {
    const pair = pairFrom(scene, halves, junction)
    const next = pair && mount(junction, pair.between)
    if (pair === null || next === null) {
      if (before === null) return null
      junction = times(plus(junction, before), 1 / 2)
      halvings += 1
      continue
    }
    const shortMm = Math.min(...pair.held.map((at) => apart(junction, at)))
    const aimed = plus(next, unit(pair.pull), tailMm)
    // Across the plane of both straps a junction between two that lie wide apart is drawn back the hardest.
    const moved = plus(junction, minus(aimed, junction), 1 / (1 + (2 * tailMm) / (shortMm * norm(pair.pull))))
    const isStill = contact !== null && apart(aimed, junction) < STILL_MM && apart(next, contact) < STILL_MM
    contact = next
    before = junction
    junction = plus(next, towards(next, moved), tailMm)
    if (isStill) return { ...pair, contact, junction }
  }
  return null
}

/** Lengths in which the tail is let out, as shares of the whole. */
const LET_OUT = [0.15, 0.3, 0.45, 0.6, 0.7, 0.8, 0.9, 0.95, 1]

/** The same where the whole tail, laid straight toward the neck, is no beginning: it is let out bit by bit. */
const letOut = (
  scene: StrapScene,
  halves: readonly [Half, Half],
  mount: MountEnd,
  neck: Vector,
  tailMm: number,
): Rest | null => {
  const root = mount(neck)
  const pair = root && pairFrom(scene, halves, root)
  const leaves = pair && mount(pair.between)
  let begin = pair && leaves && plus(leaves, towards(leaves, pair.between), tailMm * (LET_OUT[0] ?? 1))
  let rest: Rest | null = null
  for (const share of LET_OUT) {
    rest = begin && atRest(scene, halves, mount, begin, tailMm * share)
    begin = rest && rest.junction
  }
  return rest
}

/**
 * Two shoulder straps sewn to one tail: the junction lies at the tail's length from the mount contact, in line with the resultant
 * of the two equal pulls.
 */
export const joinedStraps = (scene: StrapScene, buckle: Vector): readonly OracleStrap[] => {
  const anchor = scene.anchors.find(({ strap }) => strap === 'shoulder-left')
  const tailMm = scene.belt.shoulderTailMm ?? 0
  if (anchor === undefined) return []
  const halves = (['left', 'right'] as const).map((side): Half => ({
    strap: `shoulder-${side}`,
    body: shoulderEnd(scene.body, side, buckle),
  })) as [Half, Half]
  const mount = mountEnd(anchor.mount, scene.tubes)
  const { centre, radiusMm } = scene.body.shoulderArc
  const neck: Vector = [centre.uMm, scene.body.hip.yMm, centre.vMm + radiusMm]
  const root = mount(neck)
  const isClear = ({ contact, junction }: Rest): boolean =>
    !cutsBackrest(scene, 'shoulder-left', contact, junction)
  const atOnce = root && atRest(scene, halves, mount, plus(root, towards(root, neck), tailMm), tailMm)
  // A tail that would have to come through the backrest may find another place behind it.
  const rest = atOnce && isClear(atOnce) ? atOnce : letOut(scene, halves, mount, neck, tailMm)
  if (rest === null || !isClear(rest)) return []
  return rest.tauts.map((taut, i) => sewn(taut, halves[i]?.strap, rest.contact, rest.junction, tailMm))
}

const sewn = (
  taut: Taut,
  strap: Half['strap'] | undefined,
  contact: Vector,
  junction: Vector,
  tailMm: number,
): OracleStrap => ({
  ...taut,
  contact,
  strap: strap ?? 'shoulder-left',
  junction,
  totalMm: taut.lengthMm + tailMm,
  effective: bentPasses(taut, 1e-6).at(-1) ?? junction,
  second: junction,
})
