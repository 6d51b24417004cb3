import type { PicturePoint } from '../../../../src/domain/measure/photo/photo'
import { cross, dot, unit, type Vector } from '../../../support/spaceVector'

const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]

export interface Camera {
  readonly at: Vector
  readonly looksAt: Vector
  /** What is to be up in the picture. */
  readonly up: Vector
  readonly focalPx: number
  readonly widthPx: number
  readonly heightPx: number
}

/**
 * Where a camera without lens errors sees a point in space: its coordinates along the picture's right, its down and the line of sight, the first
 * two divided by the third and times the focal length, from the middle of the picture. Source: Hartley & Zisserman, Multiple View Geometry in
 * Computer Vision, 2nd ed., section 6.1, the basic pinhole model (from memory).
 */
export const seen = (camera: Camera, point: Vector): PicturePoint => {
  const sight = unit(minus(camera.looksAt, camera.at))
  const right = unit(cross(sight, camera.up))
  const down = cross(sight, right)
  const from = minus(point, camera.at)
  const depth = dot(from, sight)
  return {
    xPx: camera.widthPx / 2 + (camera.focalPx * dot(from, right)) / depth,
    yPx: camera.heightPx / 2 + (camera.focalPx * dot(from, down)) / depth,
  }
}

/**
 * Cameras that look toward +y at the plane y = 0, where x runs right and z up as in the side elevation: squarely, from the front and low, from
 * behind and high, and tilted sideways.
 */
export const CAMERAS: readonly Camera[] = [
  {
    at: [600, -3000, 400],
    looksAt: [600, 0, 400],
    up: [0, 0, 1],
    focalPx: 3000,
    widthPx: 4000,
    heightPx: 3000,
  },
  {
    at: [-600, -2500, 150],
    looksAt: [700, 0, 450],
    up: [0, 0, 1],
    focalPx: 3200,
    widthPx: 4000,
    heightPx: 3000,
  },
  {
    at: [2200, -2800, 1600],
    looksAt: [650, 0, 400],
    up: [0, 0, 1],
    focalPx: 2800,
    widthPx: 4032,
    heightPx: 3024,
  },
  {
    at: [300, -2600, 900],
    looksAt: [600, 0, 300],
    up: [0.2, 0, 1],
    focalPx: 3000,
    widthPx: 3000,
    heightPx: 4000,
  },
]
