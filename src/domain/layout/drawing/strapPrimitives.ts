import { type Elevation, projected } from '../../geometry/plane'
import type { DrawnPlace } from './drawnPlace'
import type { Primitive } from './primitive'

/** The taut straps of the shown sitting with their arcs, and the buckle. */
export const strapPrimitives = (drawn: DrawnPlace, elevation: Elevation): Primitive[] => {
  const { place, shown } = drawn
  const straps = shown.paths.map((path): Primitive => ({
    kind: 'polyline',
    key: `${place.id}/strap/${path.strap}`,
    part: `${place.id}/${path.strap}`,
    points: path.polyline.map((point) => projected(point, elevation)),
    closed: false,
    style: 'strap',
  }))
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
