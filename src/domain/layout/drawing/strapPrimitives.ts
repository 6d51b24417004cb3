import { type Elevation, projected } from '../../geometry/plane'
import type { PointMm } from '../../geometry/point'
import { bandAbout, placedAdjusters } from './alongStrap'
import type { DrawnPlace } from './drawnPlace'
import type { Primitive } from './primitive'

/** Half the thickness that the body of an adjuster is drawn with seen from the side. A drawing convention of ours. */
const HALF_BODY_MM = 6

/** The bodies of the adjusters along their straps: edge on in side elevation, as wide as their webbing from above. */
const adjusterPrimitives = ({ place, shown }: DrawnPlace, elevation: Elevation): Primitive[] =>
  placedAdjusters(place.belt, shown.paths).flatMap(({ path, family, line }): Primitive[] => {
    const halfMm = elevation === 'side' ? HALF_BODY_MM : place.belt.webbingMm[family] / 2
    const points = bandAbout(line, halfMm, elevation)
    if (points === null) return []
    const key = `${place.id}/adjuster/${path.strap}`
    return [
      { kind: 'polyline', key, part: `${place.id}/${path.strap}`, points, closed: true, style: 'outline' },
    ]
  })

/** Where the two joined shoulder straps become one tail: at one place, so once for both. */
export const junctionOf = ({ shown }: DrawnPlace): PointMm | null =>
  shown.paths.flatMap(({ contacts }) => contacts).find(({ on }) => on === 'junction')?.point ?? null

const junctionPrimitives = (drawn: DrawnPlace, elevation: Elevation): Primitive[] => {
  const junction = junctionOf(drawn)
  if (junction === null) return []
  const at = projected(junction, elevation)
  return [
    { kind: 'mark', key: `${drawn.place.id}/junction`, part: null, at, mark: 'junction', verdict: 'none' },
  ]
}

/** The taut straps of the shown sitting with their arcs, their adjusters, the junction of joined ones, and the buckle. */
export const strapPrimitives = (drawn: DrawnPlace, elevation: Elevation): Primitive[] => {
  const { place, shown } = drawn
  const lines = shown.paths.map((path): Primitive => ({
    kind: 'polyline',
    key: `${place.id}/strap/${path.strap}`,
    part: `${place.id}/${path.strap}`,
    points: path.polyline.map((point) => projected(point, elevation)),
    closed: false,
    style: 'strap',
  }))
  const straps = [...lines, ...adjusterPrimitives(drawn, elevation), ...junctionPrimitives(drawn, elevation)]
  if (shown.buckle === null) return straps
  return [
    ...straps,
    {
      kind: 'mark',
      key: `${place.id}/buckle`,
      part: null,
      at: projected(shown.buckle, elevation),
      mark: 'buckle',
      verdict: 'none',
    },
  ]
}
