import { PLAIN_DRAWING } from '../../../domain/layout/drawing/options'
import { type Elevation, projected } from '../../../domain/geometry/plane'
import type { PointMm } from '../../../domain/geometry/point'
import { nearestOnPolyline } from '../../../domain/geometry/segment'
import type { Layout } from '../../../domain/layout/document/layout'
import { elevationDrawing } from '../../../domain/layout/drawing/elevationDrawing'
import type { Drawing, Primitive } from '../../../domain/layout/drawing/primitive'
import { handleId } from '../../../domain/layout/edit/handles'
import type { CheckedEvaluation } from '../../../domain/layout/evaluate/evaluation'
import { lengthText } from '../../../domain/units/length'
import type { PlaceAnchors } from '../table/anchorTable'
import { BALLOON_BAND_MM, dimensionedItems } from './dimensionedView'
import { type FigureView, pagePoint } from './figureView'
import { itemBox, textItem, type Box, type PagePoint, type SheetItem } from '../../page/item'
import { ordinateBandMm, type Ordinate } from './ordinates'
import { FIGURE_TEXT_MM, primitiveItems, strapLines } from './primitiveItems'
import { type Extent, fittingScale } from './scale'

/** Both elevations on one x axis, the top one above the side one, at one preferred scale. */
export interface ElevationFigure {
  /** n of 1:n. */
  readonly scale: number
  readonly widthMm: number
  readonly heightMm: number
  readonly itemsAt: (corner: PagePoint) => readonly SheetItem[]
}

interface Drawings {
  readonly top: Drawing
  readonly side: Drawing
}

/** What has no balloon keeps its name on the drawing: the bars and tubes that anchors are on, and the hip point. */
const keptLabels = (layout: Layout): ReadonlySet<string> => {
  const carrying = new Set(layout.places.flatMap((place) => place.anchors.map(({ mount }) => mount.tubeId)))
  return new Set([
    ...layout.places.map((place) => handleId({ kind: 'hip', placeId: place.id })),
    ...layout.tubes
      .filter((tube) => tube.role === 'harness-bar' || carrying.has(tube.id))
      .map((tube) => handleId({ kind: 'tube-height', tubeId: tube.id })),
  ])
}

/** Room for the words above each elevation. */
const CAPTION_MM = 4.5

/** The depth of the strips that the running dimensions need: beside the elevations, and below each that has distances along the car. */
interface Bands {
  readonly leftMm: number
  readonly belowMm: number
}

const bandsFor = (layout: Layout, anchors: readonly PlaceAnchors[]): Bands => {
  const text = (lengthMm: number): string => lengthText(lengthMm, layout.units.length)
  const points = anchorPoints(anchors)
  return {
    leftMm: ordinateBandMm(['0', ...points.flatMap(({ yMm, zMm }) => [text(yMm), text(zMm)])]),
    belowMm: ordinateBandMm(['0', ...points.map(({ xMm }) => text(xMm))]),
  }
}

/** What the bands and captions take of the room, whatever the scale. */
const fixedExtent = ({ leftMm, belowMm }: Bands): Extent => ({
  widthMm: leftMm + 2 * BALLOON_BAND_MM,
  heightMm: 2 * CAPTION_MM + 4 * BALLOON_BAND_MM + belowMm,
})

/** A figure of the size asked for; the layout is drawn once for all sizes, and named only when it is put on a page. */
export type FigureMaker = (room: Extent) => ElevationFigure

/**
 * Gives the largest figure that fits into a room, with item balloons and distances from the datum; those along the car stand below the
 * side elevation, and below the top one too where the room is high enough.
 */
