import { pointDistanceMm } from '../geometry/point'
import { IN_LINE_MM, offAxisMm, offLineMm, pairsOf } from '../geometry/sphereFits'
import {
  type CoordinatePlane,
  reachableCoordinateMm,
  reachableLengthMm,
  tapesApart,
  TOUCH_MM,
} from '../geometry/spheres'
import { MOST_TAPES } from './measurement'
import type { MeasureProblem, NamedTape } from './measureProblem'
import { isExact, type Tape, type TapeObservations } from './observations'

/** Known points closer than this are one place: nobody can hold a tape to two. Our judgement. */
const SAME_POINT_MM = 1

/** With more than three observations a tape may be short by this much, as readings are, before two tapes are said not to meet. Our judgement. */
const READING_SLACK_MM = 5

/** The two tapes whose known points are furthest apart; null for fewer than two. */
export const widestTapes = (tapes: readonly Tape[]): readonly [Tape, Tape] | null => {
  let widest: readonly [Tape, Tape] | null = null
  let mostMm = -1
  for (const pair of pairsOf(tapes)) {
    const apartMm = pointDistanceMm(pair[0].point, pair[1].point)
    if (apartMm > mostMm) {
      mostMm = apartMm
      widest = pair
    }
  }
  return widest
}

const named = ({ index, name }: Tape): NamedTape => ({ index, name })

/** Why the known points, however long the tapes, give no position; null when they do. */
export const placingProblem = ({ tapes, coordinate }: TapeObservations): MeasureProblem | null => {
  const hasCoordinate = coordinate !== null
  const widest = widestTapes(tapes)
  if (widest === null || (tapes.length === 2 && !hasCoordinate))
    return { kind: 'too-few-tapes', tapes: tapes.length, hasCoordinate }
  if (tapes.length > MOST_TAPES) return { kind: 'too-many-tapes', tapes: tapes.length, most: MOST_TAPES }
  for (const [first, second] of pairsOf(tapes)) {
    const apartMm = pointDistanceMm(first.point, second.point)
    if (apartMm < SAME_POINT_MM)
      return { kind: 'same-point-twice', first: named(first), second: named(second), apartMm }
  }
  const [first, second] = widest
  const offMm = Math.max(...tapes.map((tape) => offLineMm(first, second, tape)))
  if (offMm > IN_LINE_MM) return null
  const names = tapes.map(named)
  if (coordinate === null) return { kind: 'points-in-line', names, offMm }
  const asideMm = offAxisMm(first, second, coordinate.axis)
  if (asideMm > IN_LINE_MM) return null
  return { kind: 'points-along-axis', names, axis: coordinate.axis, offMm: asideMm }
}

/** Which tapes do not meet, for known points that are well placed; null when they do. */
export const missProblem = (observations: TapeObservations): MeasureProblem | null => {
  const { tapes, coordinate } = observations
  const slackMm = isExact(observations) ? TOUCH_MM : READING_SLACK_MM
  for (const [first, second] of pairsOf(tapes)) {
    const problem = pairProblem(first, second, slackMm)
    if (problem !== null) return problem
  }
  if (!isExact(observations)) return null
  const [first, second, third] = tapes
  if (first === undefined || second === undefined) return null
  if (coordinate !== null) return coordinateProblem(first, second, coordinate)
  return third === undefined ? null : thirdTapeProblem([first, second, third])
}

const pairProblem = (one: Tape, other: Tape, slackMm: number): MeasureProblem | null => {
  const { apartMm, shortMm, overMm } = tapesApart(one, other)
  if (shortMm > slackMm)
    return { kind: 'tapes-too-short', first: named(one), second: named(other), apartMm, shortMm }
  if (overMm <= slackMm) return null
  const [longer, shorter] = one.lengthMm > other.lengthMm ? [one, other] : [other, one]
  return { kind: 'tape-too-long', longer: named(longer), shorter: named(shorter), apartMm, overMm }
}

/** The one of three tapes that misses the meeting of the other two by least: to change it is the smallest change. */
const thirdTapeProblem = (tapes: readonly [Tape, Tape, Tape]): MeasureProblem | null => {
  const [a, b, c] = tapes
  const misses = [[a, b, c] as const, [a, c, b] as const, [b, c, a] as const].map(
    ([first, second, third]) => {
      const nearestMm = reachableLengthMm(first, second, third)
      return { first, second, third, nearestMm, missMm: Math.abs(nearestMm - third.lengthMm) }
    },
  )
  if (misses.some(({ missMm }) => missMm <= TOUCH_MM)) return null
  const least = misses.reduce((best, each) => (each.missMm < best.missMm ? each : best))
  return {
    kind: 'third-tape-misses',
    first: named(least.first),
    second: named(least.second),
    third: named(least.third),
    lengthMm: least.third.lengthMm,
    nearestMm: least.nearestMm,
  }
}

const coordinateProblem = (first: Tape, second: Tape, coordinate: CoordinatePlane): MeasureProblem | null => {
  const nearestMm = reachableCoordinateMm(first, second, coordinate)
  if (Math.abs(nearestMm - coordinate.valueMm) <= TOUCH_MM) return null
  return {
    kind: 'coordinate-out-of-reach',
    first: named(first),
    second: named(second),
    axis: coordinate.axis,
    coordinateMm: coordinate.valueMm,
    nearestMm,
  }
}
