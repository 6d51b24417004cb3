import { type Anchor, formShear, tabForm, type TabForm, type TabMount } from '../../straps/anchor'
import { mirroredStrap, type StrapFamily, strapFamily, type StrapId, strapSide } from '../../straps/strap'
import type { Layout, Place } from '../document/layout'
import { freshId } from './change'
import { isSharedAnchor, mirroredOpening, mirrorPartner, oppositeSlot, partnerMount } from './mirror'
import { withPlaceChanged } from './replace'
import { startingMount, turnedAlongPull } from './startingMount'
import { pointOnTube } from './tubeMove'

/**
 * One more anchor for a strap that has none: the mirror image of the other side's where that pair moves as one, else a tab at
 * its starting point. Where neither side of such a pair has an anchor, both get one.
 */
export const addAnchor = (layout: Layout, placeId: string, strap: StrapId): Layout => {
  const place = layout.places.find((candidate) => candidate.id === placeId)
  if (place === undefined || place.anchors.some((anchor) => anchor.strap === strap)) return layout
  const other = mirroredStrap(strap)
  const movesAsOne = other !== null && (place.mirrored[strapFamily(strap)] || isSharedAnchor(place, strap))
  const partner = place.anchors.find((anchor) => anchor.strap === other)
  if (movesAsOne && partner !== undefined) {
    const mount = partnerMount(layout, place, partner.strap, partner.mount) ?? startingMount(place, strap)
    return withNewAnchor(layout, placeId, strap, mount)
  }
  const straps = movesAsOne ? [strap, other] : [strap]
  if (isSharedAnchor(place, strap)) return withSharedAnchor(layout, place, straps)
  const added = straps.reduce(
    (made, id) => withNewAnchor(made, placeId, id, startingMount(place, id)),
    layout,
  )
  return withPlaceChanged(added, placeId, (changed) => turnedAlongPull(added, changed, straps))
}

/** Both straps on one tab in the seat's middle, its plane fore-and-aft as their common tail pulls. */
const withSharedAnchor = (layout: Layout, place: Place, straps: readonly StrapId[]): Layout => {
  const [first] = straps
  if (first === undefined) return layout
  const start = startingMount(place, first)
  const mount = { ...start, point: { ...start.point, yMm: place.seat.hipPoint.yMm }, planDeg: 0 }
  return straps.reduce((made, strap) => withNewAnchor(made, place.id, strap, mount), layout)
}

const withNewAnchor = (layout: Layout, placeId: string, strap: StrapId, mount: Anchor['mount']): Layout => {
  const id = freshId(
    strap,
    layout.places.flatMap((place) => place.anchors),
  )
  return withPlaceChanged(layout, placeId, (place) => ({
    ...place,
    anchors: [...place.anchors, { id, strap, mount }],
  }))
}

export const removeAnchor = (layout: Layout, placeId: string, anchorId: string): Layout =>
  withPlaceChanged(layout, placeId, (place) => ({
    ...place,
    anchors: place.anchors.filter((anchor) => anchor.id !== anchorId),
  }))

/**
 * The layout with an anchor mounted as given; a wrap is put on the nearest place of its tube. The other side of a mirrored pair
 * becomes the mirror image, where there is a tube for it.
 */
export const withAnchor = (
  layout: Layout,
  placeId: string,
  anchorId: string,
  mount: Anchor['mount'],
): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const anchor = place.anchors.find((candidate) => candidate.id === anchorId)
    const seated = seatedMount(layout, mount)
    if (anchor === undefined || seated === null) return place
    const partner = mirrorPartner(place, anchor)
    const anchors = place.anchors.map((old): Anchor => {
      if (old === anchor) return { ...old, mount: seated }
      return old === partner
        ? { ...old, mount: partnerMount(layout, place, anchor.strap, seated) ?? old.mount }
        : old
    })
    return { ...place, anchors }
  })

const seatedMount = (layout: Layout, mount: Anchor['mount']): Anchor['mount'] | null => {
  if (mount.tubeId === null) return mount
  const tube = layout.tubes.find((candidate) => candidate.id === mount.tubeId)
  if (tube === undefined) return null
  return mount.kind !== 'wrap' ? mount : { ...mount, point: pointOnTube(tube.points, mount.point) }
}

/** An anchor as a tab of a form where its strap now ends; a tab keeps its plane, plate and hole, and its sizes while the form stays. */
export const asTab = (place: Place, anchor: Anchor, form: TabForm): TabMount => {
  const { mount } = anchor
  const tab: TabMount =
    mount.kind === 'tab'
      ? mount
      : { ...startingMount(place, anchor.strap), point: mount.point, tubeId: mount.tubeId }
  const { form: _old, ...plain } = tabForm(tab) === form ? tab : withoutSizes(tab)
  return { ...plain, ...(form === 'plate' ? {} : { form }), shear: formShear(form) ?? plain.shear }
}

/** A tab whose width, edge distance and clevis gap are chosen again: each form means something else by them. */
export const withoutSizes = ({
  widthMm: _width,
  edgeDistanceMm: _edge,
  gapMm: _gap,
  ...plain
}: TabMount): TabMount => plain

/** An anchor as a wrap round a tube, over its top and between guide hoops, at the place nearest to where the strap now ends. */
export const asWrap = (anchor: Anchor, tubeId: string): Anchor['mount'] =>
  anchor.mount.kind === 'wrap'
    ? { ...anchor.mount, tubeId }
    : { kind: 'wrap', tubeId, point: anchor.mount.point, over: 'over', guideHoops: true }

/**
 * Whether the two sides of a family move as one. Joining them again makes the right side, anchors and slots, the mirror image of
 * the left; a right-hand wrap without a tube for it stays where it is.
 */
export const withMirrored = (
  layout: Layout,
  placeId: string,
  family: StrapFamily,
  isMirrored: boolean,
): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const changed = { ...place, mirrored: { ...place.mirrored, [family]: isMirrored } }
    return isMirrored ? withRightLikeLeft(layout, changed, family) : changed
  })

const withRightLikeLeft = (layout: Layout, place: Place, family: StrapFamily): Place => {
  const anchors = place.anchors.map((anchor): Anchor => {
    if (strapFamily(anchor.strap) !== family || strapSide(anchor.strap) !== 'right') return anchor
    const left = place.anchors.find((candidate) => candidate.strap === mirroredStrap(anchor.strap))
    const mount = left === undefined ? null : partnerMount(layout, place, left.strap, left.mount)
    return mount === null ? anchor : { ...anchor, mount }
  })
  const slots = place.seat.slots.map((slot) => {
    const isRight = slot.straps.every(
      (strap) => strapFamily(strap) === family && strapSide(strap) === 'right',
    )
    const left = isRight ? oppositeSlot(place, slot) : null
    return left === null ? slot : { ...slot, ...mirroredOpening(left) }
  })
  return { ...place, anchors, seat: { ...place.seat, slots } }
}
