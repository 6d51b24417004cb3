import type { PointMm } from '../geometry/point'

/** Every reading of one thing, in the order it was taken; at least one. Several are averaged, and their scatter is shown. */
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
  /** Two tapes with one coordinate, or three and more tapes with or without one. */
  | {
      readonly kind: 'tapes'
      readonly tapes: readonly TapeReading[]
      readonly coordinate: KnownCoordinate | null
      /**
       * Which of the two places that fit is meant, where two do: the one on the side of the mirror plane's normal or the other.
       * The normal is told in `trilateration.ts`. Null: not chosen yet; then there is no position.
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
        | { readonly kind: 'y'; readonly readingsMm: Readings }
        /** Plan angle of the string from the car's centre-line, + toward the occupant's right, −90 to 90. */
        | { readonly kind: 'plan'; readonly readingsDeg: Readings }
    }
