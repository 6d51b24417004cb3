import type { Body } from '../../../body/occupant'
import { posedBody } from '../../../body/posed'
import type { PointMm } from '../../../geometry/point'
import type { Tube } from '../../../geometry/tube'
import type { Anchor } from '../../../straps/anchor'
import type { StrapScene } from '../../../straps/scene'
import { seatPose } from '../../../straps/seatPose'
import { type SolvedPlace, solvePlace } from '../../../straps/solve'
import type { SolvedSitting } from '../solvedSittings'
import type { ErrorVariable } from './errorVariables'

/** How far each variable is off, as a share of its ±: −1…1, in the order of the variables. */
export type Shares = readonly number[]

/** One sitting with everything that is needed to solve it with errors, and what was solved already. */
export interface UncertainSitting {
  readonly solved: SolvedSitting
  readonly body: Body
  readonly known: Map<string, SolvedPlace>
  readonly reclined: Map<number, Pick<StrapScene, 'pose' | 'body'>>
}

export const uncertainSitting = (solved: SolvedSitting, body: Body): UncertainSitting => ({
  solved,
  body,
  known: new Map(),
  reclined: new Map(),
})

type Offsets = Partial<Record<string, number>>

const shifted = (point: PointMm, off: Offsets): PointMm => ({
  xMm: point.xMm + (off.xMm ?? 0),
  yMm: point.yMm + (off.yMm ?? 0),
  zMm: point.zMm + (off.zMm ?? 0),
})

/** What is off and by how much, by what it belongs to; what is right is left out. */
const offsetsBy = (variables: readonly ErrorVariable[], shares: Shares): ReadonlyMap<string, Offsets> => {
  const all = new Map<string, Record<string, number>>()
  for (const [index, variable] of variables.entries()) {
    const off = variable.size * (shares[index] ?? 0)
    if (off === 0) continue
    const owner = variable.kind === 'anchor' || variable.kind === 'tab' ? variable.anchorId : variable.kind
    const name =
      variable.kind === 'tab' ? variable.angle : variable.kind === 'recline' ? 'reclineDeg' : variable.axis
    const own = all.get(owner) ?? {}
    own[name] = off
    all.set(owner, own)
  }
  return all
}

/** The same text for the same straps with the same errors, whichever question asks. */
const keyOf = (straps: readonly string[], offsets: ReadonlyMap<string, Offsets>): string => {
  let key = straps.join()
  for (const [owner, off] of offsets)
    for (const name in off) key += `|${JSON.stringify(owner)}${name}${off[name]}`
  return key
}

const offAnchor = (anchor: Anchor, off: Offsets): Anchor => {
  const { mount } = anchor
  const point = shifted(mount.point, off)
  if (mount.kind !== 'tab') return { ...anchor, mount: { ...mount, point } }
  const planDeg = mount.planDeg + (off.planDeg ?? 0)
  const leanDeg = mount.leanDeg + (off.leanDeg ?? 0)
  return { ...anchor, mount: { ...mount, point, planDeg, leanDeg } }
}

/** Seat frame and body with the recline read wrongly by `offDeg`; the back's travel is not asked, since a reading is not a position. */
export const reclinedBy = (sitting: UncertainSitting, offDeg: number): Pick<StrapScene, 'pose' | 'body'> => {
  const { scene, sitting: seated } = sitting.solved
  if (offDeg === 0) return { pose: scene.pose, body: scene.body }
  const known = sitting.reclined.get(offDeg)
  if (known !== undefined) return known
  const pose = seatPose(scene.seat, seated.slideMm, seated.reclineDeg + offDeg)
  const fresh = { pose, body: posedBody(sitting.body, pose, scene.seat.hipHeightMm) }
  sitting.reclined.set(offDeg, fresh)
  return fresh
}

/**
 * A sitting solved with errors. Only the anchors whose strap is in `straps` are kept, so that nothing is solved that is not asked;
 * a wrap's tube stays where it is drawn, since its centre line is where the wrap's own point is.
 */
export const offSolved = (
  sitting: UncertainSitting,
  straps: readonly string[],
  variables: readonly ErrorVariable[],
  shares: Shares,
): SolvedPlace => {
  const offsets = offsetsBy(variables, shares)
  const key = keyOf(straps, offsets)
  const known = sitting.known.get(key)
  if (known !== undefined) return known
  const { scene } = sitting.solved
  const anchors = scene.anchors
    .filter(({ strap }) => straps.includes(strap))
    .map((anchor) => {
      const off = offsets.get(anchor.id)
      return off === undefined ? anchor : offAnchor(anchor, off)
    })
  const tubes = offsets.has('tubes')
    ? scene.tubes.map((tube): Tube => ({
        ...tube,
        points: tube.points.map((point) => shifted(point, offsets.get('tubes') ?? {})),
      }))
    : scene.tubes
  const fresh = solvePlace({
    ...scene,
    ...reclinedBy(sitting, offsets.get('recline')?.reclineDeg ?? 0),
    anchors,
    tubes,
  })
  sitting.known.set(key, fresh)
  return fresh
}
