import type { PlanePointMm } from '../../geometry/plane'
import { err, ok, type Result } from '../../result'
import { cosDeg, sinDeg } from '../../units/angle'
import type { CalibrationProblem } from './calibrationProblem'
import {
  depthAt,
  type Homography,
  inverted,
  joined,
  mappedPair,
  type Pair,
  squareToQuad,
  stretchAt,
} from './homography'
import {
  type Calibration,
  type LengthCalibration,
  type MarkId,
  type Marks,
  marksOf,
  type Photo,
  type PicturePoint,
  type PictureSize,
  type RectangleCalibration,
  RECTANGLE_MARKS,
} from './photo'

/** Where every point of a picture lies in the calibrated plane, and back. */
export interface PictureMap {
  /** From the picture (px, y down) to the drawn plane (mm, v up). */
  readonly toPlane: Homography
  readonly toPicture: Homography
  /** Whether one scale and one turn hold for the whole picture. */
  readonly isSquare: boolean
}

/** What a picture map is made from: a photo, or one with a cross moved to see what that does. */
export type Calibrated = Pick<Photo, 'size' | 'mirrored' | 'calibration'>

/** Crosses nearer than this share of the picture's longer side give no scale worth having: one pixel would be over 1 % of it. Our judgement. */
const LEAST_APART_SHARE = 0.02

/** A corner must lie this share of the longer side off the line through two others. Our judgement. */
const LEAST_OFF_SHARE = 0.01

/** What the longer side of a picture may span at the scale of its crosses: from a bracket to a truck with its trailer. Catches a slipped unit or digit. Our judgement. */
const SPAN_MM = { least: 50, most: 40_000 } as const

const longerSidePx = ({ widthPx, heightPx }: PictureSize): number => Math.max(widthPx, heightPx)

const pair = ({ xPx, yPx }: PicturePoint): Pair => [xPx, yPx]

/** Where a point of the picture lies on the car, in the calibrated plane; null on and beyond the horizon. */
export const planePointAt = (map: PictureMap, at: PicturePoint): PlanePointMm | null => {
  const to = depthAt(map.toPlane, pair(at)) > 0 ? mappedPair(map.toPlane, pair(at)) : null
  return to === null ? null : { uMm: to[0], vMm: to[1] }
}

/** Where a point of the calibrated plane is in the picture, which may be beyond its edges; null behind the camera. */
export const picturePointAt = (map: PictureMap, at: PlanePointMm): PicturePoint | null => {
  const from: Pair = [at.uMm, at.vMm]
  const to = depthAt(map.toPicture, from) > 0 ? mappedPair(map.toPicture, from) : null
  return to === null ? null : { xPx: to[0], yPx: to[1] }
}

/**
 * How far a trace goes astray, mm, when it is one pixel of the picture beside the mark, in the worst direction: the largest stretch
 * of the map there. Null on and beyond the horizon.
 */
export const pixelMm = (map: PictureMap, at: PicturePoint): number | null =>
  depthAt(map.toPlane, pair(at)) > 0 ? stretchAt(map.toPlane, pair(at)) : null

/** The scale of a photo, or the first reason why it has none. */
export const calibrated = (photo: Calibrated): Result<PictureMap, CalibrationProblem> => {
  const missing = missingProblem(photo.calibration)
  if (missing !== null) return err(missing)
  const toPlane =
    photo.calibration.kind === 'known-length'
      ? lengthMap(photo, photo.calibration)
      : rectangleMap(photo, photo.calibration)
  return toPlane.ok ? checkedMap(photo, toPlane.value) : toPlane
}

const missingProblem = (calibration: Calibration): CalibrationProblem | null => {
  const marks: Marks<MarkId> = calibration.marks
  const missing = marksOf(calibration.kind).filter((id) => marks[id] === undefined)
  if (missing.length > 0) return { kind: 'mark-missing', marks: missing }
  const what =
    calibration.kind === 'known-length'
      ? calibration.lengthMm === undefined && 'length'
      : (calibration.widthMm === undefined && 'width') || (calibration.heightMm === undefined && 'height')
  if (what !== false) return { kind: 'number-missing', what }
  return calibration.place === undefined ? { kind: 'number-missing', what: 'place' } : null
}

