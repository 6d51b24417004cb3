import {
  type Direction,
  directionDot,
  directionLength,
  pointDifference,
  pointDistanceMm,
  type PointMm,
  pointSum,
} from './point'
import { directionCross, directionScaled, directionSum, squareTo } from './vector'

/*
 * Where tapes from known points end: spheres about those points, closed forms.
 */

/** An axis of the vehicle frame. */
export type Axis = 'x' | 'y' | 'z'

/** A tape pulled straight from a known point: what it ends at lies on this sphere. */
export interface TapeSphere {
  readonly point: PointMm
  /** mm > 0. */
  readonly lengthMm: number
}

/** A measured coordinate: the point lies in this plane. */
export interface CoordinatePlane {
  readonly axis: Axis
  readonly valueMm: number
}

/**
 * Two places that mirror each other: `foot` plus and minus the square root of `heightSqMm2` along `normal`. A negative square:
 * the tapes do not meet, and `foot` is where they come nearest to it.
 */
export interface MirroredPlaces {
  readonly foot: PointMm
  /** Length 1; its largest part is positive, so that it does not hang on the order of the tapes. */
  readonly normal: Direction
  readonly heightSqMm2: number
}

export const axisDirection = (axis: Axis): Direction => ({
  x: axis === 'x' ? 1 : 0,
  y: axis === 'y' ? 1 : 0,
  z: axis === 'z' ? 1 : 0,
})

export const coordinateOf = (point: PointMm, axis: Axis): number =>
  axis === 'x' ? point.xMm : axis === 'y' ? point.yMm : point.zMm

/** Parts of a direction this close to each other are equally large: the rounding of a cross product. Our judgement. */
const AS_LARGE = 1 - 1e-9

/** The axis along which a direction is largest; of equal ones up goes before across, and across before fore and aft. */
export const largestAxis = ({ x, y, z }: Direction): Axis => {
  const most = Math.max(Math.abs(x), Math.abs(y), Math.abs(z)) * AS_LARGE
  return Math.abs(z) >= most ? 'z' : Math.abs(y) >= most ? 'y' : 'x'
}

/** The direction or its opposite: the one whose largest part points up, to the occupant's right or rearward. */
export const facing = (direction: Direction): Direction =>
  directionDot(direction, axisDirection(largestAxis(direction))) < 0
    ? directionScaled(direction, -1)
    : direction

/** The circle in which two tapes meet, about the line through their known points. */
interface Meeting {
  readonly centre: PointMm
  /** From the first known point to the second, length 1. */
  readonly along: Direction
  /** Negative when the tapes do not meet. */
  readonly radiusSqMm2: number
}

/**
 * Where two tapes from points that are apart meet. Formula: with d between the points, the circle's centre is
 * x = (L₁² − L₂² + d²)/(2d) from the first, its radius² = L₁² − x². Source: the two equations of the spheres subtracted.
 */
const meeting = (first: TapeSphere, second: TapeSphere): Meeting => {
  const apart = pointDifference(second.point, first.point)
  const apartMm = directionLength(apart)
  const along = directionScaled(apart, 1 / apartMm)
  const atMm = (first.lengthMm ** 2 - second.lengthMm ** 2 + apartMm ** 2) / (2 * apartMm)
  return {
    centre: pointSum(first.point, along, atMm),
    along,
    radiusSqMm2: first.lengthMm ** 2 - atMm ** 2,
  }
}

/**
 * The two places at the ends of three tapes from points that are not in line. Formula: in the circle of the first two, the plane
 * through the known points and y = (r² − L₃² + i² + j²)/(2j), where the third point lies i along and j square to their line from
 * the circle's centre; height² = r² − y². Source: the third sphere's equation less the circle's.
 */
export const threeTapes = (first: TapeSphere, second: TapeSphere, third: TapeSphere): MirroredPlaces => {
  const { centre, along, radiusSqMm2 } = meeting(first, second)
  const toThird = pointDifference(third.point, centre)
  const square = squareTo(along, toThird)
  const squareMm = directionLength(square)
  const aside = directionScaled(square, 1 / squareMm)
  const alongMm = directionDot(toThird, along)
  const yMm = (radiusSqMm2 - third.lengthMm ** 2 + alongMm ** 2 + squareMm ** 2) / (2 * squareMm)
  return {
    foot: pointSum(centre, aside, yMm),
    normal: facing(directionCross(along, aside)),
    heightSqMm2: radiusSqMm2 - yMm ** 2,
  }
}

