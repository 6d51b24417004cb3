import type { PointMm } from '../geometry/point'
import type { Axis } from '../geometry/spheres'

export type { Axis }

/** Which list of readings of a measurement something is said of. */
export type ReadingOf =
  | { readonly kind: 'coordinate'; readonly axis: Axis }
  /** `index` counts the tapes of the measurement from 0; `name` is the known point's. */
  | { readonly kind: 'tape'; readonly index: number; readonly name: string }
  | { readonly kind: 'string-angle' }
  | { readonly kind: 'string-length' }
  /** How far the string goes aside: as a distance or as a plan angle. */
  | { readonly kind: 'aside'; readonly by: 'y' | 'plan' }
  /** A turn or a lean of a tab's plane. */
  | { readonly kind: 'tab-angle'; readonly by: 'plan' | 'lean' }

/** A known point as a message names it; `index` counts the tapes of the measurement from 0. */
export interface NamedTape {
  readonly index: number
  readonly name: string
}

/** The two places that fit tapes from points in one plane, and the plane's side each lies on. */
export interface MirrorPair {
  /** On the side that the mirror plane's normal points to. */
  readonly normal: PointMm
  readonly opposite: PointMm
  /** Where the normal points, by its largest part: up, to the occupant's right or rearward. */
  readonly normalFaces: Axis
  /** The known points that lie in the mirror plane. */
  readonly through: readonly NamedTape[]
}

/** Why a measurement gives no position; the offending numbers are inside. */
export type MeasureProblem =
  | { readonly kind: 'no-readings'; readonly of: ReadingOf }
  /** `index` counts the readings of the list from 0. */
  | { readonly kind: 'not-finite'; readonly of: ReadingOf; readonly index: number }
  | {
      readonly kind: 'out-of-range'
      readonly of: ReadingOf
      readonly index: number
      readonly value: number
      readonly min: number
      readonly max: number
    }
  /** A tape or a string of no length, or a negative one. */
  | {
      readonly kind: 'not-above-zero'
      readonly of: ReadingOf
      readonly index: number
      readonly value: number
    }
  /** The position of a known point is not a number, or further than anything on a car (`LARGEST_LENGTH_MM`). */
  | { readonly kind: 'known-point-unusable'; readonly name: string; readonly point: PointMm }
  /** Fewer than two tapes, or two without a coordinate. */
  | { readonly kind: 'too-few-tapes'; readonly tapes: number; readonly hasCoordinate: boolean }
  /** More than `MOST_TAPES`. */
  | { readonly kind: 'too-many-tapes'; readonly tapes: number; readonly most: number }
  /** Two tapes from one and the same place: a point given twice. */
  | {
      readonly kind: 'same-point-twice'
      readonly first: NamedTape
      readonly second: NamedTape
      readonly apartMm: number
    }
  /** All known points lie in one line: the point may be anywhere on a circle about it. `offMm` is how far the best is off it. */
  | { readonly kind: 'points-in-line'; readonly names: readonly NamedTape[]; readonly offMm: number }
  /** The known points lie in one line along the axis whose coordinate was measured, so it tells nothing new. */
  | {
      readonly kind: 'points-along-axis'
      readonly names: readonly NamedTape[]
      readonly axis: Axis
      readonly offMm: number
    }
  /** Two tapes that together do not reach from one known point to the other, by `shortMm`. */
  | {
      readonly kind: 'tapes-too-short'
      readonly first: NamedTape
      readonly second: NamedTape
      readonly apartMm: number
      readonly shortMm: number
    }
  /** Two tapes of which one is longer than the other and the way between the known points together, by `overMm`. */
  | {
      readonly kind: 'tape-too-long'
      readonly longer: NamedTape
      readonly shorter: NamedTape
      readonly apartMm: number
      readonly overMm: number
    }
  /** A third tape that cannot end where two others meet: it would have to be `nearestMm` to touch. */
  | {
      readonly kind: 'third-tape-misses'
      readonly first: NamedTape
      readonly second: NamedTape
      readonly third: NamedTape
      readonly lengthMm: number
      readonly nearestMm: number
    }
  /** No place that fits both tapes has this coordinate; the nearest that one has is `nearestMm`. */
  | {
      readonly kind: 'coordinate-out-of-reach'
      readonly first: NamedTape
      readonly second: NamedTape
      readonly axis: Axis
      readonly coordinateMm: number
      readonly nearestMm: number
    }
  | { readonly kind: 'side-not-chosen'; readonly pair: MirrorPair }
  /** The string goes further aside than its level run is long. */
  | { readonly kind: 'aside-too-long'; readonly asideMm: number; readonly levelRunMm: number }
