import { type PlanePointMm, planePoint, projected } from '../../../geometry/plane'
import { STRAP_FAMILIES, type StrapFamily, strapFamily } from '../../../straps/strap'
import type { Layout } from '../../document/layout'
import type { Primitive } from '../../drawing/primitive'
import { solvedAsDrawn } from '../../edit/startingMount'
import { askedPlace } from '../askedPlace'
import { figureOf, label, line, point, type QuestionFigure } from './figure'

const STRAP_WORDS: Readonly<Record<StrapFamily, string>> = {
  shoulder: 'shoulder',
  lap: 'lap',
  sub: 'between the legs',
}

/** How far a name stands off the end of its strap, mm. Our judgement. */
const NAME_OFF_MM = 30

/** The strap's name beside its end; those between the legs end ahead of the lap straps and are named to the front. */
const named = (family: StrapFamily, { uMm, vMm }: PlanePointMm): Primitive =>
  family === 'sub'
    ? label(`name/${family}`, planePoint(uMm - NAME_OFF_MM, vMm), STRAP_WORDS[family], 'right')
    : label(`name/${family}`, planePoint(uMm + NAME_OFF_MM, vMm), STRAP_WORDS[family], 'left')

/** The straps of the belt as the drawing has them, from the side and from above. */
export const beltFigure = (layout: Layout): readonly QuestionFigure[] => {
  const place = askedPlace(layout)
  const { paths } = solvedAsDrawn(layout, place)
  return (['side', 'top'] as const).map((elevation) => {
    const straps = paths.map((path): Primitive =>
      line(
        `belt/${path.strap}`,
        path.polyline.map((at) => projected(at, elevation)),
        'strap',
      ),
    )
    const ends = place.anchors.map(({ id, mount }) => point(`end/${id}`, projected(mount.point, elevation)))
    const families = STRAP_FAMILIES.filter((family) =>
      place.anchors.some(({ strap }) => strapFamily(strap) === family),
    )
    const names =
      elevation === 'top'
        ? []
        : families.flatMap((family) => {
            const end = place.anchors.find(({ strap }) => strapFamily(strap) === family)
            return end === undefined ? [] : [named(family, projected(end.mount.point, elevation))]
          })
    const figure = figureOf({
      layout,
      elevation,
      caption: elevation === 'side' ? 'The belt from the side' : 'The belt from above',
      taped: [],
      focus: [...straps, ...ends, ...names],
    })
    const words = families.map((family) => STRAP_WORDS[family]).join(', ')
    return {
      ...figure,
      description: `${figure.caption}: ${place.belt.arrangement} straps to the buckle (${words}).`,
    }
  })
}
