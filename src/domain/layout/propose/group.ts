import { pointDistanceMm, type PointMm } from '../../geometry/point'
import { nearestOnPolyline } from '../../geometry/segment'
import type { Tube } from '../../geometry/tube'
import { err, ok, type Result } from '../../result'
import type { Anchor } from '../../straps/anchor'
import { mirroredStrap, STRAP_IDS, strapFamily, strapsOf, strapSide } from '../../straps/strap'
import type { Layout, Place } from '../document/layout'
import { isBetweenEnds, overhangAt } from '../../zones/slide'
import { isSharedAnchor, partnerMount } from '../edit/mirror'
import { limitedPoint } from '../edit/tubeMove'
import {
  boxTrack,
  crossingsAlong,
  heldTrack,
  type Spot,
  standingTrack,
  testedTrack,
  type Track,
  wrapTrack,
} from './track'
import type { BoxMm, ProposalWish, WishProblem } from './wish'

type Mounts = ReadonlyMap<string, Anchor['mount']>

/** What moves together: an anchor, with the other side of its pair where that follows, and where it may lie. */
export interface MovingGroup {
  readonly primary: Anchor
  readonly partner: Anchor | null
  /** At least one. */
  readonly tracks: readonly Track[]
  /** The mounts with the primary anchor at a spot, by anchor id; null where the partner has no place that matches. */
  readonly mountsAt: (spot: Spot) => Mounts | null
}

/** As far off the middle counts as in the middle. Our judgement: half of what a tape is read to. */
const IN_THE_MIDDLE_MM = 0.5

/** A tab so much further from its tube than as drawn is no longer taken to be on it. Our judgement. */
const STILL_ON_TUBE_MM = 1

/** The box about everything that is there to weld to: tubes and anchors. Null in a car without either. */
export const carBox = (layout: Layout): BoxMm | null => {
  const points = [
    ...layout.tubes.flatMap((tube) => tube.points),
    ...layout.places.flatMap(({ anchors }) => anchors.map(({ mount }) => mount.point)),
  ]
  const [first] = points
  if (first === undefined) return null
  const corner = (pick: (...values: number[]) => number): PointMm => ({
    xMm: pick(...points.map(({ xMm }) => xMm)),
    yMm: pick(...points.map(({ yMm }) => yMm)),
    zMm: pick(...points.map(({ zMm }) => zMm)),
  })
  return { min: corner(Math.min), max: corner(Math.max) }
}

/** Everything that says where one anchor may lie. */
interface Allowance {
  readonly layout: Layout
  readonly place: Place
  readonly wish: ProposalWish
  readonly anchor: Anchor
  /** Held in the seat's middle: the centre strap, and the anchor that both shoulder straps share where symmetry is asked for. */
  readonly isInMiddle: boolean
}

/** A hole on a tube's surface is not inside it; rounding of a stand-off of nothing. Our judgement. */
const ON_SURFACE_MM = 1e-6

const isInsideTube = (tube: Tube, point: PointMm): boolean =>
  nearestOnPolyline(tube.points, point).distanceMm < tube.outsideDiameterMm / 2 - ON_SURFACE_MM

const isWithinBox = ({ min, max }: BoxMm, { xMm, yMm, zMm }: PointMm): boolean =>
  xMm >= min.xMm && xMm <= max.xMm && yMm >= min.yMm && yMm <= max.yMm && zMm >= min.zMm && zMm <= max.zMm

/** The side of the seat an anchor keeps to; an anchor that both shoulder straps share has none. */
const sideHeld = (place: Place, { strap }: Anchor): 'left' | 'right' | 'centre' =>
  isSharedAnchor(place, strap) ? 'centre' : strapSide(strap)

/** Rounding of coordinates of some metres, mm. */
const OVERHANG_ROUNDING_MM = 1e-6

