import type { Anchor } from '../../../../src/domain/straps/anchor'
import type { StrapScene } from '../../../../src/domain/straps/scene'
import { strapFamily, strapSide, strapsOf, type StrapId } from '../../../../src/domain/straps/strap'
import { isLapBehind, isSubBehind, lapEnd, shoulderEnd, subEnd, type BodyEnd } from './bodyEnds'
import type { Opening } from './chain'
import { joinedStraps } from './joined'
import { mountEnd } from './mountEnd'
import { cutsBackrest, isUndecidedWrap, openingsOf, possibleOpenings } from './openings'
import { edgeChain } from './seatSide'
import { bentPasses, tautStrap, type Taut } from './taut'
import { apart, plus, times, vectorOf, type Vector } from './vector'

/** What the slow solver says of one strap. */
export interface OracleStrap extends Taut {
  readonly strap: StrapId
  /** Where the two shoulder straps are sewn together; null when they are not. */
  readonly junction: Vector | null
  /** From the mount contact to the buckle, mm. */
  readonly totalMm: number
  /** The last contact before the body. */
  readonly effective: Vector
  /** The contact next to the mount's. */
  readonly second: Vector
}

/** A turn below this counts as none: rounding of a straight strap. */
export const CLEAN_DEG = 1e-6

const anchorOf = (scene: StrapScene, strap: StrapId): Anchor | undefined =>
  scene.anchors.find((anchor) => anchor.strap === strap)

const finished = (strap: StrapId, taut: Taut, afterTouchMm: number): OracleStrap => {
  const bent = bentPasses(taut, CLEAN_DEG)
  return {
    ...taut,
    strap,
    junction: null,
    totalMm: taut.lengthMm + afterTouchMm,
    effective: bent.at(-1) ?? taut.contact,
    second: bent[0] ?? taut.arrival.touch,
  }
}

/** The openings to try for a strap, or why there is no way. */
const waysOf = (
  scene: StrapScene,
  strap: StrapId,
  from: Vector,
  to: Vector,
  body: BodyEnd,
): readonly (readonly Opening[])[] | null => {
  const openings = possibleOpenings(scene, strap, from, to)
  if (openings.length > 0 || strapFamily(strap) === 'shoulder') return [openings]
  const anchor = anchorOf(scene, strap)
  return anchor ? edgeChain(scene, mountEnd(anchor.mount, scene.tubes), from, body) : null
}

/** One strap by itself, to the end that `body` knows; `hasPath` null where it has none. */
const oneStrap = (scene: StrapScene, strap: StrapId, body: BodyEnd, to: Vector): Taut | null => {
  const anchor = anchorOf(scene, strap)
  if (anchor === undefined || isUndecidedWrap(scene, strap)) return null
  const from = vectorOf(anchor.mount.point)
  const ways = waysOf(scene, strap, from, to, body)
  const isSound = (last: Vector): boolean => strapFamily(strap) !== 'lap' || isLapBehind(scene.body, last)
  const taut = ways && tautStrap(mountEnd(anchor.mount, scene.tubes), ways, body, from, isSound)
  if (!taut) return null
  const isPastRim = strapFamily(strap) === 'shoulder' && taut.passes.length === 0
  if (isPastRim && cutsBackrest(scene, strap, taut.contact, taut.arrival.touch)) return null
  // A tube may straddle the plane of a slot: the contact decides.
  return openingsOf(scene, strap, taut.contact, to) === 'slot-not-reached' ? null : taut
}

const lapStraps = (scene: StrapScene): readonly { side: 'left' | 'right'; taut: Taut; front: Vector }[] =>
  (['left', 'right'] as const).flatMap((side) => {
    const taut = oneStrap(scene, `lap-${side}`, lapEnd(scene.body, side), vectorOf(scene.body.hip))
    const front = taut?.arrival.later[0]
    const last = taut && (bentPasses(taut, CLEAN_DEG).at(-1) ?? taut.contact)
    return taut && front && last && isLapBehind(scene.body, last) ? [{ side, taut, front }] : []
  })

/** Midway between the front contacts of the lap straps, in the middle of the seat. */
const buckleOf = (scene: StrapScene, laps: ReturnType<typeof lapStraps>): Vector | null => {
  if (laps.length === 0) return null
  const sum = laps.reduce<Vector>((total, { front }) => plus(total, front), [0, 0, 0])
  const middle = times(sum, 1 / laps.length)
  return [middle[0], scene.body.hip.yMm, middle[2]]
}

/** A diagonal ends at the front contact of the lap strap on the other side, the other shoulder straps at the buckle. */
const shoulderStrapsEnd = (scene: StrapScene, laps: ReturnType<typeof lapStraps>, buckle: Vector): Vector => {
  if (scene.belt.arrangement !== 3) return buckle
  const other = (scene.belt.diagonal ?? 'left') === 'left' ? 'right' : 'left'
  return laps.find(({ side }) => side === other)?.front ?? buckle
}

/** A shoulder strap whose free run would lead forward from the shoulder has no path. */
const runsRearward = ({ effective, arrival }: OracleStrap): boolean => effective[0] >= arrival.touch[0]

const shoulderStraps = (scene: StrapScene, buckle: Vector): readonly OracleStrap[] => {
  const straps = strapsOf(scene.belt).filter((strap) => strapFamily(strap) === 'shoulder')
  if (scene.belt.shoulderTailMm !== undefined && straps.length === 2) {
    const joined = joinedStraps(scene, buckle)
    return joined.every(runsRearward) ? joined : []
  }
  return straps.flatMap((strap) => {
    const side = strapSide(strap)
    if (side === 'centre') return []
    const { shoulderArc } = scene.body
    const to: Vector = [shoulderArc.centre.uMm, scene.body.hip.yMm, shoulderArc.centre.vMm]
    const taut = oneStrap(scene, strap, shoulderEnd(scene.body, side, buckle), to)
    return taut ? [finished(strap, taut, 0)] : []
  })
}

export interface OraclePlace {
  readonly buckle: Vector | null
  readonly straps: readonly OracleStrap[]
}

/** Every strap of a place that has a path, by the slow solver. */
export const oraclePlace = (scene: StrapScene): OraclePlace => {
  const laps = lapStraps(scene)
  const buckle = buckleOf(scene, laps)
  if (buckle === null) return { buckle, straps: [] }
  const subs = strapsOf(scene.belt).filter((strap) => strapFamily(strap) === 'sub')
  return {
    buckle,
    straps: [
      ...shoulderStraps(scene, shoulderStrapsEnd(scene, laps, buckle)).filter(runsRearward),
      ...laps.map(({ side, taut, front }) => finished(`lap-${side}`, taut, apart(front, buckle))),
      ...subs.flatMap((strap) => {
        const isUnder = scene.belt.thighStraps === 'under-thighs' && strap !== 'sub-centre'
        const taut = oneStrap(scene, strap, subEnd(scene.body, buckle), vectorOf(scene.body.hip))
        return taut && (!isUnder || isSubBehind(scene.body, taut.arrival.touch))
          ? [finished(strap, taut, 0)]
          : []
      }),
    ],
  }
}
