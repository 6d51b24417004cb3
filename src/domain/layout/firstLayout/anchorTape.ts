import type { PointMm } from '../../geometry/point'
import type { Anchor } from '../../straps/anchor'
import { strapFamily, type StrapFamily, strapSide, strapsOf, type StrapId } from '../../straps/strap'
import type { Layout, Place } from '../document/layout'
import { withAnchorMoved } from '../edit/anchorMove'
import { addAnchor } from '../edit/changeAnchors'
import { tubeMiddle } from '../edit/handles'
import { withPlaceChanged } from '../edit/replace'
import { askedPlace } from './askedPlace'
import type { Begun, HungOn } from './question'

/** Straps that are measured together: a pair, or one alone. */
export type StrapGroup = readonly StrapId[]

/** The straps of a family that have a left and a right, as far as the belt has them; the single one of a 3-point belt alone. */
export const sideStraps = (place: Place, family: StrapFamily): StrapGroup =>
  strapsOf(place.belt).filter((strap) => strapFamily(strap) === family && strapSide(strap) !== 'centre')

export const anchorsOf = (place: Place, straps: StrapGroup): readonly Anchor[] =>
  place.anchors.filter(({ strap }) => straps.includes(strap))

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

/** Where the anchors of a group are, in the middle of them. */
export const groupPoint = (place: Place, straps: StrapGroup): PointMm => {
  const points = anchorsOf(place, straps).map(({ mount }) => mount.point)
  return {
    xMm: mean(points.map(({ xMm }) => xMm)),
    yMm: mean(points.map(({ yMm }) => yMm)),
    zMm: mean(points.map(({ zMm }) => zMm)),
  }
}

/** Between the two anchors of a pair; for one alone, how far it is outside the seat's middle, both sideways, mm. */
export const apartMm = (place: Place, straps: StrapGroup): number => {
  const [first, second] = anchorsOf(place, straps)
  if (first === undefined) return 0
  if (second !== undefined) return Math.abs(first.mount.point.yMm - second.mount.point.yMm)
  return outward(first.strap) * (first.mount.point.yMm - place.seat.hipPoint.yMm)
}

const outward = (strap: StrapId): number => (strapSide(strap) === 'left' ? -1 : 1)

/** Each anchor alone at the coordinates given for it, whether its pair moves as one or not. */
const withAnchorsAt = (
  layout: Layout,
  straps: StrapGroup,
  to: (anchor: Anchor) => Partial<PointMm>,
): Layout => {
  const { id, mirrored, anchors } = askedPlace(layout)
  const split = withPlaceChanged(layout, id, (place) => ({
    ...place,
    mirrored: { shoulder: false, lap: false, sub: false },
  }))
  const moved = anchors
    .filter(({ strap }) => straps.includes(strap))
    .reduce((made, anchor) => withAnchorMoved(made, id, anchor.id, to(anchor)), split)
  return withPlaceChanged(moved, id, (place) => ({ ...place, mirrored }))
}

/** The group moved as a whole along one axis until its middle is there. */
export const withGroupAt = (
  layout: Layout,
  straps: StrapGroup,
  axis: 'xMm' | 'yMm' | 'zMm',
  mm: number,
): Layout => {
  const byMm = mm - groupPoint(askedPlace(layout), straps)[axis]
  return withAnchorsAt(layout, straps, ({ mount }) => ({ [axis]: mount.point[axis] + byMm }))
}

/** The two of a pair this far apart about their middle; one alone this far outside the seat's middle. */
export const withApart = (layout: Layout, straps: StrapGroup, mm: number): Layout => {
  const place = askedPlace(layout)
  const isPair = anchorsOf(place, straps).length > 1
  const middleMm = isPair ? groupPoint(place, straps).yMm : place.seat.hipPoint.yMm
  const sideMm = isPair ? mm / 2 : mm
  return withAnchorsAt(layout, straps, ({ strap }) => ({ yMm: middleMm + outward(strap) * sideMm }))
}

/** Whether every strap of the belt has an anchor, and no other strap has. */
export const isComplete = (place: Place): boolean => {
  const straps = strapsOf(place.belt)
  return (
    place.anchors.length === straps.length &&
    straps.every((strap) => place.anchors.some((anchor) => anchor.strap === strap))
  )
}

/** An anchor of the layout that the questions began with, as far as its tube is there. */
const formerAnchor = (layout: Layout, { isFresh, base }: Begun, strap: StrapId): Anchor | null => {
  const former = isFresh ? undefined : askedPlace(base).anchors.find((anchor) => anchor.strap === strap)
  if (former === undefined) return null
  const { mount } = former
  const hasTube = layout.tubes.some(({ id }) => id === mount.tubeId)
  if (hasTube || mount.tubeId === null) return former
  return mount.kind === 'wrap' ? null : { ...former, mount: { ...mount, tubeId: null } }
}

/** An anchor for every strap of the belt: as the questions began with it, else where such anchors start; none for any other strap. */
export const completed = (layout: Layout, begun: Begun): Layout => {
  const { id, belt } = askedPlace(layout)
  const straps = strapsOf(belt)
  const kept = withPlaceChanged(layout, id, (place) => {
    const missing = straps.filter((strap) => place.anchors.every((anchor) => anchor.strap !== strap))
    const former = missing.flatMap((strap) => formerAnchor(layout, begun, strap) ?? [])
    return {
      ...place,
      anchors: [...place.anchors.filter(({ strap }) => straps.includes(strap)), ...former],
    }
  })
  const added = straps.reduce((made, strap) => addAnchor(made, id, strap), kept)
  return withPlaceChanged(added, id, (place) => ({
    ...place,
    anchors: straps.flatMap((strap) => place.anchors.find((anchor) => anchor.strap === strap) ?? []),
  }))
}

/** What a group hangs on along one axis: the tube that its first anchor is on, else the seat. */
export const hungOn = (layout: Layout, straps: StrapGroup, axis: keyof PointMm): HungOn => {
  const place = askedPlace(layout)
  const tubeId = anchorsOf(place, straps)[0]?.mount.tubeId ?? null
  const tube = layout.tubes.find(({ id }) => id === tubeId)
  const seatMm = place.seat.hipPoint[axis]
  return tube === undefined
    ? { tubeId: null, atMm: seatMm, seatMm }
    : { tubeId, atMm: tubeMiddle(tube)[axis], seatMm }
}
