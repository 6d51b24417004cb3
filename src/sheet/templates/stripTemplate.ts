import type { Layout } from '../../domain/layout/document/layout'
import { anchorName, tubeName } from '../../domain/layout/wording/names'
import { markText, towardText } from '../../domain/layout/wording/tabText'
import type { FlatPoint, FlatShape } from '../../domain/shop/flat/flatFigure'
import { HOOP_ROOM_MM, type StripFeature, type TubeStrip } from '../../domain/shop/tab/tubeStrip'
import type { Way } from '../../domain/shop/tab/way'
import { lengthWithUnit } from '../../domain/units/length'
import { bothUnits } from '../mount/table/anchorCells'
import { textWidthMm, wrappedLines } from '../page/textWidth'
import { clippedLine } from './clip'
import { placedWriting } from './placedWriting'
import { at, FIGURE_TEXT_MM, line, loop, type Template, writing } from './template'

/** A strip of one straight piece of a tube, to be wrapped round it with the print outside. */
export const stripTemplate = (strip: TubeStrip, id: string, layout: Layout): Template => {
  const { tube, start, lengthMm, circumferenceMm } = strip
  const unit = layout.units.length
  const name = tubeName(tube.id, layout)
  return {
    kind: 'strip',
    figure: {
      id,
      title: `Strip for ${name}: ${carried(strip)}`,
      shapes: [
        loop('CUT', [
          at(0, -circumferenceMm / 2),
          at(lengthMm, -circumferenceMm / 2),
          at(lengthMm, circumferenceMm / 2),
          at(0, circumferenceMm / 2),
        ]),
        ...clockLines(strip),
        ...onStrip(
          strip.features.flatMap((feature) => featureLines(feature, strip)),
          strip,
        ),
        ...placedWriting([
          ...strip.features.flatMap((feature) => featureNames(feature, strip, layout)),
          ...edgeNames(strip, layout),
          ...clockNames(strip),
        ]),
      ],
    },
    words: [
      `For Ø ${bothUnits(tube.outsideDiameterMm, unit)}: round it ${lengthWithUnit(circumferenceMm, 'mm')}, long ${bothUnits(lengthMm, unit)}. Left edge ${edgeText(start, strip.rightWay, layout)}.`,
      `Wrap it round with the print outside, the ${strip.zeroLine} line on the ${strip.zeroLine} of the tube, the half above that line toward ${towardText(strip.upWay)}, the right end toward ${towardText(strip.rightWay)}; the long edges meet opposite. If they overlap or gape, the tube or the print has another size.`,
    ],
  }
}

/** The item numbers that are on a strip: "1, 2". */
const carried = ({ features }: TubeStrip): string =>
  features.flatMap((feature) => (feature.kind === 'mark' ? [] : [feature.label])).join(', ')

const OPPOSITE: Readonly<Record<Way, Way>> = {
  rear: 'front',
  'rear right': 'front left',
  right: 'left',
  'front right': 'rear left',
  front: 'rear',
  'front left': 'rear right',
  left: 'right',
  'rear left': 'front right',
  up: 'down',
  down: 'up',
}

const besideText = (way: Way): string =>
  way === 'up' ? 'above' : way === 'down' ? 'below' : `to the ${way} of`

/** "25 mm to the right of the crossing with main hoop (centre line)" */
const edgeText = ({ mark, edgeMm }: TubeStrip['start'], rightWay: Way, layout: Layout): string => {
  const what = `${markText(mark, layout)}${mark.kind === 'crossing' ? ' (its centre line)' : ''}`
  if (edgeMm === 0) return `on ${what}`
  return `${bothUnits(edgeMm, layout.units.length)} ${besideText(rightWay)} ${what}`
}

/** The lines along the tube: zero line, quarters, and a scale of 15° at the left edge. */
const clockLines = ({ lengthMm, circumferenceMm }: TubeStrip): readonly FlatShape[] => {
  const ticks = Array.from({ length: 23 }, (_, index) => (index - 11) * 15)
  return [
    ...[0, 0.25, -0.25].map((share) =>
      line('MARK', [at(0, share * circumferenceMm), at(lengthMm, share * circumferenceMm)]),
    ),
    ...ticks.map((deg) => {
      const yMm = (deg / 360) * circumferenceMm
      return line('MARK', [at(0, yMm), at(deg % 45 === 0 ? 4 : 2, yMm)])
    }),
  ]
}

/** Each of these lines by name, at the right end or the first free place to the left of it. */
const clockNames = (strip: TubeStrip): readonly (readonly (readonly FlatShape[])[])[] => {
  const { lengthMm, circumferenceMm, zeroLine, upWay } = strip
  return (
    [
      [0, `${zeroLine} line`],
      [0.25, `90° ${upWay}`],
      [-0.25, `90° ${OPPOSITE[upWay]}`],
    ] as const
  ).map(([share, text]) =>
    stepsLeft(lengthMm).map((xMm) => [
      writing(at(xMm, share * circumferenceMm + 0.8), text, { align: 'right' }),
    ]),
  )
}

/** Places for a word, from the right end to the left. */
const stepsLeft = (lengthMm: number): readonly number[] =>
  Array.from({ length: Math.max(1, Math.floor((lengthMm - 14) / 4)) }, (_, index) => lengthMm - 4 - 4 * index)