/** Whether an anchor at a point of a tube lies wholly on it, or sticks out beyond its end no more than it does as drawn. */
const isOnTube = (layout: Layout, { belt }: Place, anchor: Anchor, { point, tubeId }: Spot): boolean => {
  const tube = layout.tubes.find(({ id }) => id === tubeId)
  if (tube === undefined) return true
  const drawn = anchor.mount.tubeId === tubeId ? anchor.mount.point : null
  const drawnMm = drawn === null ? 0 : overhangAt({ anchor, point: drawn, tube, belt })
  return overhangAt({ anchor, point, tube, belt }) <= drawnMm + OVERHANG_ROUNDING_MM
}

const isAllowedSpot = ({ layout, place, wish, anchor, isInMiddle }: Allowance, spot: Spot): boolean => {
  const { point } = spot
  if (pointDistanceMm(point, limitedPoint(point)) > 0) return false
  const acrossMm = point.yMm - place.seat.hipPoint.yMm
  const side = sideHeld(place, anchor)
  if (isInMiddle) {
    if (Math.abs(acrossMm) > IN_THE_MIDDLE_MM) return false
  } else if ((side === 'left' && acrossMm > 0) || (side === 'right' && acrossMm < 0)) return false
  if (wish.space.kind === 'anywhere' && wish.space.box !== null && !isWithinBox(wish.space.box, point))
    return false
  if (!isOnTube(layout, place, anchor, spot)) return false
  return anchor.mount.kind === 'wrap' || !layout.tubes.some((tube) => isInsideTube(tube, point))
}

/** The tracks along one tube; in the seat's middle also at the very places where the tube crosses it. */
const tubeTracks = (
  { place, anchor, isInMiddle }: Allowance,
  tube: Tube,
  standOffMm: number,
): readonly Track[] => {
  const whole = anchor.mount.kind === 'wrap' ? wrapTrack(tube) : standingTrack(tube, standOffMm)
  if (!isInMiddle) return [whole]
  const crossings = crossingsAlong(tube, place.seat.hipPoint.yMm)
  return [...crossings.map((alongMm) => heldTrack(whole, new Map([[0, alongMm]]))), whole]
}

const anywhereTracks = (allowance: Allowance, asked: BoxMm | null): readonly Track[] => {
  const { layout, place, anchor, isInMiddle } = allowance
  const { mount } = anchor
  const tube = layout.tubes.find(({ id }) => id === mount.tubeId)
  if (mount.kind === 'wrap') return tube === undefined ? [] : tubeTracks(allowance, tube, 0)
  const box = asked ?? carBox(layout)
  if (box === null) return []
  const offMm = tube === undefined ? 0 : nearestOnPolyline(tube.points, mount.point).distanceMm
  const tubeIdAt = (point: PointMm): string | null =>
    tube !== undefined &&
    isBetweenEnds(tube, point) &&
    nearestOnPolyline(tube.points, point).distanceMm <= offMm + STILL_ON_TUBE_MM
      ? tube.id
      : null
  const middleMm = place.seat.hipPoint.yMm
  const side = sideHeld(place, anchor)
  const sided: BoxMm = {
    min: { ...box.min, yMm: side === 'right' ? Math.max(middleMm, box.min.yMm) : box.min.yMm },
    max: { ...box.max, yMm: side === 'left' ? Math.min(middleMm, box.max.yMm) : box.max.yMm },
  }
  if (isInMiddle) return [heldTrack(boxTrack(box, tubeIdAt), new Map([[1, middleMm]]))]
  return sided.min.yMm > sided.max.yMm ? [] : [boxTrack(sided, tubeIdAt)]
}

const tracksOf = (allowance: Allowance): readonly Track[] => {
  const { layout, wish } = allowance
  const { space } = wish
  const tracks =
    space.kind === 'anywhere'
      ? anywhereTracks(allowance, space.box)
      : layout.tubes
          .filter(({ id }) => space.tubeIds.includes(id))
          .flatMap((tube) => tubeTracks(allowance, tube, space.standOffMm))
  return tracks.map((track) => testedTrack(track, (spot) => isAllowedSpot(allowance, spot)))
}

