import type { Layout } from '../../domain/layout/document/layout'
import { anchorName, tubeName } from '../../domain/layout/wording/names'
import { markText, towardText } from '../../domain/layout/wording/tabText'
import type { FlatShape } from '../../domain/shop/flat/flatFigure'
import { HOOP_ROOM_MM, type StripFeature, type TubeStrip } from '../../domain/shop/tab/tubeStrip'
import type { Way } from '../../domain/shop/tab/way'
import { lengthWithUnit } from '../../domain/units/length'
import { bothUnits } from '../mount/table/anchorCells'
import { wrappedLines } from '../page/textWidth'
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
        ...clockShapes(strip),
        ...edgeShapes(strip, layout),
        ...strip.features.flatMap((feature) => featureShapes(feature, strip, layout)),
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
  const way = edgeMm > 0 ? rightWay : OPPOSITE[rightWay]
  return `${bothUnits(Math.abs(edgeMm), layout.units.length)} ${besideText(way)} ${what}`
}

/** The lines along the tube: zero line, quarters, and a scale of degrees at the left edge. */
const clockShapes = ({ lengthMm, circumferenceMm, zeroLine, upWay }: TubeStrip): readonly FlatShape[] => {
  const quarterMm = circumferenceMm / 4
  const named = [
    [0, `${zeroLine} line`],
    [quarterMm, `90° ${upWay}`],
    [-quarterMm, `90° ${OPPOSITE[upWay]}`],
  ] as const
  const ticks = Array.from({ length: 23 }, (_, index) => (index - 11) * 15)
  return [
    line('MARK', [at(0, 0), at(lengthMm, 0)]),
    ...[1, -1].map((side) => line('MARK', [at(0, side * quarterMm), at(lengthMm, side * quarterMm)])),
    ...ticks.map((deg) => {
      const yMm = (deg / 360) * circumferenceMm
      return line('MARK', [at(0, yMm), at(deg % 45 === 0 ? 4 : 2, yMm)])
    }),
    ...named.map(([yMm, text]) => writing(at(lengthMm - 4, yMm + 0.8), text, { align: 'right' })),
  ]
}

/** What the left edge is held to, along it, and which way the right end points. */
const edgeShapes = (strip: TubeStrip, layout: Layout): readonly FlatShape[] => {
  const { circumferenceMm, lengthMm, rightWay, start } = strip
  const text = `This edge ${edgeText(start, rightWay, layout)}`
  const lines = wrappedLines(text, circumferenceMm / 2 - 6, FIGURE_TEXT_MM, 'regular')
  return [
    ...lines.map((each, index) => writing(at(4 + (index + 1) * LINE_MM, 3), each, { upward: true })),
    writing(at(lengthMm - 1.2, circumferenceMm / 2 - 3), `toward ${towardText(rightWay)}`, {
      upward: true,
      align: 'right',
    }),
  ]
}

const LINE_MM = FIGURE_TEXT_MM * 1.2

const featureShapes = (
  feature: StripFeature,
  { circumferenceMm }: TubeStrip,
  layout: Layout,
): readonly FlatShape[] => {
  const halfMm = circumferenceMm / 2
  const round = (xMm: number): FlatShape => line('MARK', [at(xMm, -halfMm), at(xMm, halfMm)])
  const upward = (xMm: number, text: string): FlatShape =>
    writing(at(xMm - 0.7, -halfMm + 3), text, { upward: true })
  switch (feature.kind) {
    case 'wrap': {
      const { label, anchor, centreMm, edgesMm, hoopsMm } = feature
      const arrives = anchor.mount.kind === 'wrap' && anchor.mount.over === 'under' ? 'bottom' : 'top'
      return [
        ...[centreMm, ...edgesMm, ...(hoopsMm ?? [])].map(round),
        upward(centreMm, `${label} ${anchorName(anchor)}: middle; strap comes over the ${arrives}`),
        ...edgesMm.map((xMm, side) => upward(side === 0 ? xMm + 3.6 : xMm, 'webbing edge')),
        ...(hoopsMm ?? []).map((xMm, side) =>
          upward(side === 0 ? xMm : xMm + 3.6, `guide hoop outside this line (${HOOP_ROOM_MM} mm free)`),
        ),
      ]
    }
    case 'tab': {
      const { label, anchor, at: middle, lines } = feature
      const leftMm = Math.min(middle.xMm, ...lines.flat().map(({ xMm }) => xMm))
      return [
        ...lines.map((points) => line('MARK', points)),
        line('MARK', [at(middle.xMm - 12, middle.yMm), at(middle.xMm + 12, middle.yMm)]),
        named(`${label} ${anchorName(anchor)}`, Math.min(leftMm - 3, middle.xMm - 13.5), middle.yMm, halfMm),
      ]
    }
    case 'point': {
      const { label, anchor, at: middle } = feature
      return [
        line('MARK', [at(middle.xMm - 6, middle.yMm), at(middle.xMm + 6, middle.yMm)]),
        line('MARK', [at(middle.xMm, middle.yMm - 6), at(middle.xMm, middle.yMm + 6)]),
        named(`${label} ${anchorName(anchor)}: middle`, middle.xMm - 8, middle.yMm, halfMm),
      ]
    }
    case 'mark':
      return [
        round(feature.atMm),
        upward(feature.atMm, `${markText(feature.mark, layout)}: cut the strip clear of it`),
      ]
  }
}

/** A name beside its thing, upward about its middle, moved so that it stays on the strip. */
const named = (text: string, xMm: number, yMm: number, halfMm: number): FlatShape => {
  const roomMm = Math.max(0, halfMm - 2 - (text.length * FIGURE_TEXT_MM * 0.45) / 2)
  return writing(at(xMm, Math.min(roomMm, Math.max(-roomMm, yMm))), text, {
    upward: true,
    align: 'centre',
  })
}
