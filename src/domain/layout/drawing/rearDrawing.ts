import { PLAIN_DRAWING } from './options'
import { planePoint, projected } from '../../geometry/plane'
import type { PointMm } from '../../geometry/point'
import type { Tube } from '../../geometry/tube'
import type { StrapPath } from '../../straps/path'
import { strapFamily } from '../../straps/strap'
import type { Layout } from '../document/layout'
import type { ShownEvaluation } from '../evaluate/evaluation'
import { anchorPrimitives } from './anchorPrimitives'
import { drawingBounds } from './box'
import { type DrawnPlace, drawnPlaces } from './drawnPlace'
import type { Drawing, Primitive } from './primitive'
import { slotPrimitives } from './seatPrimitives'
import { tubePrimitives } from './tubePrimitives'

/** The harness bars seen from behind: u to the occupant's right, v up, from the datum. */
export type RearDrawing = Omit<Drawing, 'elevation'>

/** The bars that shoulder straps may hang on. */
export const harnessBars = ({ tubes }: Pick<Layout, 'tubes'>): readonly Tube[] =>
  tubes.filter(({ role }) => role === 'harness-bar')

/**
 * The harness bars looked at forward from behind, with the anchors on them, the backrest slots of the shoulder straps, and the straps
 * between the two in the sitting as drawn. Null for a car without a harness bar. Pure.
 */
export const rearDrawing = (layout: Layout, evaluation: ShownEvaluation): RearDrawing | null => {
  const bars = harnessBars(layout)
  if (bars.length === 0) return null
  const onBar = new Set(bars.map(({ id }) => id))
  const places = drawnPlaces(layout, evaluation, { ...PLAIN_DRAWING, lengthUnit: layout.units.length })
  const primitives = [
    ...tubePrimitives(bars, 'rear'),
    ...places.flatMap(shoulderSlots),
    ...places.flatMap((drawn) => shoulderRuns(drawn, onBar)),
    ...places.flatMap((drawn) => anchorPrimitives(withAnchorsOn(drawn, onBar), layout.tubes, 'rear')),
  ]
  const { min, max } = drawingBounds(primitives, 0)
  // Everything is measured from the datum, so that it must be in sight to either side.
  return {
    bounds: {
      min: planePoint(Math.min(0, min.uMm), min.vMm),
      max: planePoint(Math.max(0, max.uMm), max.vMm),
    },
    primitives,
  }
}

const withAnchorsOn = (drawn: DrawnPlace, tubeIds: ReadonlySet<string>): DrawnPlace => ({
  ...drawn,
  place: {
    ...drawn.place,
    anchors: drawn.place.anchors.filter(({ mount }) => mount.tubeId !== null && tubeIds.has(mount.tubeId)),
  },
})

const shoulderSlots = ({ place, shown }: DrawnPlace): readonly Primitive[] =>
  place.seat.slots
    .filter(
      ({ face, straps }) => face === 'back' && straps.some((strap) => strapFamily(strap) === 'shoulder'),
    )
    .flatMap((slot) => slotPrimitives(place, slot, shown.pose, 'rear'))

/** The straps from the bar to the first thing they bear on: further on the body would hide them. */
const shoulderRuns = ({ place, shown }: DrawnPlace, tubeIds: ReadonlySet<string>): readonly Primitive[] =>
  shown.paths.flatMap((path): readonly Primitive[] => {
    const mount = place.anchors.find(({ strap }) => strap === path.strap)?.mount
    if (mount?.tubeId == null || !tubeIds.has(mount.tubeId)) return []
    return [
      {
        kind: 'polyline',
        key: `${place.id}/strap/${path.strap}`,
        part: `${place.id}/${path.strap}`,
        points: behindSeat(path).map((point) => projected(point, 'rear')),
        closed: false,
        style: 'strap',
      },
    ]
  })

const behindSeat = ({ contacts }: StrapPath): readonly PointMm[] => {
  const end = contacts.findIndex(({ on }) => on === 'slot' || on === 'rim' || on === 'body')
  return contacts.slice(0, end < 0 ? contacts.length : end + 1).map(({ point }) => point)
}
