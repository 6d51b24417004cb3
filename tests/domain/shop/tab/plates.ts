import fc from 'fast-check'
import { pointMm, type Direction, type PointMm } from '../../../../src/domain/geometry/point'
import { type TabOutline, tabOutline } from '../../../../src/domain/shop/tab/tabOutline'
import { tubeSlice, type TubeSlice } from '../../../../src/domain/shop/tab/tubeSlice'
import { cosDeg, sinDeg } from '../../../../src/domain/units/angle'

export const RADIUS_MM = 20
export const SIZE = { widthMm: 40, edgeDistanceMm: 20, thicknessMm: 5, holeDiameterMm: 12 }

/** A bar across the car through the origin, a hole above it, and an upright plate turned `planeDeg` out of the bar's direction. */
export const slanted = (planeDeg: number, hole: PointMm = pointMm(0, 0, 45)): TubeSlice => {
  const slice = tubeSlice({
    hole,
    normal: { x: cosDeg(planeDeg), y: sinDeg(planeDeg), z: 0 },
    onAxis: pointMm(0, 7, 0),
    axis: { x: 0, y: 1, z: 0 },
    radiusMm: RADIUS_MM,
  })
  if (typeof slice === 'string') throw new Error(slice)
  return slice
}

export const outlineOf = (slice: TubeSlice, size = SIZE): TabOutline => {
  const outline = tabOutline(slice, size)
  if ('kind' in outline) throw new Error(outline.kind)
  return outline
}

export interface Given {
  readonly hole: PointMm
  readonly normal: Direction
  readonly axis: Direction
  readonly radiusMm: number
}

/** Distance of the hole moved by `offset` from the tube's surface, by the cross product: |(P − A) × a| − r. */
export const offTube = ({ hole, axis, radiusMm }: Given, offset: Direction): number => {
  const [x, y, z] = [hole.xMm + offset.x, hole.yMm + offset.y, hole.zMm + offset.z]
  return Math.hypot(y * axis.z - z * axis.y, z * axis.x - x * axis.z, x * axis.y - y * axis.x) - radiusMm
}

const unit = fc
  .tuple(...[0, 1, 2].map(() => fc.double({ min: -1, max: 1, noNaN: true })))
  .filter(([x = 0, y = 0, z = 0]) => Math.hypot(x, y, z) > 0.2)
  .map(([x = 0, y = 0, z = 0]) => {
    const size = Math.hypot(x, y, z)
    return { x: x / size, y: y / size, z: z / size }
  })
const coordinate = fc.double({ min: -60, max: 60, noNaN: true })
export const anyTab: fc.Arbitrary<Given> = fc.record({
  hole: fc.tuple(coordinate, coordinate, coordinate).map(([x, y, z]) => pointMm(x, y, z)),
  normal: unit,
  axis: unit,
  radiusMm: fc.double({ min: 8, max: 30, noNaN: true }),
})
export const sliceOf = (given: Given): TubeSlice | null => {
  const slice = tubeSlice({ ...given, onAxis: pointMm(0, 0, 0) })
  return typeof slice === 'string' ? null : slice
}
