import { planePoint, projected } from '../../../geometry/plane'
import { type StrapFamily, strapFamily, strapSide } from '../../../straps/strap'
import type { Layout } from '../../document/layout'
import type { Primitive } from '../../drawing/primitive'
import { solvedAsDrawn } from '../../edit/startingMount'
import { anchorsOf, apartMm, groupPoint, sideStraps, type StrapGroup } from '../anchorTape'
import { askedPlace } from '../askedPlace'
import { strapsOf } from '../../../straps/strap'
import { DATUM, datumPrimitives, figureOf, line, point, type QuestionFigure, type Taped } from './figure'

const WORDS: Readonly<Record<StrapFamily, { readonly side: string; readonly top: string }>> = {
  lap: {
    side: 'Side: rearward to the hole (A), up to the hole (B)',
    top: 'From above: between the two holes (C)',
  },
  shoulder: {
    side: 'Side: where the shoulder straps end',
    top: 'From above: between the two straps (C)',
  },
  sub: {
    side: 'Side: rearward to the hole (A), up to the hole (B); of the middle strap (D, E)',
    top: 'From above: between the two holes (C)',
  },
}

const strapsFrom = (layout: Layout, family: StrapFamily, elevation: 'side' | 'top'): readonly Primitive[] => {
  const place = askedPlace(layout)
  return [
    ...solvedAsDrawn(layout, place)
      .paths.filter(({ strap }) => strapFamily(strap) === family)
      .map((path) =>
        line(
          `asked-strap/${path.strap}`,
          path.polyline.map((at) => projected(at, elevation)),
          'strap',
        ),
      ),
    ...place.anchors
      .filter(({ strap }) => strapFamily(strap) === family)
      .map(({ id, mount }) => point(`hole/${id}`, projected(mount.point, elevation))),
  ]
}

/** How far the dimension lines stand off what is measured. Our judgement. */
const BESIDE_MM = 110

const holes = (
  layout: Layout,
  straps: StrapGroup,
  [back, up]: readonly [string, string],
): readonly Taped[] => {
  const at = groupPoint(askedPlace(layout), straps)
  const hole = planePoint(at.xMm, at.zMm)
  return [
    { letter: back, valueMm: at.xMm, from: DATUM, to: hole, way: 'level', at: at.zMm },
    {
      letter: up,
      valueMm: at.zMm,
      from: planePoint(at.xMm, 0),
      to: hole,
      way: 'plumb',
      at: at.xMm + BESIDE_MM,
    },
  ]
}

const apart = (layout: Layout, straps: StrapGroup): readonly Taped[] => {
  const place = askedPlace(layout)
  const [first, second] = anchorsOf(place, straps)
  if (first === undefined) return []
  const from = projected(first.mount.point, 'top')
  const to =
    second === undefined
      ? planePoint(from.uMm, place.seat.hipPoint.yMm)
      : projected(second.mount.point, 'top')
  return [{ letter: 'C', valueMm: apartMm(place, straps), from, to, way: 'plumb', at: from.uMm + BESIDE_MM }]
}

const anchored = (layout: Layout, straps: StrapGroup): StrapGroup =>
  straps.length > 0 && anchorsOf(askedPlace(layout), straps).length === straps.length ? straps : []

const centreStraps = (layout: Layout, family: StrapFamily): StrapGroup =>
  strapsOf(askedPlace(layout).belt).filter(
    (strap) => strapFamily(strap) === family && strapSide(strap) === 'centre',
  )

const sideFigure = (
  layout: Layout,
  family: StrapFamily,
  groups: { readonly sides: StrapGroup; readonly centre: StrapGroup },
): QuestionFigure => {
  const { sides, centre } = groups
  const place = askedPlace(layout)
  const rearmostMm = Math.max(
    ...[sides, centre].flatMap((straps) => (straps.length === 0 ? [] : [groupPoint(place, straps).xMm])),
  )
  return figureOf({
    layout,
    elevation: 'side',
    caption: centre.length === 0 ? WORDS.lap.side : WORDS.sub.side,
    taped: [
      ...(sides.length === 0 ? [] : holes(layout, sides, ['A', 'B'])),
      ...(centre.length === 0 ? [] : holes(layout, centre, ['D', 'E'])),
    ],
    focus: [
      ...strapsFrom(layout, family, 'side'),
      line('level', [DATUM, planePoint(rearmostMm + BESIDE_MM, 0)], 'hidden'),
      ...datumPrimitives(),
    ],
    inView: [projected(place.seat.hipPoint, 'side')],
  })
}

/** Where the straps of a family end, from the side and, for a pair, from above. */
export const anchorFigure =
  (family: StrapFamily) =>
  (layout: Layout): readonly QuestionFigure[] => {
    const place = askedPlace(layout)
    const sides = anchored(layout, sideStraps(place, family))
    const centre = anchored(layout, centreStraps(layout, family))
    if (sides.length + centre.length === 0) return []
    const isWrap = anchorsOf(place, sides)[0]?.mount.kind === 'wrap'
    const side = isWrap ? [] : [sideFigure(layout, family, { sides, centre })]
    if (sides.length === 0) return side
    const top = figureOf({
      layout,
      elevation: 'top',
      caption: WORDS[family].top,
      taped: apart(layout, sides),
      focus: strapsFrom(layout, family, 'top'),
      inView: [projected(place.seat.hipPoint, 'top')],
    })
    return [...side, top]
  }