const mountAt = ({ mount }: Anchor, { point, tubeId }: Spot): Anchor['mount'] | null => {
  if (mount.kind !== 'wrap') return { ...mount, point, tubeId }
  return tubeId === null ? null : { ...mount, point, tubeId }
}

const mountsOf = (
  layout: Layout,
  place: Place,
  primary: Anchor,
  partner: Anchor | null,
): MovingGroup['mountsAt'] => {
  return (spot) => {
    const mount = mountAt(primary, spot)
    if (mount === null) return null
    if (partner === null) return new Map([[primary.id, mount]])
    const other = partnerMount(layout, place, primary.strap, mount)
    // A tab on a tube whose mirror image would hang in the air is no symmetric pair.
    if (other === null || (mount.tubeId !== null && other.tubeId === null)) return null
    if (!isOnTube(layout, place, partner, other)) return null
    return new Map([
      [primary.id, mount],
      [partner.id, other],
    ])
  }
}

const groupOf = (layout: Layout, place: Place, wish: ProposalWish, primary: Anchor): MovingGroup => {
  const isShared = isSharedAnchor(place, primary.strap)
  const isMirrored = wish.symmetric || place.mirrored[strapFamily(primary.strap)]
  const other = place.anchors.find(({ strap }) => strap === mirroredStrap(primary.strap)) ?? null
  const partner = isShared || isMirrored ? other : null
  const isInMiddle = strapSide(primary.strap) === 'centre' || (isShared && wish.symmetric)
  return {
    primary,
    partner,
    tracks: tracksOf({ layout, place, wish, anchor: primary, isInMiddle }),
    mountsAt: mountsOf(layout, place, primary, partner),
  }
}

/** The lap straps come first, because they decide where the buckle is that the others run to. */
const FAMILY_ORDER = ['lap', 'shoulder', 'sub'] as const

const anchorsInOrder = (place: Place): readonly Anchor[] => {
  const straps = strapsOf(place.belt)
  const used = place.anchors.filter(({ strap }) => straps.includes(strap))
  return FAMILY_ORDER.flatMap((family) =>
    used
      .filter(({ strap }) => strapFamily(strap) === family)
      .toSorted((a, b) => STRAP_IDS.indexOf(a.strap) - STRAP_IDS.indexOf(b.strap)),
  )
}

const groupsFrom = (layout: Layout, place: Place, wish: ProposalWish): readonly MovingGroup[] => {
  const anchors = anchorsInOrder(place)
  const groups: MovingGroup[] = []
  for (const anchor of anchors) {
    if (wish.anchorId !== null && anchor.id !== wish.anchorId) continue
    if (groups.some(({ partner }) => partner?.id === anchor.id)) continue
    groups.push(groupOf(layout, place, wish, anchor))
  }
  return groups
}

const boxProblem = ({ space }: ProposalWish): WishProblem | null => {
  if (space.kind === 'tubes' || space.box === null) return null
  const { min, max } = space.box
  if (min.xMm > max.xMm) return { kind: 'box-turned-round', axis: 'x' }
  if (min.yMm > max.yMm) return { kind: 'box-turned-round', axis: 'y' }
  return min.zMm > max.zMm ? { kind: 'box-turned-round', axis: 'z' } : null
}

/** What moves and where it may lie, the lap straps first; or why there is nothing to look for. */
export const movingGroups = (
  layout: Layout,
  place: Place,
  wish: ProposalWish,
): Result<readonly MovingGroup[], WishProblem> => {
  const { space, anchorId } = wish
  const turned = boxProblem(wish)
  if (turned !== null) return err(turned)
  if (space.kind === 'tubes' && !layout.tubes.some(({ id }) => space.tubeIds.includes(id)))
    return err({ kind: 'no-tubes' })
  const groups = groupsFrom(layout, place, wish)
  if (groups.length === 0)
    return err(anchorId === null ? { kind: 'no-anchors' } : { kind: 'anchor-unknown', anchorId })
  const stuck = groups.find(({ tracks }) => tracks.length === 0)
  return stuck === undefined ? ok(groups) : err({ kind: 'no-spot', anchorId: stuck.primary.id })
}
