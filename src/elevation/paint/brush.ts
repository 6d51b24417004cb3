import type { PlanePointMm } from '../../domain/geometry/plane'
import type { LineStyle } from '../../domain/layout/drawing/primitive'
import { type PointPx, toPx, type ViewTransform } from '../viewTransform'
import type { Palette } from './palette'

/** Everything a painter needs: the canvas, where the car is on it, and the colours. */
export interface Brush {
  readonly canvas: CanvasRenderingContext2D
  readonly view: ViewTransform
  readonly palette: Palette
  /** Something darker or lighter than paper may lie below: every line then keeps a rim of paper. */
  readonly isOverPhoto?: boolean
}

/** The rim of paper about a line over a photo, px on each side. Our judgement. */
const RIM_PX = 1.5

/** Lettering on the drawing. Nothing smaller is legible at arm's length on a tablet. Our judgement. */
const TEXT_PX = 12.5

/** Height of a line of text with its air, px: what labels are kept apart by. */
export const TEXT_LINE_PX = 14

const FACE = "'IBM Plex Sans Condensed', 'IBM Plex Sans', sans-serif"
const PLAIN_FONT = `${TEXT_PX}px ${FACE}`
const STRONG_FONT = `600 ${TEXT_PX}px ${FACE}`

interface Stroke {
  readonly colour: keyof Palette
  readonly widthPx: number
  readonly dashPx: readonly number[]
}

/**
 * The drawing board's line weights: heavy for the straps, medium for what is fitted, thin for scenery and dimensions. Broken
 * findings are the only heavy dashed lines, so they are told apart without colour.
 */
const STROKES: Readonly<Record<LineStyle, Stroke>> = {
  outline: { colour: 'ink', widthPx: 1.5, dashPx: [] },
  hidden: { colour: 'ink', widthPx: 1, dashPx: [5, 3] },
  centre: { colour: 'dimension', widthPx: 0.75, dashPx: [12, 3, 2, 3] },
  strap: { colour: 'strap', widthPx: 3, dashPx: [] },
  ghost: { colour: 'ghost', widthPx: 0.75, dashPx: [] },
  body: { colour: 'body', widthPx: 1.25, dashPx: [] },
  dimension: { colour: 'dimension', widthPx: 0.75, dashPx: [] },
  limit: { colour: 'accent', widthPx: 1.25, dashPx: [8, 4] },
  broken: { colour: 'broken', widthPx: 5, dashPx: [10, 5] },
  focus: { colour: 'accent', widthPx: 5, dashPx: [] },
  tube: { colour: 'tube', widthPx: 1, dashPx: [] },
  other: { colour: 'accent', widthPx: 1.5, dashPx: [2, 3] },
}

export const withStroke = (brush: Brush, style: LineStyle): void => {
  const stroke = STROKES[style]
  brush.canvas.strokeStyle = brush.palette[stroke.colour]
  brush.canvas.lineWidth = stroke.widthPx
  brush.canvas.setLineDash([...stroke.dashPx])
  brush.canvas.lineJoin = 'round'
  brush.canvas.lineCap = style === 'strap' || style === 'focus' ? 'round' : 'butt'
}

/** Draws the line that has been traced, over a photo on a rim of paper that keeps its contrast. */
export const strokeTraced = (brush: Brush): void => {
  const { canvas } = brush
  if (brush.isOverPhoto === true) {
    canvas.save()
    canvas.strokeStyle = brush.palette.paper
    canvas.lineWidth += 2 * RIM_PX
    canvas.setLineDash([])
    canvas.stroke()
    canvas.restore()
  }
  canvas.stroke()
}

export const at = (brush: Brush, point: PlanePointMm): PointPx => toPx(brush.view, point)

export const tracePath = (brush: Brush, points: readonly PlanePointMm[], isClosed: boolean): void => {
  brush.canvas.beginPath()
  points.forEach((point, index) => {
    const { xPx, yPx } = at(brush, point)
    if (index === 0) brush.canvas.moveTo(xPx, yPx)
    else brush.canvas.lineTo(xPx, yPx)
  })
  if (isClosed) brush.canvas.closePath()
}

interface Lettering {
  readonly text: string
  readonly at: PointPx
  readonly align: 'left' | 'center' | 'right'
  readonly colour: string
  readonly isStrong: boolean
  /** Anticlockwise, as the drawing counts. */
  readonly turnDeg: number
}

/** Text on a rim of paper, so that it stays legible over lines and hatching. */
export const letter = (brush: Brush, lettering: Lettering): void => {
  const { canvas, palette } = brush
  canvas.save()
  canvas.translate(lettering.at.xPx, lettering.at.yPx)
  canvas.rotate((-lettering.turnDeg * Math.PI) / 180)
  canvas.font = lettering.isStrong ? STRONG_FONT : PLAIN_FONT
  canvas.textAlign = lettering.align
  canvas.textBaseline = 'middle'
  canvas.setLineDash([])
  canvas.lineJoin = 'round'
  canvas.lineWidth = 4
  canvas.strokeStyle = palette.paper
  canvas.strokeText(lettering.text, 0, 0)
  canvas.fillStyle = lettering.colour
  canvas.fillText(lettering.text, 0, 0)
  canvas.restore()
}