/** A cross that `missingProblem` has seen to be there. */
const put = (marks: Marks<MarkId>, id: MarkId): PicturePoint => {
  const mark = marks[id]
  if (mark === undefined) throw new Error(`the cross ${id} is not put`)
  return mark
}

const apartPx = (a: PicturePoint, b: PicturePoint): number => Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx)

const nearProblem = (
  { size, calibration }: Calibrated,
  pairs: readonly (readonly [MarkId, MarkId])[],
): CalibrationProblem | null => {
  const leastPx = LEAST_APART_SHARE * longerSidePx(size)
  for (const [from, to] of pairs) {
    const apart = apartPx(put(calibration.marks, from), put(calibration.marks, to))
    if (!(apart >= leastPx)) return { kind: 'points-too-near', marks: [from, to], apartPx: apart, leastPx }
  }
  return null
}

/**
 * One scale and one turn. The level line gives the direction of +u (or, plumb, of +v) in the picture; the other axis is square to it,
 * on the side that the picture was taken from; the known length gives the scale, the known place the shift. Derived here.
 */
const lengthMap = (
  photo: Calibrated,
  calibration: LengthCalibration,
): Result<Homography, CalibrationProblem> => {
  const problem = nearProblem(photo, [
    ['lengthFrom', 'lengthTo'],
    ['levelFrom', 'levelTo'],
  ])
  if (problem !== null) return err(problem)
  const { marks, lengthMm = 0, place = { uMm: 0, vMm: 0 } } = calibration
  const lengthPx = apartPx(put(marks, 'lengthFrom'), put(marks, 'lengthTo'))
  const [from, to] = [put(marks, 'levelFrom'), put(marks, 'levelTo')]
  const scale = lengthMm / lengthPx
  const lineX = (to.xPx - from.xPx) / apartPx(from, to)
  const lineY = (to.yPx - from.yPx) / apartPx(from, to)
  // y runs down the picture and v up the drawing: seen plainly, +v is to the left of +u, which in px is (y, −x).
  const side = photo.mirrored ? -1 : 1
  const [ux, uy] = calibration.runs === 'level' ? [lineX, lineY] : [-lineY * side, lineX * side]
  const [vx, vy] = [uy * side, -ux * side]
  const known = put(marks, 'known')
  const row = (x: number, y: number, at: number): readonly [number, number, number] => [
    scale * x,
    scale * y,
    at - scale * (x * known.xPx + y * known.yPx),
  ]
  return ok([...row(ux, uy, place.uMm), ...row(vx, vy, place.vMm), 0, 0, 1])
}

const SIDES = [
  ['frontLow', 'rearLow'],
  ['rearLow', 'rearHigh'],
  ['rearHigh', 'frontHigh'],
  ['frontHigh', 'frontLow'],
] as const

/** Twice the area of a triangle in the picture, + when it turns clockwise as looked at (y runs down). */
const turnPx2 = (a: PicturePoint, b: PicturePoint, c: PicturePoint): number =>
  (b.xPx - a.xPx) * (c.yPx - a.yPx) - (b.yPx - a.yPx) * (c.xPx - a.xPx)

/** What is wrong with how the four corners lie; null when they can be those of a rectangle. */
const cornerProblem = (photo: Calibrated): CalibrationProblem | null => {
  const near = nearProblem(photo, SIDES)
  if (near !== null) return near
  const leastPx = LEAST_OFF_SHARE * longerSidePx(photo.size)
  const { marks } = photo.calibration
  const turns = SIDES.map(([before, at]) => {
    const after = SIDES.find(([from]) => from === at)?.[1] ?? before
    const [a, b, c] = [put(marks, before), put(marks, at), put(marks, after)]
    const area = turnPx2(a, b, c)
    return { ids: [before, at, after] as const, area, offPx: Math.abs(area) / apartPx(a, c) }
  })
  const flat = turns.find(({ offPx }) => !(offPx >= leastPx))
  if (flat !== undefined) return { kind: 'in-line', marks: flat.ids, offPx: flat.offPx || 0, leastPx }
  const clockwise = turns.filter(({ area }) => area > 0).length
  if (clockwise !== 0 && clockwise !== 4) return { kind: 'corners-crossed' }
  // Seen plainly the corners run anticlockwise, as on the drawing.
  return (clockwise === 4) === photo.mirrored ? null : { kind: 'wrong-way-round', mirrored: photo.mirrored }
}

