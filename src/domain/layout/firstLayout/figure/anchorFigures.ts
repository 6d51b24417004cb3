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
    side: 'Side: rearward to the hole (A), up to the hole (B)',
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

const holes = (layout: Layout, straps: StrapGroup): readonly Taped[] => {
  const at = groupPoint(askedPlace(layout), straps)
  const hole = planePoint(at.xMm, at.zMm)
  return [
    { letter: 'A', valueMm: at.xMm, from: DATUM, to: hole, way: 'level', at: at.zMm },
    {
      letter: 'B',
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

/** The straps of the family that have sides; the one in the middle where there are none. */
const measured = (layout: Layout, family: StrapFamily): StrapGroup => {
  const place = askedPlace(layout)
  const sides = sideStraps(place, family)
  const straps =
    sides.length > 0 ? sides : strapsOf(place.belt).filter((strap) => strapSide(strap) === 'centre')
  return anchorsOf(place, straps).length === straps.length ? straps : []
}

/** Where the straps of a family end, from the side and, for a pair, from above. */
export const anchorFigure =
  (family: StrapFamily) =>
  (layout: Layout): readonly QuestionFigure[] => {
    const straps = measured(layout, family)
    const [first] = anchorsOf(askedPlace(layout), straps)
    if (first === undefined) return []
    const isWrap = first.mount.kind === 'wrap'
    const { hipPoint } = askedPlace(layout).seat
    const side = figureOf({
      layout,
      elevation: 'side',
      caption: isWrap ? WORDS[family].side : WORDS.lap.side,
      taped: isWrap ? [] : holes(layout, straps),
      focus: [
        ...strapsFrom(layout, family, 'side'),
        line('level', [DATUM, planePoint(groupPoint(askedPlace(layout), straps).xMm, 0)], 'hidden'),
        ...datumPrimitives(),
      ],
      inView: [projected(hipPoint, 'side')],
    })
    if (strapSide(first.strap) === 'centre') return [side]
    const top = figureOf({
      layout,
      elevation: 'top',
      caption: WORDS[family].top,
      taped: apart(layout, straps),
      focus: strapsFrom(layout, family, 'top'),
      inView: [projected(hipPoint, 'top')],
    })
    return isWrap ? [top] : [side, top]
  }
