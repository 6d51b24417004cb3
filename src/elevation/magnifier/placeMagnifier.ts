import type { PointPx, SizePx } from '../viewTransform'

/** How far the inset keeps from the point in hand: a fingertip covers about this much. Our judgement. */
export const CLEAR_OF_FINGER_PX = 44

const within = (valuePx: number, mostPx: number): number => Math.max(0, Math.min(valuePx, mostPx))

/**
 * Where the top left corner of the inset goes: above the finger, for the hand lies below it; where there is no height, to the left
 * or, near the left edge, to the right, level with the finger and rather above. Always inside the pane as far as it fits, and over
 * the finger only in a pane that has room on no side.
 */
export const placeMagnifier = (at: PointPx, pane: SizePx, inset: SizePx): PointPx => {
  const mostX = pane.widthPx - inset.widthPx
  const mostY = pane.heightPx - inset.heightPx
  const aboveY = at.yPx - CLEAR_OF_FINGER_PX - inset.heightPx
  if (aboveY >= 0) return { xPx: within(at.xPx - inset.widthPx / 2, mostX), yPx: within(aboveY, mostY) }
  const leftX = at.xPx - CLEAR_OF_FINGER_PX - inset.widthPx
  const rightX = at.xPx + CLEAR_OF_FINGER_PX
  const yPx = within(at.yPx - inset.heightPx * 0.75, mostY)
  if (leftX >= 0) return { xPx: leftX, yPx }
  if (rightX <= mostX) return { xPx: rightX, yPx }
  // Too narrow for either: away from the finger as far as the pane goes.
  return { xPx: at.xPx > pane.widthPx / 2 ? 0 : Math.max(0, mostX), yPx }
}
