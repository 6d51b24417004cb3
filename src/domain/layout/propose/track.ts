import {
  type Direction,
  directionDot,
  pointBetween,
  pointDifference,
  pointDistanceMm,
  type PointMm,
  pointSum,
} from '../../geometry/point'
import { nearestOnPolyline } from '../../geometry/segment'
import type { Tube } from '../../geometry/tube'
import { atan2Deg, cosDeg, sinDeg } from '../../units/angle'
import type { BoxMm } from './wish'

/** A place for an anchor: its point and the tube it is then on. */
export interface Spot {
  readonly point: PointMm
  /** Null: on no tube. */
  readonly tubeId: string | null
}

/** One coordinate of a track. */
export interface TrackAxis {
  readonly low: number
  readonly high: number
  /** How many values of it the first look takes, both ends included; of a `round` one the two ends are the same. */
  readonly looks: number
  readonly isRound: boolean
  /** What the given value is rounded to, in the coordinate's unit (mm or degrees). */
  readonly roundTo: number
}

/**
 * Where one anchor may lie, by coordinates: along a tube (mm), along and round a tube (mm, degrees), or in a box (mm).
 * `spotAt` is null where the anchor cannot be although its coordinates are within their ends.
 */
export interface Track {
  readonly id: string
  readonly axes: readonly TrackAxis[]
  readonly spotAt: (at: readonly number[]) => Spot | null
  /** The coordinates of the place on the track that is nearest to a point, where the first look begins as well. */
  readonly nearestAt: (point: PointMm) => readonly number[]
}

/** What a welder can set: a tenth of the millimetre of the drawing, an angle finder's tenth. Our judgement. */
const ROUND_TO = 0.1

/** Looks along a tube: one every 12 mm, and every 40 mm where it is looked round it too. Our judgement; refining goes on from there. */
const ALONG_LOOK_MM = 12
const ALONG_ROUND_LOOK_MM = 40
const FEWEST_LOOKS = 9
const MOST_LOOKS = 120

/** Looks round a tube: every 22.5°. Our judgement. */
const ROUND_LOOKS = 17

/** Looks along each side of a box. Our judgement: some 1,500 for three sides. */
const BOX_LOOKS = { xMm: 15, yMm: 6, zMm: 15 } as const

const looksFor = (lengthMm: number, lookMm: number): number =>
  Math.min(MOST_LOOKS, Math.max(FEWEST_LOOKS, Math.ceil(lengthMm / lookMm) + 1))

const pieceLengths = (points: readonly PointMm[]): readonly number[] =>
  points.slice(1).map((end, index) => pointDistanceMm(points[index] ?? end, end))

/** The point and axis of a tube's centre line `alongMm` from its first point; held to its ends. */
export const alongTube = (
  points: readonly PointMm[],
  alongMm: number,
): { readonly point: PointMm; readonly axis: Direction } | null => {
  let restMm = Math.max(0, alongMm)
  const lengths = pieceLengths(points)
  for (const [index, lengthMm] of lengths.entries()) {
    const start = points[index]
    const end = points[index + 1]
    if (start === undefined || end === undefined || lengthMm === 0) continue
    if (restMm <= lengthMm || index === lengths.length - 1) {
      const axis = {
        x: (end.xMm - start.xMm) / lengthMm,
        y: (end.yMm - start.yMm) / lengthMm,
        z: (end.zMm - start.zMm) / lengthMm,
      }
      return { point: pointBetween(start, end, Math.min(1, restMm / lengthMm)), axis }
    }
    restMm -= lengthMm
  }
  return null
}

/** Steeper than this (the axis's z) the way round is counted from rearward instead of from the top. Our judgement. */
const UPRIGHT = 0.9

/**
 * The direction square to a tube's axis, `roundDeg` round it from the top (for an upright tube: from the rear).
 * Formula: the part of the reference across the axis, made one long (e), then e·cos + (axis × e)·sin. Source: plane rotation.
 */
