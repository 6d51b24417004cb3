import type { Drawing, Primitive } from '../../domain/layout/drawing/primitive'
import type { SizePx } from '../viewTransform'
import { at, type Brush, strokeTraced, tracePath, withStroke } from './brush'
import { paintAngle, paintDimension, paintLabel } from './paintFigures'
import { paintMark } from './paintMark'
import { paintZone } from './paintZone'

const paintPrimitive = (brush: Brush, primitive: Primitive, size: SizePx): void => {
  switch (primitive.kind) {
    case 'polyline':
      withStroke(brush, primitive.style)
      tracePath(brush, primitive.points, primitive.closed)
      return strokeTraced(brush)
    case 'circle': {
      const { xPx, yPx } = at(brush, primitive.centre)
      withStroke(brush, primitive.style)
      brush.canvas.beginPath()
      brush.canvas.arc(xPx, yPx, primitive.radiusMm * brush.view.pxPerMm, 0, 2 * Math.PI)
      return strokeTraced(brush)
    }
    case 'zone':
      return paintZone(brush, primitive, size.widthPx, size.heightPx)
    case 'dimension':
      return paintDimension(brush, primitive)
    case 'angle':
      return paintAngle(brush, primitive)
    case 'label':
      return paintLabel(brush, primitive)
    case 'mark':
      return paintMark(brush, primitive)
  }
}

/** The whole elevation in the order of its list. */
export const paintDrawing = (brush: Brush, drawing: Drawing, size: SizePx): void => {
  brush.canvas.save()
  for (const primitive of drawing.primitives) paintPrimitive(brush, primitive, size)
  brush.canvas.restore()
}
