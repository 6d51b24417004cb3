import type { Primitive } from '../../domain/layout/drawing/primitive'
import type { PointPx } from '../viewTransform'
import { at, type Brush } from './brush'

type Mark = Extract<Primitive, { kind: 'mark' }>

const circle = (brush: Brush, { xPx, yPx }: PointPx, radiusPx: number): void => {
  brush.canvas.beginPath()
  brush.canvas.arc(xPx, yPx, radiusPx, 0, 2 * Math.PI)
}

const cross = (brush: Brush, { xPx, yPx }: PointPx, reachPx: number, isUpright: boolean): void => {
  const { canvas } = brush
  canvas.beginPath()
  if (isUpright) {
    canvas.moveTo(xPx - reachPx, yPx)
    canvas.lineTo(xPx + reachPx, yPx)
    canvas.moveTo(xPx, yPx - reachPx)
    canvas.lineTo(xPx, yPx + reachPx)
  } else {
    canvas.moveTo(xPx - reachPx, yPx - reachPx)
    canvas.lineTo(xPx + reachPx, yPx + reachPx)
    canvas.moveTo(xPx - reachPx, yPx + reachPx)
    canvas.lineTo(xPx + reachPx, yPx - reachPx)
  }
  canvas.stroke()
}

/** A circle with two opposite quarters filled: where the tape is put. */
const paintDatum = (brush: Brush, point: PointPx): void => {
  const { canvas } = brush
  const { xPx, yPx } = point
  canvas.beginPath()
  canvas.moveTo(xPx, yPx)
  canvas.arc(xPx, yPx, 7, 0, Math.PI / 2)
  canvas.closePath()
  canvas.moveTo(xPx, yPx)
  canvas.arc(xPx, yPx, 7, Math.PI, 1.5 * Math.PI)
  canvas.closePath()
  canvas.fill()
  circle(brush, point, 7)
  canvas.stroke()
  cross(brush, point, 12, true)
}

/** Broken is crossed out, tight has a second outline, clear is plain: three shapes before three colours. */
const paintVerdict = (brush: Brush, point: PointPx, verdict: Mark['verdict']): void => {
  const { canvas, palette } = brush
  if (verdict === 'broken') {
    canvas.strokeStyle = palette.broken
    canvas.lineWidth = 3
    cross(brush, point, 8, false)
  }
  if (verdict === 'tight') {
    canvas.strokeStyle = palette.tight
    canvas.lineWidth = 2
    circle(brush, point, 9)
    canvas.stroke()
  }
}

const square = (brush: Brush, { xPx, yPx }: PointPx, halfPx: number): void => {
  brush.canvas.beginPath()
  brush.canvas.rect(xPx - halfPx, yPx - halfPx, 2 * halfPx, 2 * halfPx)
}

const fillAndOutline = (brush: Brush, fill: string): void => {
  brush.canvas.fillStyle = fill
  brush.canvas.fill()
  brush.canvas.stroke()
}

const paintSymbol = (brush: Brush, mark: Mark['mark'], point: PointPx): void => {
  const { canvas, palette } = brush
  const { xPx, yPx } = point
  switch (mark) {
    case 'datum':
      return paintDatum(brush, point)
    case 'hip':
      circle(brush, point, 6)
      fillAndOutline(brush, palette.paper)
      return cross(brush, point, 10, true)
    case 'shoulder':
      circle(brush, point, 4)
      return fillAndOutline(brush, palette.paper)
    case 'hip-bone':
      return cross(brush, point, 4, false)
    case 'tab':
      square(brush, point, 4)
      return fillAndOutline(brush, palette.paper)
    case 'wrap':
      circle(brush, point, 5)
      return fillAndOutline(brush, palette.paper)
    case 'eye':
      circle(brush, point, 5)
      fillAndOutline(brush, palette.paper)
      circle(brush, point, 2)
      return canvas.stroke()
    case 'slot':
    case 'rim':
      canvas.beginPath()
      canvas.moveTo(xPx, yPx - 4)
      canvas.lineTo(xPx + 4, yPx)
      canvas.lineTo(xPx, yPx + 4)
      canvas.lineTo(xPx - 4, yPx)
      canvas.closePath()
      return fillAndOutline(brush, mark === 'rim' ? palette.paper : palette.ink)
    case 'buckle':
      square(brush, point, 5)
      return fillAndOutline(brush, palette.ink)
    case 'junction':
      circle(brush, point, 4)
      return fillAndOutline(brush, palette.ink)
    case 'tube-end':
      circle(brush, point, 2)
      return fillAndOutline(brush, palette.ink)
    case 'recline':
      canvas.beginPath()
      canvas.moveTo(xPx, yPx - 5)
      canvas.lineTo(xPx + 5, yPx + 4)
      canvas.lineTo(xPx - 5, yPx + 4)
      canvas.closePath()
      return fillAndOutline(brush, palette.paper)
  }
}

export const paintMark = (brush: Brush, mark: Mark): void => {
  const { canvas, palette } = brush
  const point = at(brush, mark.at)
  canvas.save()
  canvas.setLineDash([])
  canvas.strokeStyle = palette.ink
  canvas.fillStyle = palette.ink
  canvas.lineWidth = 1.5
  paintSymbol(brush, mark.mark, point)
  paintVerdict(brush, point, mark.verdict)
  canvas.restore()
}
