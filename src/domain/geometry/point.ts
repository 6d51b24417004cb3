/**
 * A point in the vehicle frame, from the datum: x rearward, y to the occupant's right, z up.
 * Source of the axes: ISO 4130 (from memory).
 */
export interface PointMm {
  readonly xMm: number
  readonly yMm: number
  readonly zMm: number
}

/** A direction in the vehicle frame; length 1 wherever a function returns one. */
export interface Direction {
  readonly x: number
  readonly y: number
  readonly z: number
}

export const pointMm = (xMm: number, yMm: number, zMm: number): PointMm => ({ xMm, yMm, zMm })

export const pointDifference = (to: PointMm, from: PointMm): Direction => ({
  x: to.xMm - from.xMm,
  y: to.yMm - from.yMm,
  z: to.zMm - from.zMm,
})

export const pointSum = (from: PointMm, along: Direction, lengthMm = 1): PointMm => ({
  xMm: from.xMm + along.x * lengthMm,
  yMm: from.yMm + along.y * lengthMm,
  zMm: from.zMm + along.z * lengthMm,
})

// Not Math.hypot: many times slower, and coordinates of some metres need no guard against overflow.
export const pointDistanceMm = (from: PointMm, to: PointMm): number => {
  const dx = to.xMm - from.xMm
  const dy = to.yMm - from.yMm
  const dz = to.zMm - from.zMm
  return Math.sqrt(dx * dx + dy * dy + dz * dz)
}

/** The point a share of the way from `from` (0) to `to` (1); outside 0…1 it lies beyond the ends. */
export const pointBetween = (from: PointMm, to: PointMm, share: number): PointMm => ({
  xMm: from.xMm + (to.xMm - from.xMm) * share,
  yMm: from.yMm + (to.yMm - from.yMm) * share,
  zMm: from.zMm + (to.zMm - from.zMm) * share,
})

export const directionDot = (a: Direction, b: Direction): number => a.x * b.x + a.y * b.y + a.z * b.z

export const directionLength = (a: Direction): number => Math.sqrt(a.x * a.x + a.y * a.y + a.z * a.z)

/** The direction from one point to another with length 1, or null when they are closer than 1 µm. */
export const directionBetween = (from: PointMm, to: PointMm): Direction | null => {
  const difference = pointDifference(to, from)
  const length = directionLength(difference)
  if (length < 1e-3) return null
  return { x: difference.x / length, y: difference.y / length, z: difference.z / length }
}
