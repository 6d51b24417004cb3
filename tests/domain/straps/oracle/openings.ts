import { vehiclePoint } from '../../../../src/domain/body/pose'
import type { PointMm } from '../../../../src/domain/geometry/point'
import type { StrapScene } from '../../../../src/domain/straps/scene'
import type { Slot } from '../../../../src/domain/straps/seat'
import { strapFamily, type StrapId } from '../../../../src/domain/straps/strap'
import type { Opening } from './chain'
import { cross, dot, minus, unit, vectorOf, type Vector } from './vector'

const DEG = Math.PI / 180

/** The long and short direction of a slot in the seat frame, as said in the model of a slot (seat.ts). */
const slotAxes = ({ face, turnDeg }: Slot): { long: Vector; short: Vector; normal: Vector } => {
  const c = Math.cos(turnDeg * DEG)
  const s = Math.sin(turnDeg * DEG)
  switch (face) {
    case 'back':
      return { long: [0, c, s], short: [0, -s, c], normal: [1, 0, 0] }
    case 'side':
      return { long: [c, 0, s], short: [-s, 0, c], normal: [0, 1, 0] }
    case 'cushion':
      return { long: [s, c, 0], short: [c, -s, 0], normal: [0, 0, 1] }
  }
}

const pointOf = ([xMm, yMm, zMm]: Vector): PointMm => ({ xMm, yMm, zMm })

/** The rectangles a slot opens for the middle of the webbing: one, or one on each face of a thick shell. */
export const slotOpenings = (scene: StrapScene, slot: Slot, strap: StrapId): readonly Opening[] => {
  const { long, short, normal } = slotAxes(slot)
  const middle = vectorOf(slot.centre)
  const posed = (at: Vector): Vector => vectorOf(vehiclePoint(scene.pose, pointOf(at)))
  const zero = posed([0, 0, 0])
  const turned = (direction: Vector): Vector => unit(minus(posed(direction), zero))
  const takenMm = slot.face === 'side' ? 0 : scene.belt.webbingMm[strapFamily(strap)] / 2
  const longMm = Math.max(0, slot.lengthMm / 2 - takenMm)
  const thickMm = scene.seat.shellThicknessMm ?? 0
  const offsets = thickMm > 0 ? [-thickMm / 2, thickMm / 2] : [0]
  return offsets.map((offset) => ({
    origin: posed([
      middle[0] + normal[0] * offset,
      middle[1] + normal[1] * offset,
      middle[2] + normal[2] * offset,
    ]),
    across: turned(long),
    up: turned(short),
    low: [-longMm, -slot.heightMm / 2],
    high: [longMm, slot.heightMm / 2],
  }))
}

/** Signed distance of a point from an opening's plane. */
export const planeDistance = ({ origin, across, up }: Opening, at: Vector): number =>
  dot(minus(at, origin), cross(across, up))

/** The backrest rim: everything above it in the vertical plane through it. */
export const rimOpening = (scene: StrapScene): Opening => {
  const { xMm, zMm } = scene.seat.backrestRim
  return {
    origin: vectorOf(vehiclePoint(scene.pose, { xMm, yMm: 0, zMm })),
    across: [0, 1, 0],
    up: [0, 0, 1],
    low: [-Infinity, 0],
    high: [Infinity, Infinity],
    isOpenAbove: true,
  }
}

/** A point of the vehicle as the seat sees it: hip point as origin, turned back by the recline. */
const inSeat = ({ pose }: StrapScene, at: Vector): { readonly x: number; readonly z: number } => {
  const [dx, , dz] = minus(at, vectorOf(pose.hip))
  const [c, s] = [Math.cos(pose.reclineDeg * DEG), Math.sin(pose.reclineDeg * DEG)]
  return { x: dx * c - dz * s, z: dx * s + dz * c }
}

/** Whether a straight shoulder strap or tail without a slot cuts the backrest: seen from the seat, the line straight down from its rim. */
export const cutsBackrest = (scene: StrapScene, strap: StrapId, from: Vector, to: Vector): boolean => {
  if (scene.seat.slots.some(({ straps }) => straps.includes(strap))) return false
  const { xMm, zMm } = scene.seat.backrestRim
  const [a, b] = [inSeat(scene, from), inSeat(scene, to)]
  if (a.x <= xMm || b.x >= xMm) return false
  return a.z + ((b.z - a.z) * (a.x - xMm)) / (a.x - b.x) < zMm
}

/** The openings on the way from a mount (its middle at `from`), the mount's side first. */
export const possibleOpenings = (
  scene: StrapScene,
  strap: StrapId,
  from: Vector,
  to: Vector,
): readonly Opening[] => {
  const slot = scene.seat.slots.find(({ straps }) => straps.includes(strap))
  if (slot === undefined) {
    if (strapFamily(strap) !== 'shoulder') return []
    const rim = rimOpening(scene)
    return from[0] > rim.origin[0] ? [rim] : []
  }
  const toBody = (opening: Opening): number =>
    planeDistance(opening, from) * Math.sign(planeDistance(opening, to))
  return slotOpenings(scene, slot, strap).toSorted((a, b) => toBody(b) - toBody(a))
}

/** The same for a contact at `from`, if that lies beyond all of them as seen from the body at `to`. */
export const openingsOf = (
  scene: StrapScene,
  strap: StrapId,
  from: Vector,
  to: Vector,
): readonly Opening[] | 'slot-not-reached' => {
  const openings = possibleOpenings(scene, strap, from, to)
  const isReached = openings.every(
    (opening) =>
      opening.isOpenAbove === true || planeDistance(opening, from) * planeDistance(opening, to) < 0,
  )
  return isReached ? openings : 'slot-not-reached'
}

/**
 * Whether a wrap is one that the model leaves open: its tube across or close by the plane of the strap's slot (then it depends on the
 * contact whether the slot is reached), or the slot straight above or below it (then nothing says what is over and what under).
 */
export const isUndecidedWrap = (scene: StrapScene, strap: StrapId): boolean => {
  const mount = scene.anchors.find((anchor) => anchor.strap === strap)?.mount
  const tube = scene.tubes.find(({ id }) => mount?.kind === 'wrap' && id === mount.tubeId)
  const slot = scene.seat.slots.find(({ straps }) => straps.includes(strap))
  if (mount === undefined || tube === undefined || slot === undefined) return false
  const centre = vectorOf(mount.point)
  const openings = slotOpenings(scene, slot, strap)
  const isSteep = openings.some(({ origin }) => {
    const [x, , z] = minus(origin, centre)
    return Math.abs(z) > 1.5 * Math.abs(x)
  })
  return (
    isSteep || openings.some((opening) => Math.abs(planeDistance(opening, centre)) <= tube.outsideDiameterMm)
  )
}
