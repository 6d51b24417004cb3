import { directionBetween, type Direction } from '../geometry/point'
import type { StrapPath } from './path'

/**
 * The direction in which a strap pulls on its anchor, length 1: from the anchor contact along the first straight piece. Every
 * solved path has a point at least 1 µm from its start (throws otherwise: a programmer's error).
 */
export const lineOfPull = (path: StrapPath): Direction => {
  const [anchor, ...rest] = path.polyline
  for (const point of rest) {
    const direction = anchor === undefined ? null : directionBetween(anchor, point)
    if (direction !== null) return direction
  }
  throw new RangeError(`the path of ${path.strap} has no length`)
}
