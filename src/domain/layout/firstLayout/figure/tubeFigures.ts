import { planePoint } from '../../../geometry/plane'
import type { Tube } from '../../../geometry/tube'
import type { Layout } from '../../document/layout'
import type { Primitive } from '../../drawing/primitive'
import { tubePrimitives } from '../../drawing/tubePrimitives'
import { barOf, crossTubeOf, frontMm, halfMm, heldAt, middleMm, sideTubesOf, topMm } from '../tubeTape'
import { DATUM, datumPrimitives, figureOf, line, type QuestionFigure, type Taped } from './figure'

const pickedOut = (tubes: readonly Tube[], elevation: 'side' | 'top'): readonly Primitive[] =>
  tubePrimitives(tubes, elevation).flatMap((primitive) =>
    'style' in primitive
      ? [{ ...primitive, part: null, key: `asked/${primitive.key}`, style: 'focus' as const }]
      : [],
  )

/** How far beyond the tube the dimension lines stand. Our judgement. */
const BESIDE_MM = 120

/** Front edge and top of a tube seen end on. */
const edges = (
  layout: Layout,
  tube: Tube,
  isLettered: { readonly front: string | null; readonly top: string },
): readonly Taped[] => {
  const held = heldAt(layout, tube)
  const front = planePoint(frontMm(layout, tube), held.zMm)
  const top = planePoint(held.xMm, topMm(layout, tube))
  return [
    ...(isLettered.front === null
      ? []
      : [
          {
            letter: isLettered.front,
            valueMm: front.uMm,
            from: DATUM,
            to: front,
            way: 'level' as const,
            at: front.vMm,
          },
        ]),
    {
      letter: isLettered.top,
      valueMm: top.vMm,
      from: planePoint(top.uMm, 0),
      to: top,
      way: 'plumb',
      at: top.uMm + BESIDE_MM,
    },
  ]
}

const level = (layout: Layout, tube: Tube): Primitive =>
  line('level', [DATUM, planePoint(heldAt(layout, tube).xMm + BESIDE_MM, 0)], 'hidden')

const sectionOf = (layout: Layout, bar: Tube): Taped => {
  const { xMm: u, zMm: v } = heldAt(layout, bar)
  const halfOd = bar.outsideDiameterMm / 2
  return {
    letter: 'D',
    valueMm: bar.outsideDiameterMm,
    from: planePoint(u - halfOd, v),
    to: planePoint(u + halfOd, v),
    way: 'level',
    at: v + 2 * BESIDE_MM,
  }
}

export const barFigure = (layout: Layout): readonly QuestionFigure[] => {
  const bar = barOf(layout)
  if (bar === null) return []
  const middle = middleMm(bar, 'yMm')
  const x = heldAt(layout, bar).xMm
  return [
    figureOf({
      layout,
      elevation: 'side',
      caption: 'Side: rearward to the front edge (A), up to the top (B), across the tube (D)',
      taped: [...edges(layout, bar, { front: 'A', top: 'B' }), sectionOf(layout, bar)],
      focus: [...pickedOut([bar], 'side'), level(layout, bar), ...datumPrimitives()],
    }),
    figureOf({
      layout,
      elevation: 'top',
      caption: 'From above: from the middle to one end (C)',
      taped: [
        {
          letter: 'C',
          valueMm: halfMm(bar),
          from: planePoint(x, middle),
          to: planePoint(x, middle + halfMm(bar)),
          way: 'plumb',
          at: x + BESIDE_MM,
        },
      ],
      focus: pickedOut([bar], 'top'),
      inView: [planePoint(x - 500, middle)],
    }),
  ]
}

export const floorTubeFigure = (layout: Layout): readonly QuestionFigure[] => {
  const cross = crossTubeOf(layout)
  const sides = sideTubesOf(layout)
  if (cross !== null)
    return [
      figureOf({
        layout,
        elevation: 'side',
        caption: 'Side: rearward to the front edge (A), up to the top (B)',
        taped: edges(layout, cross, { front: 'A', top: 'B' }),
        focus: [...pickedOut([cross], 'side'), level(layout, cross), ...datumPrimitives()],
      }),
    ]
  if (sides === null) return []
  const { left, right } = sides
  const x = middleMm(left, 'xMm')
  return [
    figureOf({
      layout,
      elevation: 'top',
      caption: 'From above: between the middles of the two tubes (A)',
      taped: [
        {
          letter: 'A',
          valueMm: middleMm(right, 'yMm') - middleMm(left, 'yMm'),
          from: planePoint(x, middleMm(left, 'yMm')),
          to: planePoint(x, middleMm(right, 'yMm')),
          way: 'plumb',
          at: x - BESIDE_MM,
        },
      ],
      focus: pickedOut([left, right], 'top'),
    }),
    figureOf({
      layout,
      elevation: 'side',
      caption: 'Side: up to their top (B)',
      taped: edges(layout, left, { front: null, top: 'B' }),
      focus: [...pickedOut([left], 'side'), level(layout, left), ...datumPrimitives()],
    }),
  ]
}
