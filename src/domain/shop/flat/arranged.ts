import { flatBounds } from './flatBounds'
import type { FlatFigure, FlatPoint, FlatShape } from './flatFigure'

/** The same shape somewhere else; sizes and turns are kept. */
export const movedShape = (shape: FlatShape, by: FlatPoint): FlatShape => {
  const moved = ({ xMm, yMm }: FlatPoint): FlatPoint => ({ xMm: xMm + by.xMm, yMm: yMm + by.yMm })
  switch (shape.kind) {
    case 'polyline':
      return { ...shape, points: shape.points.map(moved) }
    case 'circle':
    case 'arc':
      return { ...shape, centre: moved(shape.centre) }
    case 'text':
      return { ...shape, at: moved(shape.at) }
  }
}

/** Free space between figures laid out together, mm: wider than a cutting head's lead-in. Our judgement. */
const GAP_MM = 20

/** Rows end after about this much, mm: a common sheet of plate is 1250 mm wide (from memory). */
const ROW_MM = 1200

/**
 * All figures as one, apart from each other in rows from the upper left, none turned or scaled: for a single file with everything in it.
 * The first figure's upper left corner is the origin.
 */
export const arranged = (id: string, title: string, figures: readonly FlatFigure[]): FlatFigure => {
  let corner: FlatPoint = { xMm: 0, yMm: 0 }
  let rowHeightMm = 0
  const shapes = figures.flatMap((figure) => {
    const { min, max } = flatBounds(figure.shapes)
    const widthMm = max.xMm - min.xMm
    if (corner.xMm > 0 && corner.xMm + widthMm > ROW_MM) {
      corner = { xMm: 0, yMm: corner.yMm - rowHeightMm - GAP_MM }
      rowHeightMm = 0
    }
    const by = { xMm: corner.xMm - min.xMm, yMm: corner.yMm - max.yMm }
    corner = { ...corner, xMm: corner.xMm + widthMm + GAP_MM }
    rowHeightMm = Math.max(rowHeightMm, max.yMm - min.yMm)
    return figure.shapes.map((shape) => movedShape(shape, by))
  })
  return { id, title, shapes }
}
