import type { Laid } from '../../domain/measure/photo/rectified'
import type { ViewTransform } from '../viewTransform'

/** A photo as it is painted: the picture and its halves, how the first lies on the car, and how strongly it is seen. */
export interface PaintedPhoto {
  readonly id: string
  readonly levels: readonly ImageBitmap[]
  readonly laid: Laid
  readonly opacity: number
}

/** The six numbers of a canvas transform from the picture's pixels to the stage's px. */
export const photoTransform = (
  { a, b, c, d, e, f }: Laid,
  { pxPerMm: s, originXPx, originYPx }: ViewTransform,
): readonly [number, number, number, number, number, number] => [
  a * s,
  -b * s,
  c * s,
  -d * s,
  originXPx + e * s,
  originYPx - f * s,
]

/**
 * Which of the halves is painted: the smallest that still has a pixel for each of the screen, so that a large picture on a small
 * drawing costs little and does not flicker. `ratio`: pixels of the screen to one px of the page.
 */
export const levelIndex = (laid: Laid, pxPerMm: number, ratio: number, count: number): number => {
  const mmPerPixel = Math.sqrt(Math.abs(laid.a * laid.d - laid.b * laid.c))
  const screenPerPixel = mmPerPixel * pxPerMm * ratio
  const index = Math.floor(Math.log2(1 / screenPerPixel))
  return Math.min(count - 1, Math.max(0, index))
}

export const paintPhoto = (
  canvas: CanvasRenderingContext2D,
  view: ViewTransform,
  { levels, laid, opacity }: PaintedPhoto,
): void => {
  const [whole] = levels
  const level = levels[levelIndex(laid, view.pxPerMm, window.devicePixelRatio, levels.length)]
  // A picture that was let go between two frames has no size any more.
  if (whole === undefined || level === undefined || level.width === 0) return
  canvas.save()
  canvas.globalAlpha = opacity
  canvas.transform(...photoTransform(laid, view))
  canvas.drawImage(level, 0, 0, whole.width, whole.height)
  canvas.restore()
}
