import type { Elevation, PlanePointMm } from '../../geometry/plane'

/**
 * A point of a picture: x to the right, y down, from the left upper corner of the picture as it is looked at. Picture pixels; the
 * middle of the very first pixel is at 0.5, 0.5. Range 0 to the picture's width and height.
 */
export interface PicturePoint {
  readonly xPx: number
  readonly yPx: number
}

/** Size of a picture as it is kept and looked at, upright, whole pixels. */
export interface PictureSize {
  readonly widthPx: number
  readonly heightPx: number
}

/** The crosses of a picture whose scale comes from a known length; see `LengthCalibration`. */
export const LENGTH_MARKS = ['lengthFrom', 'lengthTo', 'levelFrom', 'levelTo', 'known'] as const

/** The crosses on the corners of a known rectangle, round it; see `RectangleCalibration`. */
export const RECTANGLE_MARKS = ['frontLow', 'rearLow', 'rearHigh', 'frontHigh'] as const

/** Any cross on a picture: what a calibration asks for, and the two ends of the length that checks it. */
export type MarkId =
  (typeof LENGTH_MARKS)[number] | (typeof RECTANGLE_MARKS)[number] | 'checkFrom' | 'checkTo'

/** Crosses that somebody has put on the picture; those that are left out are still to be put. */
export type Marks<Id extends string> = { readonly [Mark in Id]?: PicturePoint }

/**
 * A camera that looked squarely at the plane: one scale and one turn for the whole picture.
 * - `lengthFrom`, `lengthTo`: the ends of something whose length is known, `lengthMm` (> 0).
 * - `levelFrom`, `levelTo`: two points of a line that runs level (side elevation: from front to rear; top elevation: along the car,
 *   from front to rear) or, `plumb`, upward (side elevation: from low to high; top elevation: across, from the occupant's left to right).
 * - `known`: a point whose place in the drawing is known, `place`.
 */
export interface LengthCalibration {
  readonly kind: 'known-length'
  readonly marks: Marks<(typeof LENGTH_MARKS)[number]>
  readonly runs: 'level' | 'plumb'
  readonly lengthMm?: number
  readonly place?: PlanePointMm
}

/**
 * A camera that looked at the plane from anywhere: the four corners of a rectangle in that plane, one pair of whose sides runs level
 * or is turned by `turnDeg` (anticlockwise on the drawing; 0 when left out). `Front` is toward the front of the car; `Low` is the lower
 * side of the drawing: low in the side elevation, to the occupant's left in the top elevation.
 */
export interface RectangleCalibration {
  readonly kind: 'rectangle'
  readonly marks: Marks<(typeof RECTANGLE_MARKS)[number]>
  /** Along the side from `frontLow` to `rearLow`, > 0. */
  readonly widthMm?: number
  /** Along the side from `frontLow` to `frontHigh`, > 0. */
  readonly heightMm?: number
  readonly turnDeg?: number
  /** The corner whose place in the drawing is known. */
  readonly corner: (typeof RECTANGLE_MARKS)[number]
  readonly place?: PlanePointMm
}

export type Calibration = LengthCalibration | RectangleCalibration

/** A second known length on the picture that shows how well the scale fits. */
export interface CheckLength {
  readonly marks: Marks<'checkFrom' | 'checkTo'>
  readonly lengthMm?: number
}

/**
 * A photograph that lies under one elevation. The layout holds where the crosses are and what was measured; the picture itself is
 * kept on the device under `pictureId`.
 */
export interface Photo {
  readonly id: string
  readonly elevation: Elevation
  readonly pictureId: string
  /** The file's name as it was chosen, to find it again by. */
  readonly name: string
  readonly size: PictureSize
  /** Taken from the other side (side elevation: the front of the car is at the right; top elevation: from below), so it is drawn as in a mirror. */
  readonly mirrored: boolean
  readonly calibration: Calibration
  readonly check?: CheckLength
  /** How far the lens was from the calibrated plane, square to it; for the estimate of parallax only. mm, > 0. */
  readonly cameraDistanceMm?: number
  /** 0 is not to be seen, 1 hides the paper. */
  readonly opacity: number
  readonly shown: boolean
  /** Crosses, numbers and side stay as they are until it is unlocked. */
  readonly locked: boolean
}

/** The crosses that a kind of calibration asks for, in the order in which they are put. */
export const marksOf = (kind: Calibration['kind']): readonly MarkId[] =>
  kind === 'known-length' ? LENGTH_MARKS : RECTANGLE_MARKS

/** Where a cross of a photo is, or undefined while it is still to be put. */
export const markOf = (photo: Photo, id: MarkId): PicturePoint | undefined => {
  const marks: Marks<MarkId> = { ...photo.calibration.marks, ...photo.check?.marks }
  return marks[id]
}