const roundTube = (axis: Direction, roundDeg: number): Direction => {
  const reference: Direction = Math.abs(axis.z) > UPRIGHT ? { x: 1, y: 0, z: 0 } : { x: 0, y: 0, z: 1 }
  const along = axis.x * reference.x + axis.y * reference.y + axis.z * reference.z
  const across = {
    x: reference.x - along * axis.x,
    y: reference.y - along * axis.y,
    z: reference.z - along * axis.z,
  }
  const size = Math.hypot(across.x, across.y, across.z)
  const e = { x: across.x / size, y: across.y / size, z: across.z / size }
  const f = {
    x: axis.y * e.z - axis.z * e.y,
    y: axis.z * e.x - axis.x * e.z,
    z: axis.x * e.y - axis.y * e.x,
  }
  const c = cosDeg(roundDeg)
  const s = sinDeg(roundDeg)
  return { x: e.x * c + f.x * s, y: e.y * c + f.y * s, z: e.z * c + f.z * s }
}

/** How far along a tube the place nearest to a point is, mm, and the axis there. */
const nearestAlong = (
  tube: Tube,
  point: PointMm,
): { readonly alongMm: number; readonly axis: Direction; readonly foot: PointMm } => {
  const { segmentIndex, share, axis, point: foot } = nearestOnPolyline(tube.points, point)
  const lengths = pieceLengths(tube.points)
  const beforeMm = lengths.slice(0, segmentIndex).reduce((sum, mm) => sum + mm, 0)
  return { alongMm: beforeMm + share * (lengths[segmentIndex] ?? 0), axis, foot }
}

/** How far round a tube a point lies, 0 … 360°; 0 for a point on the centre line. Inverse of `roundTube`. */
const roundOf = (axis: Direction, foot: PointMm, point: PointMm): number => {
  const off = pointDifference(point, foot)
  const angleDeg = atan2Deg(directionDot(off, roundTube(axis, 90)), directionDot(off, roundTube(axis, 0)))
  return angleDeg < 0 ? angleDeg + 360 : angleDeg
}

const alongAxis = (tube: Tube, lookMm: number): TrackAxis => {
  const lengthMm = pieceLengths(tube.points).reduce((sum, mm) => sum + mm, 0)
  return { low: 0, high: lengthMm, looks: looksFor(lengthMm, lookMm), isRound: false, roundTo: ROUND_TO }
}

/** Along the centre line of a tube, for a wrap. */
export const wrapTrack = (tube: Tube): Track => ({
  id: tube.id,
  axes: [alongAxis(tube, ALONG_LOOK_MM)],
  spotAt: ([alongMm = 0]) => {
    const here = alongTube(tube.points, alongMm)
    return here && { point: here.point, tubeId: tube.id }
  },
  nearestAt: (point) => [nearestAlong(tube, point).alongMm],
})

/** In a bend a point square to one piece may come nearer to the next; so much nearer is rounding. Our judgement. */
const STAND_OFF_ROUNDING_MM = 1e-6

/** Along and round a tube at a stand-off from its surface, for a tab or an eye. */
export const standingTrack = (tube: Tube, standOffMm: number): Track => {
  const radiusMm = tube.outsideDiameterMm / 2 + standOffMm
  const round: TrackAxis = { low: 0, high: 360, looks: ROUND_LOOKS, isRound: true, roundTo: ROUND_TO }
  return {
    id: tube.id,
    axes: [alongAxis(tube, ALONG_ROUND_LOOK_MM), round],
    spotAt: ([alongMm = 0, roundDeg = 0]) => {
      const here = alongTube(tube.points, alongMm)
      if (here === null) return null
      const point = pointSum(here.point, roundTube(here.axis, roundDeg), radiusMm)
      const isClear = nearestOnPolyline(tube.points, point).distanceMm >= radiusMm - STAND_OFF_ROUNDING_MM
      return isClear ? { point, tubeId: tube.id } : null
    },
    nearestAt: (point) => {
      const { alongMm, axis, foot } = nearestAlong(tube, point)
      return [alongMm, roundOf(axis, foot, point)]
    },
  }
}

