import { directionDot, directionLength, type Direction } from '../../geometry/point'

/** a × b, right-handed. */
export const directionCross = (a: Direction, b: Direction): Direction => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
})

export const directionSum = (a: Direction, b: Direction, lengthMm = 1): Direction => ({
  x: a.x + b.x * lengthMm,
  y: a.y + b.y * lengthMm,
  z: a.z + b.z * lengthMm,
})

export const directionScaled = (a: Direction, factor: number): Direction => ({
  x: a.x * factor,
  y: a.y * factor,
  z: a.z * factor,
})

/** What is left of `a` square to `unit`, which has length 1. */
export const squareTo = (unit: Direction, a: Direction): Direction =>
  directionSum(a, unit, -directionDot(a, unit))

/** A vector shorter than this, in the length it was given in, has no direction worth the name. Our judgement. */
const NO_LENGTH = 1e-9

/** The same direction with length 1; null when there is none. */
export const unitDirection = (a: Direction): Direction | null => {
  const length = directionLength(a)
  return length < NO_LENGTH ? null : directionScaled(a, 1 / length)
}
