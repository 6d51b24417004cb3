import { flatBounds } from '../../domain/shop/flat/flatBounds'
import type { FlatShape } from '../../domain/shop/flat/flatFigure'

/** From one line to the next and from the figure to the first, as a share of the font size. Our judgement. */
const STEP_SHARE = 1.5

/** Lines of lettering below the lower left corner of a figure, on layer TEXT. */
export const noteShapes = (
  lines: readonly string[],
  shapes: readonly FlatShape[],
  heightMm: number,
): readonly FlatShape[] => {
  const { min } = flatBounds(shapes)
  return lines.map((text, index) => ({
    kind: 'text',
    layer: 'TEXT',
    at: { xMm: min.xMm, yMm: min.yMm - (index + 2) * STEP_SHARE * heightMm },
    text,
    heightMm,
    align: 'left',
    turnDeg: 0,
  }))
}