export const figureMaker = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  anchors: readonly PlaceAnchors[],
): FigureMaker => {
  const bare = drawingsAt(layout, evaluation, 1, 'bare')
  const span = spanX(bare)
  const bands = bandsFor(layout, anchors)
  const fixed = fixedExtent(bands)
  const real = {
    widthMm: span.toMm - span.fromMm,
    heightMm: drawnHeightMm(bare.top) + drawnHeightMm(bare.side),
  }
  return (room) => {
    const scale = fittingScale(real, {
      widthMm: room.widthMm - fixed.widthMm,
      heightMm: room.heightMm - fixed.heightMm,
    })
    const leastMm = real.heightMm / scale + fixed.heightMm
    const isTopDimensioned = leastMm + bands.belowMm <= room.heightMm
    return {
      scale,
      widthMm: real.widthMm / scale + fixed.widthMm,
      heightMm: leastMm + (isTopDimensioned ? bands.belowMm : 0),
      itemsAt: (corner) => {
        const named = drawingsAt(layout, evaluation, scale, 'labelled')
        const drawings = withLabelsOf(bare, named, keptLabels(layout))
        return figureItems({ layout, anchors, scale, bands, isTopDimensioned }, drawings, corner)
      },
    }
  }
}

interface Figure {
  readonly layout: Layout
  readonly anchors: readonly PlaceAnchors[]
  readonly scale: number
  readonly bands: Bands
  readonly isTopDimensioned: boolean
}

/** Without words the drawing and its extent are the same at every scale. */
const drawingsAt = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  scale: number,
  labels: 'labelled' | 'bare',
): Drawings => {
  const drawn = (elevation: Elevation): Drawing =>
    elevationDrawing(layout, evaluation, elevation, {
      ...PLAIN_DRAWING,
      lengthUnit: layout.units.length,
      labels: labels === 'labelled',
      textHeightMm: FIGURE_TEXT_MM * scale,
    })
  return { top: drawn('top'), side: drawn('side') }
}

/** The bare drawings and their extent, with the kept names of the labelled ones. */
const withLabelsOf = (bare: Drawings, named: Drawings, kept: ReadonlySet<string>): Drawings => {
  const labelled = (drawing: Drawing, from: Drawing): Drawing => ({
    ...drawing,
    primitives: [
      ...drawing.primitives,
      ...from.primitives.filter(({ kind, part }) => kind === 'label' && part !== null && kept.has(part)),
    ],
  })
  return { top: labelled(bare.top, named.top), side: labelled(bare.side, named.side) }
}

const spanX = ({ top, side }: Drawings): { readonly fromMm: number; readonly toMm: number } => ({
  fromMm: Math.min(top.bounds.min.uMm, side.bounds.min.uMm),
  toMm: Math.max(top.bounds.max.uMm, side.bounds.max.uMm),
})

const drawnHeightMm = ({ bounds }: Drawing): number => bounds.max.vMm - bounds.min.vMm

interface PlacedDrawing {
  readonly drawing: Drawing
  readonly view: FigureView
  /** Around what is drawn, balloon band included. */
  readonly box: Box
}

/** Where a drawing lies when its caption starts at `corner`. */
const placedDrawing = (
  drawing: Drawing,
  { scale, bands }: Figure,
  corner: PagePoint,
  span: ReturnType<typeof spanX>,
): PlacedDrawing => {
  const leftMm = corner.xMm + bands.leftMm
  const topMm = corner.yMm + CAPTION_MM
  const view: FigureView = {
    scale,
    datum: {
      xMm: leftMm + BALLOON_BAND_MM - span.fromMm / scale,
      yMm: topMm + BALLOON_BAND_MM + drawing.bounds.max.vMm / scale,
    },
  }
  const box = {
    leftMm,
    topMm,
    rightMm: leftMm + 2 * BALLOON_BAND_MM + (span.toMm - span.fromMm) / scale,
    bottomMm: topMm + 2 * BALLOON_BAND_MM + drawnHeightMm(drawing) / scale,
  }
  return { drawing, view, box }
}

