import { angleTextAt, arcPoints, dimensionLine } from '../../domain/layout/drawing/figureText'
import type { Primitive } from '../../domain/layout/drawing/primitive'
import { at, type Brush, letter, strokeTraced, TEXT_LINE_PX, tracePath, withStroke } from './brush'

type Dimension = Extract<Primitive, { kind: 'dimension' }>
type Angle = Extract<Primitive, { kind: 'angle' }>
type Label = Extract<Primitive, { kind: 'label' }>

/** Half length of an architectural tick. Our judgement. */
const TICK_PX = 5

const isOfFinding = (key: string): boolean => key.startsWith('focus/')

export const paintDimension = (brush: Brush, dimension: Dimension): void => {
  const { canvas, view, palette } = brush
  const line = dimensionLine(dimension, TEXT_LINE_PX / view.pxPerMm)
  withStroke(brush, 'dimension')
  for (const [measured, end] of [
    [dimension.from, line.from],
    [dimension.to, line.to],
  ] as const) {
    tracePath(brush, [measured, end], false)
    strokeTraced(brush)
  }
  tracePath(brush, [line.from, line.to], false)
  strokeTraced(brush)
  canvas.lineWidth = 2
  for (const end of [line.from, line.to]) {
    const { xPx, yPx } = at(brush, end)
    canvas.beginPath()
    canvas.moveTo(xPx - TICK_PX, yPx + TICK_PX)
    canvas.lineTo(xPx + TICK_PX, yPx - TICK_PX)
    canvas.stroke()
  }
  letter(brush, {
    text: dimension.text,
    at: at(brush, line.textAt),
    align: 'center',
    colour: isOfFinding(dimension.key) ? palette.ink : palette.dimension,
    isStrong: isOfFinding(dimension.key),
    turnDeg: line.textTurnDeg,
  })
}

export const paintAngle = (brush: Brush, angle: Angle): void => {
  withStroke(brush, 'dimension')
  brush.canvas.lineWidth = isOfFinding(angle.key) ? 2 : 1
  tracePath(brush, arcPoints(angle.apex, angle.radiusMm, angle.fromDeg, angle.toDeg), false)
  strokeTraced(brush)
  letter(brush, {
    text: angle.text,
    at: at(brush, angleTextAt(angle, TEXT_LINE_PX / brush.view.pxPerMm)),
    align: 'center',
    colour: brush.palette.ink,
    isStrong: true,
    turnDeg: 0,
  })
}

const ALIGN = { left: 'left', centre: 'center', right: 'right' } as const

export const paintLabel = (brush: Brush, label: Label): void => {
  const isStrong = label.weight === 'strong'
  letter(brush, {
    text: label.text,
    at: at(brush, label.at),
    align: ALIGN[label.align],
    colour: isStrong ? brush.palette.ink : brush.palette.dimension,
    isStrong,
    turnDeg: 0,
  })
}
