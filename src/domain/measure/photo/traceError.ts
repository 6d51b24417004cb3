import { planeDistanceMm, type PlanePointMm } from '../../geometry/plane'
import {
  type Calibrated,
  calibrated,
  type PictureMap,
  pixelMm,
  picturePointAt,
  planePointAt,
} from './pictureMap'
import { type MarkId, type Marks, marksOf, type Photo, type PicturePoint } from './photo'

/** How far a point traced on a picture may be off, as far as the crosses and the eye go; parallax comes on top. */
export interface TraceError {
  /** mm that one pixel beside the mark means there, in the worst direction. */
  readonly pixelMm: number
  /**
   * mm that the point moves when every cross is one pixel off, each its own way: the root of the sum of the squares of what each does alone,
   * across and down. Larger far from the crosses.
   */
  readonly marksMm: number
}

const withMark = (photo: Calibrated, id: MarkId, to: PicturePoint): Calibrated =>
  ({
    ...photo,
    calibration: { ...photo.calibration, marks: { ...photo.calibration.marks, [id]: to } },
  }) as Calibrated

/** How far the place of one picture point moves when a cross is moved one pixel each way along one axis: half of the whole way. */
const moveMm = (photo: Calibrated, at: PicturePoint, id: MarkId, by: PicturePoint): number | null => {
  const marks: Marks<MarkId> = photo.calibration.marks
  const mark = marks[id]
  if (mark === undefined) return null
  const placeWith = (sign: number): PlanePointMm | null => {
    const moved = withMark(photo, id, { xPx: mark.xPx + sign * by.xPx, yPx: mark.yPx + sign * by.yPx })
    const map = calibrated(moved)
    return map.ok ? planePointAt(map.value, at) : null
  }
  const [before, after] = [placeWith(-1), placeWith(1)]
  return before === null || after === null ? null : planeDistanceMm(before, after) / 2
}

/**
 * What one pixel means at a point of the drawing, for the trace and for every cross. The whole calibration is worked again with each cross moved,
 * so nothing is taken for straight that is not. Source: propagation of independent errors, root of the sum of squares (JCGM 100:2008, 5.1.2,
 * from memory). Null where the picture has no scale or does not reach, or where a pixel is enough to spoil the calibration.
 */
export const traceError = (photo: Calibrated, map: PictureMap, at: PlanePointMm): TraceError | null => {
  const inPicture = picturePointAt(map, at)
  const pixel = inPicture === null ? null : pixelMm(map, inPicture)
  if (inPicture === null || pixel === null) return null
  const moves = marksOf(photo.calibration.kind).flatMap((id) =>
    [
      { xPx: 1, yPx: 0 },
      { xPx: 0, yPx: 1 },
    ].map((by) => moveMm(photo, inPicture, id, by)),
  )
  const sum = moves.reduce<number | null>(
    (total, move) => (total === null || move === null ? null : total + move * move),
    0,
  )
  return sum === null || !Number.isFinite(sum) ? null : { pixelMm: pixel, marksMm: Math.sqrt(sum) }
}

/** What a photo's check length measures on the picture, mm; null while its crosses or the scale are missing. */
export const checkLengthMm = (photo: Photo, map: PictureMap): number | null => {
  const { checkFrom, checkTo } = photo.check?.marks ?? {}
  if (checkFrom === undefined || checkTo === undefined) return null
  const [from, to] = [planePointAt(map, checkFrom), planePointAt(map, checkTo)]
  return from === null || to === null ? null : planeDistanceMm(from, to)
}
