import { type Direction, directionBetween, pointDistanceMm, type PointMm } from '../../geometry/point'
import { nearestOnPolyline } from '../../geometry/segment'
import type { Tube } from '../../geometry/tube'
import { markAbove, markOnTube, type MarkSide, markSide, tubeAround } from './heldPoint'
import type { TapePoint } from './tapePoint'

/** Which end of a tube, as a welder says it: by the way the tube mostly runs. */
type TubeEnd = 'front' | 'rear' | 'left' | 'right' | 'lower' | 'upper'

/** What a tape can be held to on the car, beside the anchors. */
export type TapePlaceSource =
  | { readonly kind: 'datum' }
  /** The datum lies inside this tube, where no tape can be held: the mark on its outside plumb above (or level ahead of) the datum. */
  | { readonly kind: 'datum-mark'; readonly tubeId: string; readonly side: MarkSide }
  | { readonly kind: 'named'; readonly tapePointId: string }
  /**
   * A punch mark on the outside of a tube at its end: on the cut edge, or plumb above the centre line of the tube it ends on (`meets`;
   * null for none).
   */
  | {
      readonly kind: 'tube-end'
      readonly tubeId: string
      readonly end: TubeEnd
      readonly side: MarkSide
      readonly meets: string | null
    }

/** A place on the car that a tape can be held to. */
export interface TapePlace {
  readonly source: TapePlaceSource
  /** Where the tape is held, from the datum. */
  readonly point: PointMm
}

export interface TapePlacesInput {
  readonly tapePoints: readonly TapePoint[]
  readonly tubes: readonly Tube[]
}

const DATUM: PointMm = { xMm: 0, yMm: 0, zMm: 0 }

/** Places closer than this are one: two tapes from them tell no more than one. Our judgement. */
const ONE_PLACE_MM = 10

/** A point named nearer to the datum than this is the datum. */
export const AT_DATUM_MM = ONE_PLACE_MM

/** Sine of 20°: an end that meets another tube more steeply has its mark in the weld. Our judgement. */
const LEVEL_SHARE = Math.sin(Math.PI / 9)

/** A tube whose centre line passes this close to the end of another is what it ends on. Our judgement. */
const MEETS_MM = 5

/**
 * Every place a tape can be held to, the surest first: the datum (or, where it lies inside a tube, the mark on that tube), the
 * points the builder named, then marks above the ends of tubes. Points named at the datum are the datum. Ends inside another tube or
 * in a weld are left out, and so are bends: the corner of a drawn centre line is not on the bent tube. Of two places that are one
 * the surer is kept.
 */
export const tapePlaces = ({ tapePoints, tubes }: TapePlacesInput): readonly TapePlace[] => {
  const all = [
    datumPlace(tubes),
    ...tapePoints
      .filter(({ point }) => pointDistanceMm(point, DATUM) >= AT_DATUM_MM)
      .map(({ id, point }): TapePlace => ({ source: { kind: 'named', tapePointId: id }, point })),
    ...tubes.flatMap((tube) => tubeEnds(tube, tubes)),
  ]
  return all.filter(
    ({ point }, index) =>
      !all.slice(0, index).some((earlier) => pointDistanceMm(earlier.point, point) < ONE_PLACE_MM),
  )
}

const datumPlace = (tubes: readonly Tube[]): TapePlace => {
  const tube = tubeAround(DATUM, tubes)
  if (tube === null) return { source: { kind: 'datum' }, point: DATUM }
  const { point, axis } = nearestOnPolyline(tube.points, DATUM)
  return {
    source: { kind: 'datum-mark', tubeId: tube.id, side: markSide(axis) },
    point: markAbove(tube, DATUM, point, axis),
  }
}

const tubeEnds = (tube: Tube, tubes: readonly Tube[]): readonly TapePlace[] => {
  const { points } = tube
  const others = tubes.filter(({ id }) => id !== tube.id)
  return [[points[0], points[1]] as const, [points.at(-1), points.at(-2)] as const].flatMap(
    ([end, before]) => {
      if (end === undefined || before === undefined) return []
      const outward = directionBetween(before, end)
      if (outward === null) return []
      const meets = others.find((other) => nearestOnPolyline(other.points, end).distanceMm <= MEETS_MM)
      const point =
        meets === undefined
          ? markOnTube(tube, end, outward)
          : markAbove(tube, nearestOnPolyline(meets.points, end).point, end, outward)
      const isInWeld = meets !== undefined && Math.abs(outward.z) > LEVEL_SHARE
      if (isInWeld || tubeAround(point, others) !== null) return []
      return [
        {
          source: {
            kind: 'tube-end' as const,
            tubeId: tube.id,
            end: endName(points, end),
            side: markSide(outward),
            meets: meets?.id ?? null,
          },
          point,
        },
      ]
    },
  )
}

/** By the way from the other end to this one: fore and aft, across or up and down, whichever is longest. */
const endName = (points: readonly PointMm[], end: PointMm): TubeEnd => {
  const other = end === points[0] ? points.at(-1) : points[0]
  const { x, y, z }: Direction = (other && directionBetween(other, end)) ?? { x: 0, y: 0, z: 1 }
  const most = Math.max(Math.abs(x), Math.abs(y), Math.abs(z))
  if (Math.abs(x) === most) return x < 0 ? 'front' : 'rear'
  if (Math.abs(y) === most) return y < 0 ? 'left' : 'right'
  return z < 0 ? 'lower' : 'upper'
}
