import { bodyOf } from '../../../body/body'
import { posedBody } from '../../../body/posed'
import { type Elevation, type PlanePointMm, planePoint, projected } from '../../../geometry/plane'
import type { Layout } from '../../document/layout'
import { type Box, boxAbout, drawingBounds } from '../../drawing/box'
import { figurePrimitives } from '../../drawing/bodyPrimitives'
import type { Drawing, LineStyle, Primitive } from '../../drawing/primitive'
import { seatPrimitives } from '../../drawing/seatPrimitives'
import { tubePrimitives } from '../../drawing/tubePrimitives'
import { drawnPose } from '../../edit/handles'
import { solvedAsDrawn } from '../../edit/startingMount'
import { lengthWithUnit } from '../../../units/length'
import { askedPlace } from '../askedPlace'

/** One drawing of where the tape goes, with what it shows in words for those who do not see it. */
export interface QuestionFigure {
  readonly caption: string
  readonly description: string
  /** The letters on it, each of one ask. */
  readonly letters: readonly string[]
  readonly primitives: readonly Primitive[]
  readonly bounds: Drawing['bounds']
  readonly textHeightMm: number
}

/** Something measured with a tape, held level or plumb at `at`; the letter stands beside the field too. */
export interface Taped {
  readonly letter: string
  readonly valueMm: number
  readonly from: PlanePointMm
  readonly to: PlanePointMm
  readonly way: 'level' | 'plumb' | 'straight'
  /** Where the line of the dimension lies: its height if level, its place along the car if plumb; nothing if straight. */
  readonly at: number
}

export interface FigureParts {
  readonly layout: Layout
  readonly elevation: Elevation
  readonly caption: string
  readonly taped: readonly Taped[]
  /** What the question is about, picked out. */
  readonly focus: readonly Primitive[]
  /** Points that must be in view beside what is measured. */
  readonly inView?: readonly PlanePointMm[]
  readonly scenery?: readonly Primitive[]
}

export const line = (
  key: string,
  points: readonly PlanePointMm[],
  style: LineStyle,
  closed = false,
): Primitive => ({ kind: 'polyline', key: `asked/${key}`, part: null, points, closed, style })

export const label = (
  key: string,
  at: PlanePointMm,
  text: string,
  align: 'left' | 'centre' | 'right' = 'centre',
): Primitive => ({ kind: 'label', key: `asked/${key}`, part: null, at, text, align, weight: 'strong' })

export const point = (key: string, at: PlanePointMm): Primitive => ({
  kind: 'mark',
  key: `asked/${key}`,
  part: null,
  at,
  mark: 'hip',
  verdict: 'none',
})

export const DATUM = planePoint(0, 0)

const asGhost = (primitive: Primitive): readonly Primitive[] => {
  if (primitive.kind === 'mark') return []
  const key = `scenery/${primitive.key}`
  return 'style' in primitive ? [{ ...primitive, key, style: 'ghost' }] : [{ ...primitive, key }]
}

/** Seat, tubes, the first person and the straps, thin: what is measured stands out from them. */
const sceneryOf = (layout: Layout, elevation: Elevation): readonly Primitive[] => {
  const place = askedPlace(layout)
  const { paths } = solvedAsDrawn(layout, place)
  const [occupant] = place.occupants
  const pose = drawnPose(place)
  const body = occupant && posedBody(bodyOf(occupant), pose, place.seat.hipHeightMm)
  return [
    ...tubePrimitives(layout.tubes, elevation),
    ...seatPrimitives(place, pose, elevation),
    ...(body === undefined ? [] : figurePrimitives(body, elevation, 'ghost', 'asked/person')),
    ...paths.map((path) =>
      line(
        `strap/${path.strap}`,
        path.polyline.map((at) => projected(at, elevation)),
        'ghost',
      ),
    ),
  ].flatMap(asGhost)
}

/** Shorter than this a dimension has no direction to be drawn in, mm. Our judgement. */
const NO_LENGTH_MM = 2

