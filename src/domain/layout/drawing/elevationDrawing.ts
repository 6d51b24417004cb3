import type { Elevation, PlanePointMm } from '../../geometry/plane'
import type { Tube } from '../../geometry/tube'
import { seatPose } from '../../straps/seatPose'
import type { Layout } from '../document/layout'
import { handleId, handlesOf } from '../edit/handles'
import type { ShownEvaluation } from '../evaluate/evaluation'
import { anchorPrimitives } from './anchorPrimitives'
import { anglePrimitives } from './anglePrimitives'
import { bodyPrimitives, ghostLabels, ghostPrimitives } from './bodyPrimitives'
import { boxAbout, drawingBounds, textBox } from './box'
import { datumDimensions } from './datumDimensions'
import { type DrawnPlace, drawnPlaces } from './drawnPlace'
import { type FocusDrawing, focusDrawing } from './focusPrimitives'
import { handleMarks } from './handleMarks'
import { placedLabels } from './labelPlacement'
import { measuredLabels, measuredPrimitives } from './measuredPrimitives'
import { DEFAULT_TEXT_HEIGHT_MM, type DrawingOptions } from './options'
import { partLabels } from './partLabels'
import type { Drawing, Primitive } from './primitive'
import { proposedPrimitives } from './proposedPrimitives'
import { seatPrimitives, seatShellPrimitives } from './seatPrimitives'
import { strapPrimitives } from './strapPrimitives'
import { tubePrimitives } from './tubePrimitives'
import { zonePrimitives } from './zonePrimitives'

const NO_FOCUS: FocusDrawing = { quantity: null, primitives: [], labels: [] }

const focusOf = (
  layout: Layout,
  places: readonly DrawnPlace[],
  elevation: Elevation,
  options: DrawingOptions,
  textHeightMm: number,
): FocusDrawing => {
  for (const drawn of places) {
    const finding = drawn.evaluation.findings.find((candidate) => candidate.id === options.focusedFindingId)
    if (finding === undefined) continue
    const sitting =
      drawn.evaluation.sittings.find((candidate) => candidate.sitting.id === finding.worstSitting) ??
      drawn.shown
    const { lengthUnit } = options
    return focusDrawing({
      finding,
      drawn,
      sitting,
      tubes: layout.tubes,
      elevation,
      lengthUnit,
      textHeightMm,
    })
  }
  return NO_FOCUS
}

/** The seats of the places that are not drawn in full, as a reminder that they are there. */
const otherSeats = (layout: Layout, places: readonly DrawnPlace[], elevation: Elevation): Primitive[] =>
  layout.places
    .filter((place) => places.every((drawn) => drawn.place !== place))
    .flatMap((place) =>
      seatShellPrimitives(place, seatPose(place.seat, 0, place.seat.reclineDeg), elevation, 'ghost'),
    )

/** Everything at its true size: zones at the bottom, then the chassis, the seats, the people, the straps and what they hang on. */
const scenePrimitives = (
  layout: Layout,
  places: readonly DrawnPlace[],
  elevation: Elevation,
  options: DrawingOptions,
): Primitive[] => [
  ...places.flatMap((drawn) => zonePrimitives(drawn, elevation, options.zones)),
  ...otherSeats(layout, places, elevation),
  ...tubePrimitives(layout.tubes, elevation),
  ...places.flatMap((drawn) => ghostPrimitives(drawn, elevation, options.pointedSittingId ?? null)),
  ...places.flatMap((drawn) => seatPrimitives(drawn.place, drawn.shown.pose, elevation)),
  ...places.flatMap((drawn) => bodyPrimitives(drawn, elevation)),
  ...places.flatMap((drawn) => strapPrimitives(drawn, elevation)),
  ...places.flatMap((drawn) => anchorPrimitives(drawn, layout.tubes, elevation)),
  ...(options.handles ? handleMarks(handlesOf(layout), elevation) : []),
  { kind: 'mark', key: 'datum', part: null, at: { uMm: 0, vMm: 0 }, mark: 'datum', verdict: 'none' },
]

/** Whether a tube has a line of its own, and is not hidden behind one that lies exactly on it. */
const isDrawn = (tube: Tube, primitives: readonly Primitive[]): boolean => {
  const part = handleId({ kind: 'tube-height', tubeId: tube.id })
  return primitives.some(
    (primitive) => primitive.part === part && (primitive.kind === 'polyline' || primitive.kind === 'circle'),
  )
}

/** Lines that a label had better not cross: what the drawing is about, not the scenery behind it. */
const importantLines = (primitives: readonly Primitive[]): (readonly PlanePointMm[])[] =>
  primitives.flatMap((primitive) =>
    primitive.kind === 'polyline' && ['strap', 'broken', 'focus', 'tube', 'limit'].includes(primitive.style)
      ? [primitive.points]
      : [],
  )

/** A mark is about one line of text wide. */
const blockedBoxes = (primitives: readonly Primitive[], textHeightMm: number) =>
  primitives.flatMap((primitive) => {
    if (primitive.kind === 'mark') return [boxAbout(primitive.at, 0.8 * textHeightMm, 0.8 * textHeightMm)]
    const box = textBox(primitive, textHeightMm)
    return box === null ? [] : [box]
  })

/**
 * One elevation as a list of drawing primitives in mm: the only source for the screen and the mount sheet, so that they cannot
 * disagree. Pure; draws what the evaluation holds and computes no number of its own but positions on the drawing.
 */
export const elevationDrawing = (
  layout: Layout,
  evaluation: ShownEvaluation,
  elevation: Elevation,
  options: DrawingOptions,
): Drawing => {
  const textHeightMm = options.textHeightMm ?? DEFAULT_TEXT_HEIGHT_MM
  const places = drawnPlaces(layout, evaluation, options)
  const scene = scenePrimitives(layout, places, elevation, options)
  const focus = focusOf(layout, places, elevation, options, textHeightMm)
  const angles = options.angles
    ? places.flatMap((drawn) => anglePrimitives(drawn, elevation, textHeightMm, focus.quantity))
    : []
  const figures = [...scene, ...angles, ...focus.primitives]
  const dimensions = datumDimensions(
    layout,
    places,
    elevation,
    { ...options, textHeightMm },
    drawingBounds(figures, textHeightMm),
  )
  const unlabelled = [...figures, ...dimensions]
  const tubes = layout.tubes.filter((tube) => isDrawn(tube, scene))
  const parts = options.labels === false ? [] : partLabels(places, tubes, elevation, options.zones)
  const pointed = places.flatMap((drawn) =>
    ghostLabels(drawn, layout, elevation, options.pointedSittingId ?? null),
  )
  const off = measuredLabels(options.measured ?? [], elevation)
  const labels = placedLabels([...focus.labels, ...off, ...pointed, ...parts], {
    blocked: blockedBoxes(unlabelled, textHeightMm),
    lines: importantLines(unlabelled),
    textHeightMm,
    within: options.within ?? null,
  })
  const proposed = proposedPrimitives(options.proposed ?? [], elevation, textHeightMm)
  const measured = measuredPrimitives(options.measured ?? [], elevation, textHeightMm)
  const primitives = [...unlabelled, ...labels, ...proposed, ...measured]
  return { elevation, bounds: drawingBounds(primitives, textHeightMm), primitives }
}
