import { MM_PER_INCH } from '../../domain/units/length'
import type { LengthUnit } from '../../domain/layout/document/layout'
import { type SizePx, toMm } from '../viewTransform'
import type { Brush } from './brush'

/** Distances of the faint lines of the drawing paper, in the unit the shop thinks in. Our judgement. */
const STEPS_MM: Readonly<Record<LengthUnit, readonly number[]>> = {
  mm: [10, 50, 100, 500, 1000],
  in: [1, 2, 6, 12, 36].map((inches) => inches * MM_PER_INCH),
}

/** Closer lines would be a grey tone. Our judgement. */
const LEAST_STEP_PX = 24

/** Faint squares counted from the datum. */
export const paintGrid = (brush: Brush, unit: LengthUnit, size: SizePx): void => {
  const { canvas, view, palette } = brush
  const stepMm = STEPS_MM[unit].find((step) => step * view.pxPerMm >= LEAST_STEP_PX)
  if (stepMm === undefined) return
  const low = toMm(view, { xPx: 0, yPx: size.heightPx })
  const high = toMm(view, { xPx: size.widthPx, yPx: 0 })
  canvas.save()
  canvas.strokeStyle = palette.grid
  canvas.lineWidth = 1
  canvas.setLineDash([])
  canvas.beginPath()
  for (let line = Math.ceil(low.uMm / stepMm); line * stepMm <= high.uMm; line += 1) {
    const xPx = view.originXPx + line * stepMm * view.pxPerMm
    canvas.moveTo(xPx, 0)
    canvas.lineTo(xPx, size.heightPx)
  }
  for (let line = Math.ceil(low.vMm / stepMm); line * stepMm <= high.vMm; line += 1) {
    const yPx = view.originYPx - line * stepMm * view.pxPerMm
    canvas.moveTo(0, yPx)
    canvas.lineTo(size.widthPx, yPx)
  }
  canvas.stroke()
  canvas.restore()
}
