import type { StrapScene } from '../../../../src/domain/straps/scene'
import { strapFamily, strapSide } from '../../../../src/domain/straps/strap'
import { CLEAN_DEG, type OracleStrap } from './place'
import { bentPasses } from './taut'

const mountKind = (scene: StrapScene, strap: OracleStrap): string => {
  const mount = scene.anchors.find((anchor) => anchor.strap === strap.strap)?.mount
  if (mount?.kind !== 'wrap') return mount?.kind ?? 'none'
  const [from, to] = scene.tubes.find(({ id }) => id === mount.tubeId)?.points ?? []
  const isLateral = from?.xMm === to?.xMm && from?.zMm === to?.zMm
  return isLateral ? 'wrap on a lateral tube' : 'wrap on a tilted tube'
}

const openingKinds = (scene: StrapScene, strap: OracleStrap): readonly string[] => {
  const bent = bentPasses(strap, CLEAN_DEG).length
  const slot = scene.seat.slots.find(({ straps }) => straps.includes(strap.strap))
  if (slot === undefined) {
    if (bent === 0) return ['free']
    return [strapFamily(strap.strap) === 'shoulder' ? 'rim' : 'seat side']
  }
  const thickness = (scene.seat.shellThicknessMm ?? 0) > 0 ? 'thick' : 'thin'
  const turned = slot.turnDeg === 0 ? 'straight' : 'turned'
  const held = bent === 0 ? 'clean' : `held at ${bent}`
  return [`${thickness} ${slot.face} slot`, `${turned} ${slot.face} slot`, `${slot.face} slot ${held}`]
}

/** How a shoulder strap runs from the shoulder, seen from above. */
const wayKinds = (scene: StrapScene, strap: OracleStrap): readonly string[] => {
  if (strapFamily(strap.strap) !== 'shoulder') return []
  const outward = strapSide(strap.strap) === 'left' ? -1 : 1
  const out = (y: number): number => outward * (y - scene.body.hip.yMm)
  const from = out(strap.arrival.touch[1])
  const to = out(strap.contact[1])
  const way = to < 0 ? 'crossed' : to < from ? 'converging' : 'diverging'
  // Shoulder arc's front, onto the chest, off it, buckle.
  const isOnChest = strap.arrival.later.length > 2
  return [way, ...(strap.junction ? ['joined'] : []), ...(isOnChest ? ['over the chest'] : [])]
}

/** What a strap is an example of; to see that random cars hold enough of everything. */
export const kindsOf = (scene: StrapScene, strap: OracleStrap): readonly string[] => [
  mountKind(scene, strap),
  ...openingKinds(scene, strap),
  ...wayKinds(scene, strap),
]

/** All that must be met often. */
export const KINDS = [
  'tab',
  'eye',
  'wrap on a lateral tube',
  'wrap on a tilted tube',
  'free',
  'rim',
  'seat side',
  ...['back', 'side', 'cushion'].flatMap((face) => [
    ...['thick', 'thin', 'turned', 'straight'].map((kind) => `${kind} ${face} slot`),
    ...['clean', 'held at 1', 'held at 2'].map((held) => `${face} slot ${held}`),
  ]),
  'crossed',
  'converging',
  'diverging',
  'joined',
  'over the chest',
]