/**
 * The two places at the ends of two tapes that have a given coordinate; the known points must not lie along its axis. Formula:
 * the plane of the coordinate cuts the circle's plane in a line, q = (c − c₀)/s from the circle's centre, where s is the sine of
 * the angle between the axis and the line through the known points; height² = r² − q². The places mirror each other in the plane
 * through the known points along the axis. Source: plane geometry, derived here.
 */
export const twoTapesAndCoordinate = (
  first: TapeSphere,
  second: TapeSphere,
  { axis, valueMm }: CoordinatePlane,
): MirroredPlaces => {
  const { centre, along, radiusSqMm2 } = meeting(first, second)
  const square = squareTo(along, axisDirection(axis))
  const sine = directionLength(square)
  const toward = directionScaled(square, 1 / sine)
  const qMm = (valueMm - coordinateOf(centre, axis)) / sine
  return {
    foot: pointSum(centre, toward, qMm),
    normal: facing(directionCross(along, toward)),
    heightSqMm2: radiusSqMm2 - qMm ** 2,
  }
}

/** The places on both sides; both are the foot where the tapes do not meet, or only just. `normal` on the side it points to. */
export const placesOf = ({
  foot,
  normal,
  heightSqMm2,
}: MirroredPlaces): { readonly normal: PointMm; readonly opposite: PointMm } => {
  const heightMm = Math.sqrt(Math.max(0, heightSqMm2))
  return { normal: pointSum(foot, normal, heightMm), opposite: pointSum(foot, normal, -heightMm) }
}

/** Rounding of lengths of some metres: tapes that miss each other by no more than this touch. Our judgement. */
export const TOUCH_MM = 1e-9

/** By how much two tapes miss each other, mm: `shortMm` too short together, `overMm` one too long for the other; 0 where they meet. */
export const tapesApart = (
  first: TapeSphere,
  second: TapeSphere,
): { readonly apartMm: number; readonly shortMm: number; readonly overMm: number } => {
  const apartMm = pointDistanceMm(first.point, second.point)
  return {
    apartMm,
    shortMm: Math.max(0, apartMm - first.lengthMm - second.lengthMm),
    overMm: Math.max(0, Math.abs(first.lengthMm - second.lengthMm) - apartMm),
  }
}

/** Radii of the circle of two tapes, mm, as both are `TOUCH_MM` shorter and longer: where they only just meet these differ much. */
const radiiMm = ({ radiusSqMm2 }: Meeting, first: TapeSphere): readonly [number, number] => {
  const slackMm2 = 2 * first.lengthMm * TOUCH_MM
  return [Math.sqrt(Math.max(0, radiusSqMm2 - slackMm2)), Math.sqrt(Math.max(0, radiusSqMm2 + slackMm2))]
}

const clampedTo = (value: number, min: number, max: number): number => Math.min(max, Math.max(min, value))

/** The length nearest to the third tape's that ends where the first two meet, mm; its own length when it does. */
export const reachableLengthMm = (first: TapeSphere, second: TapeSphere, third: TapeSphere): number => {
  const circle = meeting(first, second)
  const toThird = pointDifference(third.point, circle.centre)
  const alongMm = directionDot(toThird, circle.along)
  const squareMm = directionLength(directionSum(toThird, circle.along, -alongMm))
  const [leastRadiusMm, mostRadiusMm] = radiiMm(circle, first)
  const nearMm = squareMm - clampedTo(squareMm, leastRadiusMm, mostRadiusMm)
  const leastMm = Math.hypot(alongMm, nearMm)
  const mostMm = Math.hypot(alongMm, squareMm + mostRadiusMm)
  return clampedTo(third.lengthMm, leastMm, mostMm)
}

/** The coordinate nearest to the measured one that a place at the ends of two tapes can have, mm; itself when one has it. */
export const reachableCoordinateMm = (
  first: TapeSphere,
  second: TapeSphere,
  { axis, valueMm }: CoordinatePlane,
): number => {
  const circle = meeting(first, second)
  const sine = directionLength(squareTo(circle.along, axisDirection(axis)))
  const reachMm = radiiMm(circle, first)[1] * sine
  const middleMm = coordinateOf(circle.centre, axis)
  return clampedTo(valueMm, middleMm - reachMm, middleMm + reachMm)
}