const tapedPrimitives = (layout: Layout, taped: Taped, textHeightMm: number): readonly Primitive[] => {
  const { letter, from, to, way, at } = taped
  const text = `${letter}  ${lengthWithUnit(taped.valueMm, layout.units.length)}`
  const ends =
    way === 'level'
      ? { from: planePoint(from.uMm, at), to: planePoint(to.uMm, at) }
      : way === 'plumb'
        ? { from: planePoint(at, from.vMm), to: planePoint(at, to.vMm) }
        : { from, to }
  const lengthMm = Math.hypot(ends.to.uMm - ends.from.uMm, ends.to.vMm - ends.from.vMm)
  // Two people have one letter and stand at two places.
  const key = `tape/${letter}/${taped.to.uMm}`
  const isUpright = way === 'plumb'
  if (lengthMm < NO_LENGTH_MM) return [label(key, planePoint(ends.to.uMm, ends.to.vMm + textHeightMm), text)]
  return [
    line(`${key}/from`, [from, ends.from], 'dimension'),
    line(`${key}/to`, [to, ends.to], 'dimension'),
    {
      kind: 'dimension',
      key: `asked/${key}`,
      part: null,
      ...ends,
      offsetMm: 0,
      text: isUpright ? '' : text,
    },
    // Beside an upright line, so that nobody has to turn their head.
    ...(isUpright
      ? [
          label(
            `${key}/text`,
            planePoint(at + 0.5 * textHeightMm, (ends.from.vMm + ends.to.vMm) / 2),
            text,
            'left',
          ),
        ]
      : []),
  ]
}

/** Width over height, as what is drawn asks for between these: legible on an upright phone, never a strip. Our judgement. */
const LEAST_ASPECT = 3 / 2
const MOST_ASPECT = 9 / 4

/** Lines of text across a figure: at 320 px a line is then some 15 px high. Our judgement. */
const TEXTS_ACROSS = 20

/** No figure shows less than this, or its surroundings would not be recognised. Our judgement. */
const LEAST_WIDTH_MM = 500

const framed = (box: Box): Box => {
  const wide = 1.15 * (box.max.uMm - box.min.uMm)
  const high = 1.2 * (box.max.vMm - box.min.vMm)
  const aspect = Math.min(MOST_ASPECT, Math.max(LEAST_ASPECT, high === 0 ? MOST_ASPECT : wide / high))
  const widthMm = Math.max(LEAST_WIDTH_MM, wide, high * aspect)
  const middle = planePoint((box.min.uMm + box.max.uMm) / 2, (box.min.vMm + box.max.vMm) / 2)
  return boxAbout(middle, widthMm, widthMm / aspect)
}

const descriptionOf = ({ layout, caption, taped }: FigureParts): string =>
  [
    `${caption}.`,
    ...taped.map(
      ({ letter, valueMm, way }) =>
        `${letter}: ${lengthWithUnit(valueMm, layout.units.length)}, measured ${way}.`,
    ),
  ].join(' ')

/** A drawing about what is measured, at the scale that shows all of it. */
export const figureOf = (parts: FigureParts): QuestionFigure => {
  const { layout, taped, focus, inView = [] } = parts
  const drawn = (textHeightMm: number): readonly Primitive[] => [
    ...focus,
    ...taped.flatMap((each) => tapedPrimitives(layout, each, textHeightMm)),
  ]
  const core = [...drawn(0), line('in-view', inView, 'dimension')]
  const rough = framed(drawingBounds(core, 0))
  const textHeightMm = (rough.max.uMm - rough.min.uMm) / TEXTS_ACROSS
  const primitives = drawn(textHeightMm)
  return {
    caption: parts.caption,
    description: descriptionOf(parts),
    letters: [...new Set(taped.map(({ letter }) => letter))],
    primitives: [...(parts.scenery ?? sceneryOf(layout, parts.elevation)), ...primitives],
    bounds: framed(drawingBounds([...core, ...primitives], textHeightMm)),
    textHeightMm,
  }
}

/** The datum with its name. */
export const datumPrimitives = (): readonly Primitive[] => [point('datum', DATUM)]
