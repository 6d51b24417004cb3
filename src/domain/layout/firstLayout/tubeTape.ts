import { pointBetween, type PointMm } from '../../geometry/point'
import type { Tube } from '../../geometry/tube'
import type { Layout } from '../document/layout'
import { addTube, removeTube, withTube } from '../edit/changeTubes'
import { tubeMiddle } from '../edit/handles'
import { withPlaceChanged } from '../edit/replace'
import { pointOnTube } from '../edit/tubeMove'
import { askedPlace } from './askedPlace'
import { type Begun } from './question'

/** The harness bar that is asked about: the first one. */
export const barOf = (layout: Layout): Tube | null =>
  layout.tubes.find(({ role }) => role === 'harness-bar') ?? null

const span = (tube: Tube, axis: keyof PointMm): number => {
  const values = tube.points.map((point) => point[axis])
  return Math.max(...values) - Math.min(...values)
}

/** The first floor tube that runs across the car. */
export const crossTubeOf = (layout: Layout): Tube | null =>
  layout.tubes.find((tube) => tube.role === 'floor' && span(tube, 'yMm') >= span(tube, 'xMm')) ?? null

/** The two floor tubes along the car that are nearest to the seat's middle; null unless there are two. */
export const sideTubesOf = (layout: Layout): { readonly left: Tube; readonly right: Tube } | null => {
  const seatMm = askedPlace(layout).seat.hipPoint.yMm
  const [left, right] = layout.tubes
    .filter((tube) => tube.role === 'floor' && span(tube, 'yMm') < span(tube, 'xMm'))
    .toSorted((a, b) => Math.abs(middleMm(a, 'yMm') - seatMm) - Math.abs(middleMm(b, 'yMm') - seatMm))
    .slice(0, 2)
    .toSorted((a, b) => middleMm(a, 'yMm') - middleMm(b, 'yMm'))
  return left === undefined || right === undefined ? null : { left, right }
}

/** Half way between the tube's extremes along one axis, centre line, mm. */
export const middleMm = (tube: Tube, axis: keyof PointMm): number => {
  const values = tube.points.map((point) => point[axis])
  return (Math.max(...values) + Math.min(...values)) / 2
}

/**
 * Where a tape is held to a tube: on its centre line where that passes a place along the axis, the first such place of a bent one; the
 * middle of its nearest piece where it passes none.
 */
const passing = (tube: Tube, axis: 'xMm' | 'yMm', atMm: number): PointMm => {
  const pieces = tube.points.slice(1).map((end, index) => ({ start: tube.points[index] ?? end, end }))
  const shares = pieces.map(({ start, end }) => (atMm - start[axis]) / (end[axis] - start[axis]))
  const index = shares.findIndex((share) => share >= 0 && share <= 1)
  const piece = pieces[index]
  if (piece !== undefined) return pointBetween(piece.start, piece.end, shares[index] ?? 0)
  const away = pieces.map(({ start, end }) => Math.abs((start[axis] + end[axis]) / 2 - atMm))
  const nearest = pieces[away.indexOf(Math.min(...away))]
  return nearest === undefined ? tubeMiddle(tube) : pointBetween(nearest.start, nearest.end, 0.5)
}

/** Where the tape is held to one of the asked tubes: across the car at the seat's middle, along it beside the hips. */
export const heldAt = (layout: Layout, tube: Tube): PointMm => {
  const { hipPoint } = askedPlace(layout).seat
  return span(tube, 'yMm') >= span(tube, 'xMm')
    ? passing(tube, 'yMm', hipPoint.yMm)
    : passing(tube, 'xMm', hipPoint.xMm)
}

/** What a tape meets first coming from the front: the tube's front edge, mm from the datum. */
export const frontMm = (layout: Layout, tube: Tube): number =>
  heldAt(layout, tube).xMm - tube.outsideDiameterMm / 2

export const topMm = (layout: Layout, tube: Tube): number =>
  heldAt(layout, tube).zMm + tube.outsideDiameterMm / 2

/** Half of the tube's reach across the car, mm. */
export const halfMm = (tube: Tube): number => span(tube, 'yMm') / 2

/**
 * The tube with other points, what is fixed to it carried along fore-and-aft and up and down. Sideways everything stays where it was
 * measured; a wrap then lies on the nearest place of the centre line.
 */
const withPoints = (layout: Layout, tube: Tube, points: readonly PointMm[]): Layout => {
  const { id, anchors } = askedPlace(layout)
  const widthsMm = new Map(anchors.map((anchor) => [anchor.id, anchor.mount.point.yMm]))
  return withPlaceChanged(withTube(layout, tube.id, { points }), id, (place) => ({
    ...place,
    anchors: place.anchors.map((anchor) => {
      const { mount } = anchor
      if (mount.tubeId !== tube.id) return anchor
      const point = { ...mount.point, yMm: widthsMm.get(anchor.id) ?? mount.point.yMm }
      return mount.kind === 'wrap'
        ? { ...anchor, mount: { ...mount, point: pointOnTube(points, point) } }
        : { ...anchor, mount: { ...mount, point } }
    }),
  }))
}

/** The tube moved as a whole along one axis. */
const withMoved = (layout: Layout, tube: Tube, axis: keyof PointMm, byMm: number): Layout =>
  withPoints(
    layout,
    tube,
    tube.points.map((point) => ({ ...point, [axis]: point[axis] + byMm })),
  )

/** Moved sideways until its middle is there. */
export const withMiddle = (layout: Layout, tube: Tube, mm: number): Layout =>
  withMoved(layout, tube, 'yMm', mm - middleMm(tube, 'yMm'))

export const withFront = (layout: Layout, tube: Tube, mm: number): Layout =>
  withMoved(layout, tube, 'xMm', mm - frontMm(layout, tube))

export const withTop = (layout: Layout, tube: Tube, mm: number): Layout =>
  withMoved(layout, tube, 'zMm', mm - topMm(layout, tube))

/** The tube reaching this far to each side of its middle; its bends go outward in proportion. */
export const withHalf = (layout: Layout, tube: Tube, mm: number): Layout => {
  const middle = middleMm(tube, 'yMm')
  const share = mm / halfMm(tube)
  return Number.isFinite(share)
    ? withPoints(
        layout,
        tube,
        tube.points.map((point) => ({ ...point, yMm: middle + (point.yMm - middle) * share })),
      )
    : layout
}

/** Another diameter between the same front edge and top that the tape was held to. */
export const withDiameter = (layout: Layout, tube: Tube, outsideDiameterMm: number): Layout => {
  const grownMm = (outsideDiameterMm - tube.outsideDiameterMm) / 2
  return withPoints(
    withTube(layout, tube.id, { outsideDiameterMm }),
    tube,
    tube.points.map((point) => ({ ...point, xMm: point.xMm + grownMm, zMm: point.zMm - grownMm })),
  )
}

/** With a harness bar: the one that the questions began with, else a new one. */
export const withBar = (layout: Layout, { base }: Begun): Layout => {
  if (barOf(layout) !== null) return layout
  const former = barOf(base)
  const isFree = former !== null && layout.tubes.every(({ id }) => id !== former.id)
  return isFree ? { ...layout, tubes: [...layout.tubes, former] } : addTube(layout, 'harness-bar')
}

export const withoutBar = (layout: Layout): Layout => {
  const bar = barOf(layout)
  return bar === null ? layout : withoutBar(removeTube(layout, bar.id))
}