const boxAxis = (box: BoxMm, axis: keyof PointMm): TrackAxis => ({
  low: box.min[axis],
  high: box.max[axis],
  looks: box.max[axis] > box.min[axis] ? BOX_LOOKS[axis] : 1,
  isRound: false,
  roundTo: ROUND_TO,
})

/** Anywhere in a box; `tubeIdAt` says which tube a point is on. */
export const boxTrack = (box: BoxMm, tubeIdAt: (point: PointMm) => string | null): Track => ({
  id: 'anywhere',
  axes: [boxAxis(box, 'xMm'), boxAxis(box, 'yMm'), boxAxis(box, 'zMm')],
  spotAt: ([xMm = 0, yMm = 0, zMm = 0]) => {
    const point = { xMm, yMm, zMm }
    return { point, tubeId: tubeIdAt(point) }
  },
  nearestAt: (point) => [point.xMm, point.yMm, point.zMm],
})

/** A track with some of its coordinates held at a value; the others keep their order. */
export const heldTrack = (track: Track, held: ReadonlyMap<number, number>): Track => {
  const isFree = (_: unknown, index: number): boolean => !held.has(index)
  return {
    id: track.id,
    axes: track.axes.filter(isFree),
    spotAt: (at) => {
      let next = 0
      return track.spotAt(track.axes.map((_, index) => held.get(index) ?? at[next++] ?? 0))
    },
    nearestAt: (point) => track.nearestAt(point).filter(isFree),
  }
}

/** A track without the spots that a test refuses. */
export const testedTrack = (track: Track, isAllowed: (spot: Spot) => boolean): Track => ({
  ...track,
  spotAt: (at) => {
    const spot = track.spotAt(at)
    return spot !== null && isAllowed(spot) ? spot : null
  },
})

/** How far along a tube it crosses the plane across the car at `yMm`; pieces that lie in that plane give none. */
export const crossingsAlong = (tube: Tube, yMm: number): readonly number[] => {
  let beforeMm = 0
  return pieceLengths(tube.points).flatMap((lengthMm, index) => {
    const startMm = beforeMm
    beforeMm += lengthMm
    const from = tube.points[index]?.yMm ?? 0
    const to = tube.points[index + 1]?.yMm ?? 0
    const share = (yMm - from) / (to - from)
    return from !== to && share >= 0 && share <= 1 ? [startMm + share * lengthMm] : []
  })
}

/** A coordinate brought into its ends; a round one goes on at the other end. */
export const heldToAxis = ({ low, high, isRound }: TrackAxis, value: number): number => {
  if (!isRound) return Math.min(high, Math.max(low, value))
  const span = high - low
  return low + ((((value - low) % span) + span) % span)
}

/** A coordinate as it is given: rounded, and still within its ends. */
export const roundedOnAxis = (axis: TrackAxis, value: number): number => {
  const perUnit = Math.round(1 / axis.roundTo)
  return heldToAxis(axis, Math.round(value * perUnit) / perUnit)
}

/** The distance between two looks of the first look, in the coordinate's unit; 0 for a coordinate with a single value. */
export const lookStep = ({ low, high, looks }: TrackAxis): number =>
  looks < 2 ? 0 : (high - low) / (looks - 1)

/** Every place of the first look, the last coordinate fastest. */
export const firstLooks = ({ axes }: Track): readonly (readonly number[])[] => {
  let looks: readonly (readonly number[])[] = [[]]
  for (const axis of axes) {
    const count = axis.isRound ? axis.looks - 1 : axis.looks
    const values = Array.from({ length: count }, (_, index) => axis.low + index * lookStep(axis))
    looks = looks.flatMap((before) => values.map((value) => [...before, value]))
  }
  return looks
}
