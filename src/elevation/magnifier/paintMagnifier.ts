import type { Palette } from '../paint/palette'
import type { PointPx } from '../viewTransform'

/** A canvas of the stage, and how many of its px go to one px of the page. */
export interface Source {
  readonly canvas: HTMLCanvasElement
  readonly ratio: number
}

/** What lies under the finger is shown this much larger. Our judgement. */
const MAGNIFICATION = 3

/** Free of lines about the point itself, px of the page. Our judgement. */
const GAP_PX = 7

const line = (
  canvas: CanvasRenderingContext2D,
  from: readonly [number, number],
  to: readonly [number, number],
) => {
  canvas.moveTo(...from)
  canvas.lineTo(...to)
}

/** Four lines to the point from the edges, dark on a rim of paper, and the point itself. */
const paintCross = (canvas: CanvasRenderingContext2D, widthPx: number, palette: Palette): void => {
  const middle = widthPx / 2
  for (const [colour, lineWidth] of [
    [palette.paper, 4],
    [palette.accent, 1.5],
  ] as const) {
    canvas.strokeStyle = colour
    canvas.lineWidth = lineWidth
    canvas.beginPath()
    line(canvas, [0, middle], [middle - GAP_PX, middle])
    line(canvas, [middle + GAP_PX, middle], [widthPx, middle])
    line(canvas, [middle, 0], [middle, middle - GAP_PX])
    line(canvas, [middle, middle + GAP_PX], [middle, widthPx])
    canvas.stroke()
  }
  canvas.fillStyle = palette.accent
  canvas.fillRect(middle - 1, middle - 1, 2, 2)
}

/**
 * The square of the stage about `at`, copied from its canvases and enlarged, with a cross-hair at `at`. Copied and not drawn again:
 * this happens at every move. `widthPx` is the inset's width on the page, `ratio` how many of its own px go to one of the page.
 */
export const paintMagnifier = (
  inset: Source,
  sources: readonly Source[],
  at: PointPx,
  widthPx: number,
  palette: Palette,
): void => {
  const canvas = inset.canvas.getContext('2d')
  if (canvas === null) return
  const sidePx = widthPx / MAGNIFICATION
  canvas.setTransform(inset.ratio, 0, 0, inset.ratio, 0, 0)
  canvas.fillStyle = palette.paper
  canvas.fillRect(0, 0, widthPx, widthPx)
  for (const { canvas: from, ratio } of sources) {
    const [xPx, yPx] = [(at.xPx - sidePx / 2) * ratio, (at.yPx - sidePx / 2) * ratio]
    canvas.drawImage(from, xPx, yPx, sidePx * ratio, sidePx * ratio, 0, 0, widthPx, widthPx)
  }
  paintCross(canvas, widthPx, palette)
}
