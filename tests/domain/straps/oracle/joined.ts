import type { StrapScene } from '../../../../src/domain/straps/scene'
import { shoulderEnd, type BodyEnd } from './bodyEnds'
import { mountEnd } from './mountEnd'
import { cutsBackrest, openingsOf } from './openings'
import type { OracleStrap } from './place'
import { bentPasses, tautStrap, type Taut } from './taut'
import { apart, plus, towards, unit, vectorOf, type Vector } from './vector'

const STILL_MM = 1e-8

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

/**
 * Two shoulder straps sewn to one tail: the junction lies at the tail's length from the mount contact, in line with the resultant
 * of the two equal pulls. Found by steps towards that line short enough not to swing over.
 */
export const joinedStraps = (scene: StrapScene, buckle: Vector): readonly OracleStrap[] => {
  const anchor = scene.anchors.find(({ strap }) => strap === 'shoulder-left')
  const tailMm = scene.belt.shoulderTailMm ?? 0
  if (anchor === undefined) return []
  const halves = (['left', 'right'] as const).map((side): Half => ({
    strap: `shoulder-${side}`,
    body: shoulderEnd(scene.body, side, buckle),
  }))
  const mount = mountEnd(anchor.mount, scene.tubes)
  const { centre, radiusMm } = scene.body.shoulderArc
  const neck: Vector = [centre.uMm, scene.body.hip.yMm, centre.vMm + radiusMm]
  let contact = mount(neck) ?? vectorOf(anchor.mount.point)
  let junction = plus(contact, towards(contact, neck), tailMm)
  for (let round = 0; round < 5000; round += 1) {
    const at = junction
    const tauts = halves.flatMap((half) => fromJunction(scene, half, at) ?? [])
    const [left, right] = tauts
    if (left === undefined || right === undefined) return []
    const shortMm = Math.min(...tauts.map((taut) => apart(at, nextOf(taut))))
    const pull = unit(plus(towards(at, nextOf(left)), towards(at, nextOf(right))))
    const next = mount(at)
    if (next === null) return []
    const aimed = plus(next, pull, tailMm)
    const share = 1 / (1 + tailMm / shortMm)
    const moved = plus(at, [aimed[0] - at[0], aimed[1] - at[1], aimed[2] - at[2]], share)
    const isStill = apart(moved, at) < STILL_MM && apart(next, contact) < STILL_MM
    contact = next
    junction = plus(contact, towards(contact, moved), tailMm)
    if (isStill && cutsBackrest(scene, 'shoulder-left', contact, junction)) return []
    if (isStill)
      return [left, right].map((taut, i) => sewn(taut, halves[i]?.strap, contact, junction, tailMm))
  }
  throw new Error('the junction does not come to rest')
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
