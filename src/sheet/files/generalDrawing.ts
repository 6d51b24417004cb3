import type { Elevation } from '../../domain/geometry/plane'
import type { Layout } from '../../domain/layout/document/layout'
import { elevationDrawing } from '../../domain/layout/drawing/elevationDrawing'
import { DEFAULT_TEXT_HEIGHT_MM, PLAIN_DRAWING } from '../../domain/layout/drawing/options'
import type { Primitive } from '../../domain/layout/drawing/primitive'
import { rearDrawing } from '../../domain/layout/drawing/rearDrawing'
import type { CheckedEvaluation } from '../../domain/layout/evaluate/evaluation'
import { movedShape } from '../../domain/shop/flat/arranged'
import { flatBounds } from '../../domain/shop/flat/flatBounds'
import type { FlatFigure, FlatPoint, FlatShape } from '../../domain/shop/flat/flatFigure'
import { type LengthUnit, lengthWithUnit, MM_PER_INCH } from '../../domain/units/length'
import { primitiveShapes } from './primitiveShapes'

/** Views stand whole steps away from each other, so that coordinates are read off with one sum. Our judgement. */
const STEP_MM: Readonly<Record<LengthUnit, number>> = { mm: 100, in: 5 * MM_PER_INCH }

/** Free between views beside their lettering, mm of the car. Our judgement. */
const GAP_MM = 100

/** A length to measure in the drawing program: whether the file kept its size. */
const CHECK_MM: Readonly<Record<LengthUnit, number>> = { mm: 500, in: 20 * MM_PER_INCH }

/** What a general drawing program gets, and where its parts are. */
export interface GeneralDrawing {
  readonly figure: FlatFigure
  /** Where the datum of each view is in the file, mm; between views nothing is scaled or turned. Rear is null without a harness bar. */
  readonly datum: { readonly side: FlatPoint; readonly top: FlatPoint; readonly rear: FlatPoint | null }
  /** In words: where which view is. */
  readonly notes: readonly string[]
  /** Font size for notes to be read beside a whole car, mm. */
  readonly noteSizeMm: number
}

/**
 * All views in true size for a general drawing program, placed as third-angle projection has them: the top elevation above the side
 * one with x in common, the harness bars from behind at the right of it with z in common. The datum of the side elevation is the origin.
 */
export const generalDrawing = (layout: Layout, evaluation: CheckedEvaluation): GeneralDrawing => {
  const unit = layout.units.length
  const side = elevationShapes(layout, evaluation, 'side')
  const top = elevationShapes(layout, evaluation, 'top')
  const rear = shapesOf(rearDrawing(layout, evaluation)?.primitives ?? [])
  const [sideBox, topBox, rearBox] = [flatBounds(side), flatBounds(top), flatBounds(rear)]
  const upMm = wholeSteps(sideBox.max.yMm + GAP_MM + 2 * DEFAULT_TEXT_HEIGHT_MM - topBox.min.yMm, unit)
  const acrossMm = wholeSteps(Math.max(sideBox.max.xMm, topBox.max.xMm) + GAP_MM - rearBox.min.xMm, unit)
  const datum = {
    side: { xMm: 0, yMm: 0 },
    top: { xMm: 0, yMm: upMm },
    rear: rear.length === 0 ? null : { xMm: acrossMm, yMm: 0 },
  }
  const leftMm = Math.min(sideBox.min.xMm, topBox.min.xMm)
  const shapes = [
    ...titled('Side elevation: x to the right, z up', side, leftMm, datum.side),
    ...titled('Top elevation: x to the right, y up', top, leftMm, datum.top),
    ...(datum.rear === null
      ? []
      : titled('Harness bar from behind: y to the right, z up', rear, rearBox.min.xMm, datum.rear)),
    ...checkBar(leftMm, sideBox.min.yMm - 2 * DEFAULT_TEXT_HEIGHT_MM, unit),
  ]
  return {
    figure: { id: 'elevations', title: `${layout.job.car} elevations`.trim(), shapes },
    datum,
    notes: notesOf(datum, unit),
    noteSizeMm: DEFAULT_TEXT_HEIGHT_MM,
  }
}

const wholeSteps = (leastMm: number, unit: LengthUnit): number =>
  Math.ceil(leastMm / STEP_MM[unit]) * STEP_MM[unit]

const shapesOf = (primitives: readonly Primitive[]): readonly FlatShape[] =>
  primitives.flatMap((primitive) => primitiveShapes(primitive, DEFAULT_TEXT_HEIGHT_MM))

const elevationShapes = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  elevation: Elevation,
): readonly FlatShape[] =>
  shapesOf(
    elevationDrawing(layout, evaluation, elevation, { ...PLAIN_DRAWING, lengthUnit: layout.units.length })
      .primitives,
  )

const notesOf = ({ top, rear }: GeneralDrawing['datum'], unit: LengthUnit): readonly string[] => {
  const at = ({ xMm, yMm }: FlatPoint): string => `${lengthWithUnit(xMm, unit)}, ${lengthWithUnit(yMm, unit)}`
  const behind = rear === null ? '' : ` Harness bar from behind: the datum is at ${at(rear)}.`
  return [
    'Third-angle projection: the top elevation stands above the side elevation, the view from behind at its right.',
    `Side elevation: the datum is at 0, 0. Top elevation: the datum is at ${at(top)}.${behind}`,
    `Layer CHECK holds a line of ${lengthWithUnit(CHECK_MM[unit], unit)}: measure it before anything else.`,
  ]
}

/** A view in its place, with its name above it. */
const titled = (
  text: string,
  shapes: readonly FlatShape[],
  leftMm: number,
  datum: FlatPoint,
): readonly FlatShape[] => {
  const topMm = flatBounds(shapes).max.yMm
  const title = letters(text, { xMm: leftMm, yMm: topMm + DEFAULT_TEXT_HEIGHT_MM })
  return [...shapes, title].map((shape) => movedShape(shape, datum))
}

const letters = (text: string, at: FlatPoint): FlatShape => ({
  kind: 'text',
  layer: 'TEXT',
  at,
  text,
  heightMm: DEFAULT_TEXT_HEIGHT_MM,
  align: 'left',
  turnDeg: 0,
})

const checkBar = (xMm: number, yMm: number, unit: LengthUnit): readonly FlatShape[] => {
  const line = (fromX: number, fromY: number, toX: number, toY: number): FlatShape => ({
    kind: 'polyline',
    layer: 'CHECK',
    closed: false,
    points: [
      { xMm: fromX, yMm: fromY },
      { xMm: toX, yMm: toY },
    ],
  })
  const endMm = xMm + CHECK_MM[unit]
  return [
    line(xMm, yMm, endMm, yMm),
    line(xMm, yMm - 10, xMm, yMm + 10),
    line(endMm, yMm - 10, endMm, yMm + 10),
    letters(lengthWithUnit(CHECK_MM[unit], unit), { xMm: endMm + 10, yMm }),
  ]
}