const UNIT_CORNERS = { frontLow: [0, 0], rearLow: [1, 0], rearHigh: [1, 1], frontHigh: [0, 1] } as const

/** From the unit square to the rectangle where it lies on the drawing: sized, turned, and one corner put at its place. */
const squareToPlane = (calibration: RectangleCalibration): Homography => {
  const { widthMm = 0, heightMm = 0, turnDeg = 0, corner, place = { uMm: 0, vMm: 0 } } = calibration
  const [c, s] = [cosDeg(turnDeg), sinDeg(turnDeg)]
  const [cornerX, cornerY] = UNIT_CORNERS[corner]
  const [alongMm, upMm] = [cornerX * widthMm, cornerY * heightMm]
  return [
    c * widthMm,
    -s * heightMm,
    place.uMm - (c * alongMm - s * upMm),
    s * widthMm,
    c * heightMm,
    place.vMm - (s * alongMm + c * upMm),
    0,
    0,
    1,
  ]
}

const rectangleMap = (
  photo: Calibrated,
  calibration: RectangleCalibration,
): Result<Homography, CalibrationProblem> => {
  const problem = cornerProblem(photo)
  if (problem !== null) return err(problem)
  const [p0, p1, p2, p3] = RECTANGLE_MARKS.map((id) => pair(put(calibration.marks, id)))
  const square =
    p0 === undefined || p1 === undefined || p2 === undefined || p3 === undefined
      ? null
      : squareToQuad([p0, p1, p2, p3])
  const toSquare = square === null ? null : inverted(square)
  if (toSquare === null) return err({ kind: 'corners-crossed' })
  return ok(joined(squareToPlane(calibration), toSquare))
}

export const pictureCorners = ({ widthPx, heightPx }: PictureSize): readonly PicturePoint[] => [
  { xPx: 0, yPx: 0 },
  { xPx: widthPx, yPx: 0 },
  { xPx: widthPx, yPx: heightPx },
  { xPx: 0, yPx: heightPx },
]

/** The middle of the crosses that the scale comes from: where it is known best. */
export const middleOfMarks = ({ calibration }: Calibrated): PicturePoint => {
  const marks: Marks<MarkId> = calibration.marks
  const all = marksOf(calibration.kind).flatMap((id) => marks[id] ?? [])
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length)
  return { xPx: mean(all.map(({ xPx }) => xPx)), yPx: mean(all.map(({ yPx }) => yPx)) }
}

/** The map with its denominator positive where the crosses are, so that beyond the horizon it is negative. */
const oriented = (map: Homography, at: Pair): Homography =>
  depthAt(map, at) < 0 ? (map.map((value) => -value) as unknown as Homography) : map

const checkedMap = (photo: Calibrated, found: Homography): Result<PictureMap, CalibrationProblem> => {
  const { size, calibration } = photo
  const middle = middleOfMarks(photo)
  const toPlane = oriented(found, pair(middle))
  // Across the picture the denominator changes evenly: it is positive everywhere when it is at every corner.
  if (!pictureCorners(size).every((corner) => depthAt(toPlane, pair(corner)) > 0))
    return err({ kind: 'horizon-in-picture' })
  const back = inverted(toPlane)
  const middleInPlane = mappedPair(toPlane, pair(middle))
  const isSquare = calibration.kind === 'known-length'
  if (back === null || middleInPlane === null) return err({ kind: 'corners-crossed' })
  const map = { toPlane, toPicture: oriented(back, middleInPlane), isSquare }
  const spanMm = (pixelMm(map, middle) ?? 0) * longerSidePx(size)
  return spanMm >= SPAN_MM.least && spanMm <= SPAN_MM.most
    ? ok(map)
    : err({ kind: 'scale-out-of-reason', spanMm, leastMm: SPAN_MM.least, mostMm: SPAN_MM.most })
}

/**
 * Whether up in the picture is down on the drawing at the crosses: in the side elevation a sign that two ends are swapped, for cars are photographed
 * upright. Of no meaning in the top elevation, where a picture may be taken from any side.
 */
export const standsOnItsHead = (photo: Calibrated, map: PictureMap): boolean => {
  const { xPx, yPx } = middleOfMarks(photo)
  const [here, above] = [planePointAt(map, { xPx, yPx }), planePointAt(map, { xPx, yPx: yPx - 1 })]
  return here !== null && above !== null && above.vMm < here.vMm
}