/** What the left edge is held to, along it in the upper half or else the lower, and which way the right end points. */
const edgeNames = (strip: TubeStrip, layout: Layout): readonly (readonly (readonly FlatShape[])[])[] => {
  const { circumferenceMm, lengthMm, rightWay, start } = strip
  const text = `This edge ${edgeText(start, rightWay, layout)}`
  const lines = wrappedLines(text, circumferenceMm / 2 - 6, FIGURE_TEXT_MM, 'regular')
  const halfMm = circumferenceMm / 2
  return [
    [3, 3 - halfMm].map((fromMm) =>
      lines.map((each, index) => writing(at(4 + (index + 1) * LINE_MM, fromMm), each, { upward: true })),
    ),
    [
      [
        writing(at(lengthMm - 1.2, halfMm - 3), `toward ${towardText(rightWay)}`, {
          upward: true,
          align: 'right',
        }),
      ],
    ],
  ]
}

const LINE_MM = FIGURE_TEXT_MM * 1.2

const featureLines = (feature: StripFeature, strip: TubeStrip): readonly FlatShape[] => {
  const halfMm = strip.circumferenceMm / 2
  const round = (xMm: number): FlatShape => line('MARK', [at(xMm, -halfMm), at(xMm, halfMm)])
  const cross = (middle: FlatPoint, lengthMm: number): FlatShape =>
    line('MARK', [at(middle.xMm - lengthMm, middle.yMm), at(middle.xMm + lengthMm, middle.yMm)])
  switch (feature.kind) {
    case 'wrap':
      return [feature.centreMm, ...feature.edgesMm, ...(feature.hoopsMm ?? [])].map(round)
    case 'tab':
      return [...feature.lines.map((points) => line('MARK', points)), cross(feature.at, ACROSS_MM)]
    case 'point':
      return [
        cross(feature.at, 6),
        line('MARK', [at(feature.at.xMm, feature.at.yMm - 6), at(feature.at.xMm, feature.at.yMm + 6)]),
      ]
    case 'mark':
      return [round(feature.atMm)]
  }
}

/** Half of the line along the tube that marks the middle of a foot. */
const ACROSS_MM = 12

/** Lines of a figure held inside the strip. */
const onStrip = (shapes: readonly FlatShape[], strip: TubeStrip): readonly FlatShape[] => {
  const halfMm = strip.circumferenceMm / 2
  const window = { min: at(0, -halfMm), max: at(strip.lengthMm, halfMm) }
  return shapes.flatMap((shape) =>
    shape.kind === 'polyline'
      ? clippedLine(shape.points, window).map((points) => line(shape.layer, points))
      : [shape],
  )
}

const featureNames = (
  feature: StripFeature,
  { circumferenceMm, lengthMm }: TubeStrip,
  layout: Layout,
): readonly (readonly (readonly FlatShape[])[])[] => {
  const halfMm = circumferenceMm / 2
  /** Beside a line round the tube: to its left or its right, from the lower edge or the top line on. */
  const beside = (xMm: number, text: string): readonly (readonly FlatShape[])[] =>
    [3 - halfMm, 3].flatMap((fromMm) =>
      [xMm - 0.7, xMm + 2.6].map((atMm) => [writing(at(atMm, fromMm), text, { upward: true })]),
    )
  switch (feature.kind) {
    case 'wrap': {
      const { label, anchor, centreMm, edgesMm, hoopsMm } = feature
      const isUnder = anchor.mount.kind === 'wrap' && anchor.mount.over === 'under'
      const arrives = isUnder ? 'under the bottom' : 'over the top'
      return [
        beside(centreMm, `${label} ${anchorName(anchor)}: middle; strap comes ${arrives}`),
        ...(hoopsMm ?? []).map((xMm, side) =>
          beside(side === 0 ? xMm : xMm + 3.3, `guide hoop outside this line (${HOOP_ROOM_MM} mm free)`),
        ),
        ...edgesMm.map((xMm, side) => beside(side === 0 ? xMm + 3.3 : xMm, 'webbing edge')),
      ]
    }
    case 'tab': {
      const xs = [
        feature.at.xMm - ACROSS_MM,
        feature.at.xMm + ACROSS_MM,
        ...feature.lines.flat().map(({ xMm }) => xMm),
      ]
      const text = `${feature.label} ${anchorName(feature.anchor)}`
      return [
        names(text, [Math.min(...xs) - 1.5, Math.max(...xs) + 3.5], feature.at.yMm, { halfMm, lengthMm }),
      ]
    }
    case 'point': {
      const { label, anchor, at: middle } = feature
      const text = `${label} ${anchorName(anchor)}: ${feature.of === 'axis' ? 'middle' : 'below its hole'}`
      return [names(text, [middle.xMm - 7.5, middle.xMm + 9.5], middle.yMm, { halfMm, lengthMm })]
    }
    case 'mark':
      return [beside(feature.atMm, `${markText(feature.mark, layout)}: cut the strip clear of it`)]
  }
}

/** A name on either side of its thing, upward about its middle, moved so that it stays on the strip; elsewhere round the tube if need be. */
const names = (
  text: string,
  sidesMm: readonly number[],
  yMm: number,
  { halfMm, lengthMm }: { readonly halfMm: number; readonly lengthMm: number },
): readonly (readonly FlatShape[])[] => {
  const roomMm = Math.max(0, halfMm - 2 - textWidthMm(text, FIGURE_TEXT_MM, 'regular') / 2)
  const heights = [yMm, yMm + 20, yMm - 20, yMm + 40, yMm - 40].map((each) =>
    Math.min(roomMm, Math.max(-roomMm, each)),
  )
  const xs = sidesMm.map((xMm) => Math.min(lengthMm - 1, Math.max(FIGURE_TEXT_MM + 5, xMm)))
  return heights.flatMap((each) =>
    xs.map((xMm) => [writing(at(xMm, each), text, { upward: true, align: 'centre' })]),
  )
}
