import { pointBetween, pointDifference, pointDistanceMm, type PointMm, pointSum } from '../../geometry/point'
import { nearestOnPolyline } from '../../geometry/segment'
import type { Tube } from '../../geometry/tube'
import type { Anchor } from '../../straps/anchor'
import type { Layout } from '../document/layout'
import { limited, LIMITS, TUBE_POINT_SPACING_MM } from '../document/limits'
import { withReplaced, withTubeChanged } from './replace'

/** A point inside the span that a layout may hold. */
export const limitedPoint = (point: PointMm): PointMm => ({
  xMm: limited(point.xMm, LIMITS.coordinateMm),
  yMm: limited(point.yMm, LIMITS.coordinateMm),
  zMm: limited(point.zMm, LIMITS.coordinateMm),
})

/** Nearer than this a point is on the centre line and kept as it is: rounding of coordinates in metres' range, not a distance. */
const ON_TUBE_MM = 1e-6

/** The place on a tube's centre line nearest to a point; the point itself when it is on it, so that typed numbers stay. */
export const pointOnTube = (points: readonly PointMm[], target: PointMm): PointMm => {
  const nearest = nearestOnPolyline(points, target)
  return nearest.distanceMm < ON_TUBE_MM ? target : nearest.point
}

/**
 * The layout with one point of a tube moved, and everything fixed to the tube with it: a wrap keeps its share along its
 * straight piece, a tab its offset from the centre line. Unchanged when the point would come too close to its neighbour.
 */
export const withTubePointMoved = (layout: Layout, tubeId: string, index: number, to: PointMm): Layout => {
  const tube = layout.tubes.find((candidate) => candidate.id === tubeId)
  if (tube === undefined || tube.points[index] === undefined) return layout
  const point = limitedPoint(to)
  const neighbours = [tube.points[index - 1], tube.points[index + 1]]
  const isTooClose = neighbours.some(
    (neighbour) => neighbour !== undefined && pointDistanceMm(neighbour, point) < TUBE_POINT_SPACING_MM,
  )
  if (isTooClose) return layout
  return withTubePoints(
    layout,
    tube,
    tube.points.map((old, i) => (i === index ? point : old)),
  )
}

/**
 * The layout with a whole tube and everything fixed to it moved up by `upMm` (negative: down); held to the span that a layout may
 * hold as a whole, so that the tube keeps its shape.
 */
export const withTubeRaised = (layout: Layout, tubeId: string, upMm: number): Layout => {
  const tube = layout.tubes.find((candidate) => candidate.id === tubeId)
  if (tube === undefined) return layout
  const heightsMm = tube.points.map((point) => point.zMm)
  const heldMm = limited(upMm, {
    min: LIMITS.coordinateMm.min - Math.min(...heightsMm),
    max: LIMITS.coordinateMm.max - Math.max(...heightsMm),
    unit: 'mm',
  })
  return withTubePoints(
    layout,
    tube,
    tube.points.map((point) => ({ ...point, zMm: point.zMm + heldMm })),
  )
}

/** The layout with a tube's points replaced, one for one, and what is fixed to the tube carried along. */
export const withTubePoints = (layout: Layout, tube: Tube, points: readonly PointMm[]): Layout => {
  const carried = (anchor: Anchor): Anchor => {
    const { mount } = anchor
    if (mount.tubeId !== tube.id) return anchor
    return { ...anchor, mount: { ...mount, point: carriedPoint(mount, tube.points, points) } }
  }
  const places = layout.places.map((place) => ({
    ...place,
    anchors: place.anchors.reduce((anchors, { id }) => withReplaced(anchors, id, carried), place.anchors),
  }))
  return withTubeChanged({ ...layout, places }, tube.id, (old) => ({ ...old, points }))
}

const carriedPoint = (
  mount: Anchor['mount'],
  before: readonly PointMm[],
  after: readonly PointMm[],
): PointMm => {
  const { point: foot, segmentIndex, share } = nearestOnPolyline(before, mount.point)
  const start = after[segmentIndex]
  const end = after[segmentIndex + 1]
  if (start === undefined || end === undefined) return mount.point
  const newFoot = pointBetween(start, end, share)
  // A wrap lies on the centre line; a rounding error off it must not grow with every move.
  if (mount.kind === 'wrap') return newFoot
  return limitedPoint(pointSum(newFoot, pointDifference(mount.point, foot)))
}
