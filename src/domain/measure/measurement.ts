import type { PointMm } from '../geometry/point'

/**
 * Every reading of one thing, in the order it was taken; empty while nothing was read yet: then there is no position. Several are
 * averaged, and their scatter is shown.
 */
export type Readings = readonly number[]

/**
 * A point the tape or the string starts from, as it was known when the reading was taken: a later change of the layout must
 * not move what was measured.
 */
export interface KnownPoint {
  readonly name: string
  readonly point: PointMm
}

/** A tape pulled straight from a known point to the measured one. */
export interface TapeReading {
  readonly from: KnownPoint
  /** Straight distance, mm, above 0. */
  readonly lengthsMm: Readings
}

/** More tapes than this to one point tell nothing new, and every way they may be off together is looked at. Our judgement. */
export const MOST_TAPES = 8

/** One coordinate that was measured beside the tapes, from the datum. */
export interface KnownCoordinate {
  readonly axis: 'x' | 'y' | 'z'
  readonly readingsMm: Readings
}

/** How one point was measured on the car. */
export type Measurement =
  | {
      readonly kind: 'coordinates'
      readonly xMm: Readings
      readonly yMm: Readings
      readonly zMm: Readings
    }
  /** Two tapes with one coordinate, or three to `MOST_TAPES` tapes with or without one, each from another known point. */
  | {
      readonly kind: 'tapes'
      readonly tapes: readonly TapeReading[]
      readonly coordinate: KnownCoordinate | null
      /**
       * Which of the two places that fit is meant, where two do: the one on the side of the mirror plane's normal or the other.
       * The normal is told by `facing` in `spheres.ts`: its largest part points up, to the occupant's right or rearward. Null: not
       * chosen yet; then there is no position while two places fit. Where only one fits it is not asked.
       */
      readonly side: 'normal' | 'opposite' | null
    }
  /** A string pulled from a known point: angle finder on the string, tape along it, and how far it goes aside. */
  | {
      readonly kind: 'angle'
      readonly from: KnownPoint
      /** True angle of the string from level, + when it rises away from the known point, −90 to 90. */
      readonly stringDeg: Readings
      /** Along the string, mm, above 0. */
      readonly lengthMm: Readings
      /** Whether the string runs forward (−x) or rearward (+x) from the known point. */
      readonly runs: 'forward' | 'rearward'
      readonly aside:
        /** From the known point, + to the occupant's right. */
        | { readonly kind: 'y'; readonly readingsMm: Readings }
        /** Plan angle of the string from the car's centre-line, + toward the occupant's right, −90 to 90. */
        | { readonly kind: 'plan'; readonly readingsDeg: Readings }
    }
