import { projected } from '../../../geometry/plane'
import type { Layout } from '../../document/layout'
import { seatShellPrimitives, slotPrimitives } from '../../drawing/seatPrimitives'
import { drawnPose } from '../../edit/handles'
import { askedPlace } from '../askedPlace'
import { figureOf, type QuestionFigure } from './figure'

/** The shell with its slots, from the side and from above. */
export const slotFigure = (layout: Layout): readonly QuestionFigure[] => {
  const place = askedPlace(layout)
  const pose = drawnPose(place)
  return (['side', 'top'] as const).map((elevation) => {
    const slots = place.seat.slots.flatMap((slot) => slotPrimitives(place, slot, pose, elevation))
    return figureOf({
      layout,
      elevation,
      caption: `The shell and its ${place.seat.slots.length === 1 ? 'slot' : `${place.seat.slots.length} slots`} ${elevation === 'side' ? 'from the side' : 'from above'}`,
      taped: [],
      focus: [
        ...seatShellPrimitives(place, pose, elevation, 'outline'),
        ...slots.map((primitive) =>
          'style' in primitive
            ? { ...primitive, key: `asked/${primitive.key}`, style: 'focus' as const }
            : primitive,
        ),
      ],
      inView: [projected(place.seat.hipPoint, elevation)],
    })
  })
}
