import { type PlanePointMm, planeDistanceMm, planePoint } from '../../../geometry/plane'
import { quantityUnit } from '../../../straps/quantity'
import { cosDeg, sinDeg } from '../../../units/angle'
import { valueText } from '../../wording/amounts'
import { angleFigure } from '../anglePrimitives'
import { type Box, boxAbout, drawingBounds, textBox } from '../box'
import { dimensionLine } from '../figureText'
import { placedLabels, type LabelWish } from '../labelPlacement'
import type { LineStyle, Primitive } from '../primitive'
import type { ExplainFigure, ExplainScene, ExplainView, Measure } from './explanation'

/** A point's name at its place on the drawing. */
export interface PointLabel {
  readonly text: string
  readonly at: PlanePointMm
}

/** Everything of one figure but its scale and its lettering. */
export interface FigureParts {
  readonly view: ExplainView
  readonly measure: Measure | null
  readonly points: readonly PointLabel[]
  /** Thin lines that help to see what is meant. */
  readonly lines: readonly Primitive[]
  /** Body, seat, tubes and straps behind it; they do not decide what is in view. */
  readonly scenery: readonly Primitive[]
  /** Words that take the place of an arc too small to see. */
  readonly note?: string
}

/** Width over height of every figure: a shape that is legible on an upright phone. Our judgement. */
const ASPECT = 4 / 3

/** No figure shows less than this, or its scenery would not be recognised. Our judgement. */
const LEAST_WIDTH_MM = 220

/** Lines of text across a figure: at 320 px a line is then 15 px high. Our judgement. */
const TEXTS_ACROSS = 21

export const line = (
  key: string,
  points: readonly PlanePointMm[],
  style: LineStyle,
  closed = false,
): Primitive => ({ kind: 'polyline', key: `explain/${key}`, part: null, points, closed, style })

/** The smallest rectangle of the figures' shape about a box, with a margin of a share of its width. */
const framed = (box: Box, marginShare: number): Box => {
  const margin = 1 + 2 * marginShare
  const widthMm = Math.max(
    LEAST_WIDTH_MM,
    (box.max.uMm - box.min.uMm) * margin,
    (box.max.vMm - box.min.vMm) * margin * ASPECT,
  )
  const middle = planePoint((box.min.uMm + box.max.uMm) / 2, (box.min.vMm + box.max.vMm) / 2)
  return boxAbout(middle, widthMm, widthMm / ASPECT)
}

const measureEnds = (measure: Measure | null): readonly PlanePointMm[] => {
  if (measure === null) return []
  return measure.kind === 'angle' ? [measure.apex, measure.to] : [measure.from, measure.to]
}

const pointed = (from: PlanePointMm, directionDeg: number, lengthMm: number): PlanePointMm =>
  planePoint(from.uMm + lengthMm * cosDeg(directionDeg), from.vMm + lengthMm * sinDeg(directionDeg))

/** Smaller angles get a larger arc, or it would be too short to see. Our judgement. */
const SMALL_DEG = 20

/** The arc stays inside the shorter of line and figure, but never so small that it hides in its apex. Our judgement. */
const arcRadiusMm = (valueDeg: number, lengthMm: number, textHeightMm: number): number => {
  const [lines, share] = Math.abs(valueDeg) < SMALL_DEG ? [11, 0.75] : [5, 0.6]
  return Math.max(2 * textHeightMm, Math.min(lines * textHeightMm, share * lengthMm))
}

/** The value as it stands on the drawing; a share of the tension in few words, because its line is short. */
const figureText = ({ id, value, lengthUnit }: ExplainScene): string => {
  const text = valueText(id, value, lengthUnit)
  return quantityUnit(id) === 'ratio' ? `${text.split(' ')[0] ?? text} × tension` : text
}

