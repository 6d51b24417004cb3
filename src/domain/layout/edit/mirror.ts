import type { PointMm } from '../../geometry/point'
import { nearestOnPolyline } from '../../geometry/segment'
import type { Tube } from '../../geometry/tube'
import type { Anchor, Mount } from '../../straps/anchor'
import type { Slot } from '../../straps/seat'
import { areShoulderStrapsJoined, mirroredStrap, strapFamily, type StrapId } from '../../straps/strap'
import type { Layout, Place } from '../document/layout'
import { WRAP_OFF_TUBE_MM } from '../document/limits'
import { pointOnTube } from './tubeMove'

/** The same point on the other side of the seat: mirrored about the vertical plane through its hip point. */
const mirroredAcrossSeat = (place: Place, point: PointMm): PointMm => ({
  ...point,
  yMm: 2 * place.seat.hipPoint.yMm - point.yMm,
})

/** Whether two straps end on one anchor, because they are joined behind the neck: the shoulder straps of some belts. */
export const isSharedAnchor = (place: Place, strap: StrapId): boolean =>
  strapFamily(strap) === 'shoulder' && areShoulderStrapsJoined(place.belt)

/** The anchor of the same pair on the other side, when the pair moves as one or shares its anchor; null otherwise. */
export const mirrorPartner = (place: Place, anchor: Anchor): Anchor | null => {
  const other = mirroredStrap(anchor.strap)
  const movesAlong = place.mirrored[strapFamily(anchor.strap)] || isSharedAnchor(place, anchor.strap)
  if (other === null || !movesAlong) return null
  return place.anchors.find((candidate) => candidate.strap === other) ?? null
}

/** The slot whose straps are those of `slot` on the other side, when every pair concerned moves as one; null otherwise. */
export const mirrorSlot = (place: Place, slot: Slot): Slot | null => {
  if (!slot.straps.every((strap) => place.mirrored[strapFamily(strap)])) return null
  return oppositeSlot(place, slot)
}

/** The slot whose straps are those of `slot` on the other side, split or not; null when there is none. */
export const oppositeSlot = (place: Place, slot: Slot): Slot | null => {
  const others = slot.straps.map(mirroredStrap)
  const isOpposite = (candidate: Slot): boolean =>
    candidate.id !== slot.id &&
    candidate.straps.length === others.length &&
    candidate.straps.every((strap) => others.includes(strap))
  return place.seat.slots.find(isOpposite) ?? null
}

/**
 * A slot's opening on the other side. The turn of a slot in a side wall is the same seen from either side; in the back and the
 * cushion it turns the other way.
 */
export const mirroredOpening = (slot: Slot): Omit<Slot, 'id' | 'straps'> => ({
  face: slot.face,
  centre: { ...slot.centre, yMm: 0 - slot.centre.yMm },
  lengthMm: slot.lengthMm,
  heightMm: slot.heightMm,
  turnDeg: slot.face === 'side' ? slot.turnDeg : 0 - slot.turnDeg,
})

/** Where the other strap of a pair ends while this one ends at `point`: mirrored, or at the same point where they share it. */
export const partnerPoint = (place: Place, strap: StrapId, point: PointMm): PointMm =>
  isSharedAnchor(place, strap) ? point : mirroredAcrossSeat(place, point)

/** What the other strap of a pair is mounted on while this one is on `mount`: its mirror image, or the same where they share it. */
export const partnerMount = (layout: Layout, place: Place, strap: StrapId, mount: Mount): Mount | null =>
  isSharedAnchor(place, strap) ? mount : mirroredMount(layout, place, mount)

/**
 * A mount on the other side of the seat; null when it wraps a tube that has no counterpart there. The normal of a tab's plane is
 * mirrored in y; as a plane has two normals, that is the same as turning and leaning the other way.
 * Source: n = (−sin p · cos l, cos p · cos l, sin l); (nx, −ny, nz) and its opposite are one plane, which is n(−p, −l).
 * The shank of an eye bolt is a direction, not a plane: it turns the other way in plan and rises as before.
 */
const mirroredMount = (layout: Layout, place: Place, mount: Mount): Mount | null => {
  const point = mirroredAcrossSeat(place, mount.point)
  if (mount.kind === 'wrap') {
    const tube = oppositeTube(layout, mount, point)
    if (tube === null) return null
    return { ...mount, tubeId: tube.id, point: pointOnTube(tube.points, point) }
  }
  const tubeId = mount.tubeId === null ? null : (oppositeTube(layout, mount, point)?.id ?? null)
  if (mount.kind === 'eye') return { ...mount, point, planDeg: 0 - mount.planDeg, tubeId }
  return { ...mount, point, planDeg: 0 - mount.planDeg, leanDeg: 0 - mount.leanDeg, tubeId }
}

/**
 * The tube that the mirrored mount is on: as far from it as the mount is from its own, within the tolerance of a wrap. A tube
 * that crosses the car is its own counterpart and comes first.
 */
const oppositeTube = (layout: Layout, mount: Mount, mirrored: PointMm): Tube | null => {
  const own = layout.tubes.find((tube) => tube.id === mount.tubeId)
  if (own === undefined) return null
  const ownMm = nearestOnPolyline(own.points, mount.point).distanceMm
  const isAsFar = (tube: Tube): boolean =>
    Math.abs(nearestOnPolyline(tube.points, mirrored).distanceMm - ownMm) <= WRAP_OFF_TUBE_MM
  return [own, ...layout.tubes].find(isAsFar) ?? null
}
