import type { PointPx } from '../viewTransform'
import { type Brush, letter, strokeTraced } from './brush'

/** A handle as painted. */
export interface PaintedHandle {
  readonly at: PointPx
  readonly look: 'main' | 'small' | 'fixed'
  readonly isSelected: boolean
}

const RADIUS_PX = { main: 9, small: 5, fixed: 3 } as const

const ring = (brush: Brush, { xPx, yPx }: PointPx, radiusPx: number): void => {
  brush.canvas.beginPath()
  brush.canvas.arc(xPx, yPx, radiusPx, 0, 2 * Math.PI)
  strokeTraced(brush)
}

/** Four short strokes round the selected handle, so that it stands out without colour. */
const paintSelection = (brush: Brush, { xPx, yPx }: PointPx): void => {
  const { canvas } = brush
  canvas.lineWidth = 2.5
  ring(brush, { xPx, yPx }, 13)
  canvas.beginPath()
  for (const [dx, dy] of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    canvas.moveTo(xPx + dx * 13, yPx + dy * 13)
    canvas.lineTo(xPx + dx * 21, yPx + dy * 21)
  }
  strokeTraced(brush)
}

/** Rings round what can be moved here, a plain dot for what cannot. */
export const paintHandles = (brush: Brush, handles: readonly PaintedHandle[]): void => {
  const { canvas, palette } = brush
  canvas.save()
  canvas.setLineDash([])
  canvas.strokeStyle = palette.handle
  for (const handle of handles) {
    canvas.lineWidth = handle.look === 'main' ? 1.5 : 1
    ring(brush, handle.at, RADIUS_PX[handle.look])
    if (handle.isSelected) paintSelection(brush, handle.at)
  }
  canvas.restore()
}

/** How far above the handle its live numbers stand: a fingertip covers about this much. Our judgement. */
const ABOVE_FINGER_PX = 44

/** The numbers of the handle that is moving, clear of the finger and inside the stage. */
export const paintLiveText = (brush: Brush, at: PointPx, lines: readonly string[], widthPx: number): void => {
  const lineHeightPx = 17
  const isRoomAbove = at.yPx > ABOVE_FINGER_PX + lines.length * lineHeightPx
  const firstYPx = isRoomAbove
    ? at.yPx - ABOVE_FINGER_PX - (lines.length - 1) * lineHeightPx
    : at.yPx + ABOVE_FINGER_PX
  const xPx = Math.min(Math.max(at.xPx, 80), Math.max(80, widthPx - 80))
  lines.forEach((text, index) =>
    letter(brush, {
      text,
      at: { xPx, yPx: firstYPx + index * lineHeightPx },
      align: 'center',
      colour: brush.palette.ink,
      isStrong: true,
      turnDeg: 0,
    }),
  )
}