/** The two lines of an angle and the arc between them, or the dimension of a length. */
const measurePrimitives = (
  measure: Measure | null,
  scene: ExplainScene,
  textHeightMm: number,
): readonly Primitive[] => {
  if (measure === null) return []
  const text = figureText(scene)
  if (measure.kind === 'length') {
    const { from, to } = measure
    const offsetMm = measure.isOnPoints === true ? 0 : 1.6 * textHeightMm
    return [{ kind: 'dimension', key: 'explain/value', part: null, from, to, offsetMm, text }]
  }
  const { apex, zeroDeg, turn, to } = measure
  const lengthMm = planeDistanceMm(apex, to)
  const radiusMm = arcRadiusMm(scene.value, lengthMm, textHeightMm)
  const arc = angleFigure({
    key: 'explain/value',
    part: null,
    angle: { apex, zeroDeg, turn },
    valueDeg: scene.value,
    text,
    radiusMm,
  }).filter(({ kind }) => kind === 'angle')
  const reachMm = Math.max(1.5 * radiusMm, 0.9 * lengthMm)
  return [
    line('zero', [apex, pointed(apex, zeroDeg, reachMm)], 'hidden'),
    line('measured', [apex, to], 'focus'),
    ...arc,
  ]
}

const labelsOf = (
  parts: FigureParts,
  drawn: readonly Primitive[],
  bounds: Box,
  textHeightMm: number,
): readonly Primitive[] => {
  const wishes = parts.points.map(({ text, at }, index): LabelWish => ({
    key: `explain/name/${index}`,
    part: null,
    at,
    text,
    weight: 'plain',
    need: 'must',
  }))
  return placedLabels(wishes, {
    blocked: [
      ...parts.points.map(({ at }) => boxAbout(at, 0.6 * textHeightMm, 0.6 * textHeightMm)),
      ...drawn.flatMap((primitive) => textBox(primitive, textHeightMm) ?? []),
    ],
    lines: drawn.flatMap((primitive) => {
      if (primitive.kind === 'polyline') return [primitive.points]
      if (primitive.kind !== 'dimension') return []
      const { from, to } = dimensionLine(primitive, textHeightMm)
      return [[from, to]]
    }),
    textHeightMm,
    within: bounds,
  })
}

const noteLabel = (note: string | undefined, bounds: Box, textHeightMm: number): readonly Primitive[] =>
  note === undefined
    ? []
    : [
        {
          kind: 'label',
          key: 'explain/note',
          part: null,
          at: planePoint((bounds.min.uMm + bounds.max.uMm) / 2, bounds.min.vMm + textHeightMm),
          text: note,
          align: 'centre',
          weight: 'strong',
        },
      ]

/** One figure at the scale that shows what is measured, its points named. */
export const figureOf = (parts: FigureParts, scene: ExplainScene): ExplainFigure => {
  const ends = [...measureEnds(parts.measure), ...parts.points.map(({ at }) => at)]
  const core: readonly Primitive[] = [...parts.lines, line('core', ends, 'dimension')]
  const textHeightMm =
    (framed(drawingBounds(core, 0), 0.2).max.uMm - framed(drawingBounds(core, 0), 0.2).min.uMm) / TEXTS_ACROSS
  const measured = measurePrimitives(parts.measure, scene, textHeightMm)
  const bounds = framed(drawingBounds([...core, ...measured], textHeightMm), 0.14)
  const drawn = [...parts.lines, ...measured]
  const marks = parts.points.map(({ at }, index): Primitive => ({
    kind: 'mark',
    key: `explain/point/${index}`,
    part: null,
    at,
    mark: 'shoulder',
    verdict: 'none',
  }))
  const note = noteLabel(parts.note, bounds, textHeightMm)
  const names = labelsOf(parts, [...drawn, ...note], bounds, textHeightMm)
  return {
    view: parts.view,
    primitives: [...parts.scenery, ...drawn, ...marks, ...names, ...note],
    bounds,
    textHeightMm,
  }
}
