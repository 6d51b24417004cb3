import { directionBetween, type Direction } from '../geometry/point'
import type { StrapPath } from './path'

/**
 * The direction in which a strap pulls on its anchor, length 1: from the anchor contact along the first straight piece. Every
 * solved path has a point at least 1 µm from its start (throws otherwise: a programmer's error).
 */
export const lineOfPull = (path: StrapPath): Direction => {
  const { contacts } = path
  const anchor = contacts[0]
  for (let index = 1; index < contacts.length && anchor !== undefined; index += 1) {
    const direction = directionBetween(anchor.point, contacts[index]?.point ?? anchor.point)
    if (direction !== null) return direction
  }
  throw new RangeError(`the path of ${path.strap} has no length`)
}
