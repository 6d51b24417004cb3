import { pointBetween, pointDistanceMm, type PointMm } from '../../geometry/point'
import type { Tube } from '../../geometry/tube'
import type { Anchor } from '../../straps/anchor'
import type { Layout } from '../document/layout'
import { mirrorPartner, partnerPoint } from './mirror'
import { withPlaceChanged } from './replace'
import { limitedPoint, pointOnTube } from './tubeMove'

/**
 * The layout with one anchor moved: a tab to the point asked for, a wrap along its tube. The other side of a mirrored pair
 * goes to the mirrored point, likewise; joined shoulder straps stay on one point. Coordinates that are not given stay.
 */
export const withAnchorMoved = (
  layout: Layout,
  placeId: string,
  anchorId: string,
  to: Partial<PointMm>,
): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const anchor = place.anchors.find((candidate) => candidate.id === anchorId)
    if (anchor === undefined) return place
    const moved = movedAnchor(layout, anchor, to)
    const partner = mirrorPartner(place, anchor)
    const movedPartner =
      partner === null
        ? null
        : movedAnchor(layout, partner, partnerPoint(place, anchor.strap, moved.mount.point))
    const anchors = place.anchors.map((old) =>
      old === anchor ? moved : old === partner && movedPartner !== null ? movedPartner : old,
    )
    return { ...place, anchors }
  })

const movedAnchor = (layout: Layout, anchor: Anchor, to: Partial<PointMm>): Anchor => {
  const { mount } = anchor
  const target = limitedPoint({ ...mount.point, ...to })
  if (mount.kind !== 'wrap') return { ...anchor, mount: { ...mount, point: target } }
  const tube = layout.tubes.find((candidate) => candidate.id === mount.tubeId)
  if (tube === undefined) return anchor
  return { ...anchor, mount: { ...mount, point: pointAlongTube(tube, mount.point, target, to) } }
}

/**
 * Where a wrap comes to lie. One coordinate asked for: the nearest place on the tube that has exactly that coordinate, so that
 * a typed number is what results. Otherwise, or where the tube has no such place: the place nearest to the target.
 */
const pointAlongTube = (tube: Tube, from: PointMm, target: PointMm, to: Partial<PointMm>): PointMm => {
  const asked = (['xMm', 'yMm', 'zMm'] as const).filter((axis) => to[axis] !== undefined)
  const axis = asked[0]
  if (asked.length === 1 && axis !== undefined) {
    const exact = placesWith(tube, axis, target[axis]).sort(
      (a, b) => pointDistanceMm(a, from) - pointDistanceMm(b, from),
    )[0]
    if (exact !== undefined) return exact
  }
  return pointOnTube(tube.points, target)
}

/** Every place on the tube's centre line where one coordinate has the given value; pieces that keep it constant give none. */
const placesWith = (tube: Tube, axis: keyof PointMm, value: number): PointMm[] =>
  tube.points.slice(1).flatMap((end, index) => {
    const start = tube.points[index]
    if (start === undefined || start[axis] === end[axis]) return []
    const share = (value - start[axis]) / (end[axis] - start[axis])
    if (share < 0 || share > 1) return []
    return [{ ...pointBetween(start, end, share), [axis]: value }]
  })