const figureItems = (figure: Figure, drawings: Drawings, corner: PagePoint): readonly SheetItem[] => {
  const span = spanX(drawings)
  const top = placedDrawing(drawings.top, figure, corner, span)
  const topBandMm = figure.isTopDimensioned ? figure.bands.belowMm : 0
  const below = { xMm: corner.xMm, yMm: top.box.bottomMm + topBandMm }
  const side = placedDrawing(drawings.side, figure, below, span)
  const captionAt = (at: PagePoint, text: string): SheetItem =>
    textItem({ xMm: at.xMm + figure.bands.leftMm, yMm: at.yMm + 3.2 }, text, 2.5, { weight: 'bold' })
  return [
    captionAt(corner, "Top elevation, front at the left, occupant's right at the top"),
    captionAt(below, `Side elevation, front at the left · scale 1:${figure.scale}`),
    ...elevationItems(figure, top, 'top', figure.isTopDimensioned),
    ...elevationItems(figure, side, 'side', true),
  ]
}

const elevationItems = (
  { layout, anchors }: Figure,
  { drawing, view, box }: PlacedDrawing,
  elevation: Elevation,
  isDimensionedBelow: boolean,
): readonly SheetItem[] =>
  dimensionedItems({
    view,
    box,
    drawn: drawing.primitives
      .filter((primitive) => isBesideItsTube(primitive, layout, view, elevation))
      .flatMap((primitive) => primitiveItems(primitive, view)),
    targets: anchors.flatMap(({ rows }) =>
      rows.map(({ itemNumber, anchor }) => ({
        itemNumber,
        at: pagePoint(view, projected(anchor.mount.point, elevation)),
      })),
    ),
    straps: strapLines(drawing.primitives, view),
    across: ordinatesAcross(layout, anchors, view, elevation),
    along: isDimensionedBelow ? ordinatesAlong(layout, anchors, view, elevation) : null,
  })

/** A name farther than this from its tube is taken for the name of something else. Our judgement, mm of paper. */
const NAME_REACH_MM = 4

const isBesideItsTube = (
  primitive: Primitive,
  layout: Layout,
  view: FigureView,
  elevation: Elevation,
): boolean => {
  if (primitive.kind !== 'label') return true
  const tube = layout.tubes.find(({ id }) => handleId({ kind: 'tube-height', tubeId: id }) === primitive.part)
  if (tube === undefined) return true
  // On the page both are flat: the third coordinate is the same for all.
  const flat = ({ xMm, yMm }: PagePoint): PointMm => ({ xMm, yMm, zMm: 0 })
  const line = tube.points.map((point) => flat(pagePoint(view, projected(point, elevation))))
  return primitiveItems(primitive, view).every((item) => {
    const { leftMm, rightMm, topMm, bottomMm } = itemBox(item)
    return [leftMm, (leftMm + rightMm) / 2, rightMm].some(
      (xMm) =>
        nearestOnPolyline(line, flat({ xMm, yMm: (topMm + bottomMm) / 2 })).distanceMm <= NAME_REACH_MM,
    )
  })
}

/** Heights in the side elevation, lateral distances in the top one. */
const ordinatesAcross = (
  layout: Layout,
  anchors: readonly PlaceAnchors[],
  view: FigureView,
  elevation: Elevation,
): readonly Ordinate[] => {
  const unit = layout.units.length
  const values = anchorPoints(anchors).map((point): Ordinate => ({
    text: lengthText(elevation === 'side' ? point.zMm : point.yMm, unit),
    at: pagePoint(view, projected(point, elevation)),
    isDatum: false,
  }))
  return [datumOrdinate(view), ...values]
}

/** Distances along the car, in either elevation. */
const ordinatesAlong = (
  layout: Layout,
  anchors: readonly PlaceAnchors[],
  view: FigureView,
  elevation: Elevation,
): readonly Ordinate[] => [
  datumOrdinate(view),
  ...anchorPoints(anchors).map((point): Ordinate => ({
    text: lengthText(point.xMm, layout.units.length),
    at: pagePoint(view, projected(point, elevation)),
    isDatum: false,
  })),
]

const datumOrdinate = (view: FigureView): Ordinate => ({ text: '0', at: view.datum, isDatum: true })

const anchorPoints = (anchors: readonly PlaceAnchors[]) =>
  anchors.flatMap(({ rows }) => rows.map(({ anchor }) => anchor.mount.point))
