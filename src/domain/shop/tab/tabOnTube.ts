import {
  directionDot,
  directionLength,
  pointDifference,
  pointDistanceMm,
  type Direction,
  type PointMm,
} from '../../geometry/point'
import { nearestOnPolyline } from '../../geometry/segment'
import type { Tube } from '../../geometry/tube'
import type { Anchor, Mount } from '../../straps/anchor'
import { shankAxis } from '../../straps/eyeShank'
import { tabNormal } from '../../straps/tabPlane'
import { asinDeg } from '../../units/angle'
import { alongTubeMm } from '../anchorRows'
import { type Clock, clockOf } from './clock'
import { type FromMark, nearestMark, tubeMarks } from './tubeMark'

/** Why an anchor does not sit on its tube as drawn; lengths in mm. Words are made in `layout/wording/tabText`. */
export type SeatProblem =
  /** The hole's (or eye's) centre is inside the tube: `depthMm` > 0 below its surface. */
  | { readonly kind: 'inside-tube'; readonly tubeId: string; readonly depthMm: number }
  /** The nearest place of the tube is one of its ends, and the anchor lies beyond it: nothing to weld to. */
  | { readonly kind: 'beyond-end'; readonly tubeId: string; readonly beyondMm: number }
  /** The nearest place of the tube is a bend, where it is not straight. */
  | { readonly kind: 'on-bend'; readonly tubeId: string; readonly pointNumber: number }

/** How an anchor sits on the tube that carries it: what a welder sets with a tape, an angle finder and a square. */
export interface TabOnTube {
  readonly tube: Tube
  /** On the centre line, nearest to the hole (eye; middle of the wrapped webbing): the foot of the perpendicular. */
  readonly foot: PointMm
  /** Which straight piece of the tube that is, counted from 0. */
  readonly pieceIndex: number
  /** Direction of the tube there, from its first point on, length 1. */
  readonly axis: Direction
  /** Along the centre line from P1 to the foot, mm ≥ 0. */
  readonly alongTubeMm: number
  /** Where it sits round the tube; null for a wrap, which goes all the way round, and for a hole on the centre line. */
  readonly clock: Clock | null
  /** From the hole's (eye's) centre to the tube's surface, mm; negative inside the tube. Null for a wrap. */
  readonly standoffMm: number | null
  /** Of a tab between its plane and the tube, range [0°, 90°]: 90° square across the tube, 0° along it. Null for the others. */
  readonly planeToTubeDeg: number | null
  /**
   * How far a tab's plane, or an eye's shank, leans from the line out of the tube through the hole, range [0°, 90°]: 0° means the
   * plane holds that line, so that the tab stands square on the tube. Null for a wrap and where there is no such line.
   */
  readonly leanFromSquareDeg: number | null
  /** The nearest crossing, bend or end along the tube; what to hook the tape on. */
  readonly nearest: FromMark | null
  /** What is wrong with the place itself; null when nothing is. */
  readonly problem: SeatProblem | null
}

/** Along the tube this little beyond an end is rounding. Our judgement. */
const ROUNDING_MM = 1e-6

/** As near to a bend along the tube as this is on it: half of what a tape shows. Our judgement. */
const ON_POINT_MM = 0.5

/**
 * How an anchor sits on its tube; null for one on the floor or another structure, and for a tube that does not exist. `tubes` are all
 * tubes of the car: the nearest crossing is looked for among them. Formulas: foot of the perpendicular on the nearest straight
 * piece; angle between a plane with normal n and a line a: asin|a·n|. Source: any handbook of solid geometry.
 */
export const tabOnTube = (anchor: Pick<Anchor, 'mount'>, tubes: readonly Tube[]): TabOnTube | null => {
  const { mount } = anchor
  const tube = tubes.find(({ id }) => id === mount.tubeId)
  if (tube === undefined) return null
  const { point: foot, axis, segmentIndex: pieceIndex } = nearestOnPolyline(tube.points, mount.point)
  const outward = pointDifference(mount.point, foot)
  const clock = mount.kind === 'wrap' ? null : clockOf(axis, outward)
  const standoffMm = mount.kind === 'wrap' ? null : directionLength(outward) - tube.outsideDiameterMm / 2
  const along = alongTubeMm(tube.points, mount.point)
  return {
    tube,
    foot,
    pieceIndex,
    axis,
    alongTubeMm: along,
    clock,
    standoffMm,
    planeToTubeDeg: mount.kind === 'tab' ? asinDeg(Math.abs(directionDot(axis, tabNormal(mount)))) : null,
    leanFromSquareDeg: leanFromSquareDeg(mount, outward),
    nearest: nearestMark(tubeMarks(tube, tubes), { alongTubeMm: along, point: foot }),
    problem: standoffMm === null ? null : seatProblem(tube, mount.point, standoffMm),
  }
}

const leanFromSquareDeg = (mount: Mount, outward: Direction): number | null => {
  const length = directionLength(outward)
  if (mount.kind === 'wrap' || length < ROUNDING_MM) return null
  const share =
    mount.kind === 'tab'
      ? Math.abs(directionDot(outward, tabNormal(mount))) / length
      : Math.sqrt(Math.max(0, 1 - (directionDot(outward, shankAxis(mount)) / length) ** 2))
  return asinDeg(share)
}

const seatProblem = (tube: Tube, point: PointMm, standoffMm: number): SeatProblem | null => {
  if (standoffMm < 0) return { kind: 'inside-tube', tubeId: tube.id, depthMm: -standoffMm }
  const { point: foot, axis } = nearestOnPolyline(tube.points, point)
  const pointNumber = 1 + tube.points.findIndex((each) => pointDistanceMm(each, foot) < ON_POINT_MM)
  if (pointNumber === 0) return null
  if (pointNumber > 1 && pointNumber < tube.points.length)
    return { kind: 'on-bend', tubeId: tube.id, pointNumber }
  const beyondMm = Math.abs(directionDot(pointDifference(point, foot), axis))
  return beyondMm < ROUNDING_MM ? null : { kind: 'beyond-end', tubeId: tube.id, beyondMm }
}
