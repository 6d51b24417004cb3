import { projected } from '../../../geometry/plane'
import { STRAP_FAMILIES, type StrapFamily, strapFamily } from '../../../straps/strap'
import type { Layout } from '../../document/layout'
import type { Primitive } from '../../drawing/primitive'
import { solvedAsDrawn } from '../../edit/startingMount'
import { askedPlace } from '../askedPlace'
import { figureOf, line, point, type QuestionFigure } from './figure'

const STRAP_WORDS: Readonly<Record<StrapFamily, string>> = {
  shoulder: 'shoulder',
  lap: 'lap',
  sub: 'between the legs',
}

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
    const figure = figureOf({
      layout,
      elevation,
      caption: elevation === 'side' ? 'The belt from the side' : 'The belt from above',
      taped: [],
      focus: [...straps, ...ends],
    })
    const words = families.map((family) => STRAP_WORDS[family]).join(', ')
    return {
      ...figure,
      description: `${figure.caption}: ${place.belt.arrangement} straps to the buckle (${words}).`,
    }
  })
}
