import type { PointMm } from '../../../../src/domain/geometry/point'

/** A point or direction in the vehicle frame as three numbers: x rearward, y right, z up. */
export type Vector = readonly [number, number, number]

export const vectorOf = ({ xMm, yMm, zMm }: PointMm): Vector => [xMm, yMm, zMm]
export const plus = (a: Vector, b: Vector, times = 1): Vector => [
  a[0] + b[0] * times,
  a[1] + b[1] * times,
  a[2] + b[2] * times,
]
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const times = (a: Vector, factor: number): Vector => [a[0] * factor, a[1] * factor, a[2] * factor]
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
export const norm = (a: Vector): number => Math.hypot(a[0], a[1], a[2])
export const apart = (a: Vector, b: Vector): number => norm(minus(a, b))
export const unit = (a: Vector): Vector => times(a, 1 / norm(a))
export const towards = (from: Vector, to: Vector): Vector => unit(minus(to, from))

/** Angle between two directions of length 1; exact for small angles too. */
export const turnDeg = (a: Vector, b: Vector): number =>
  (Math.atan2(norm(cross(a, b)), dot(a, b)) * 180) / Math.PI
