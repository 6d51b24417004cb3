import type { CircleMm } from '../geometry/circle'
import { projected } from '../geometry/plane'
import { nearestOnPolyline } from '../geometry/segment'
import type { Direction } from '../geometry/point'
import type { Tube } from '../geometry/tube'
import type { Anchor, Mount, WrapMount } from './anchor'
import type { StrapId } from './strap'

export const tubeAt = (tubes: readonly Tube[], tubeId: string): Tube | null =>
  tubes.find((tube) => tube.id === tubeId) ?? null

export const anchorOf = (anchors: readonly Anchor[], strap: StrapId): Anchor | null =>
  anchors.find((anchor) => anchor.strap === strap) ?? null

/**
 * What the strap's end lies on in the side plane: a tab's hole or an eye's centre (radius 0), or the outside of a wrapped tube about the
 * point of its centre line where the webbing lies. Null when the wrapped tube does not exist. The circle is exact for a bar
 * across the car; the webbing's own thickness is left out.
 */
export const mountCircle = (mount: Mount, tubes: readonly Tube[]): CircleMm | null => {
  const centre = projected(mount.point, 'side')
  if (mount.kind !== 'wrap') return { centre, radiusMm: 0 }
  const tube = tubeAt(tubes, mount.tubeId)
  return tube && { centre, radiusMm: tube.outsideDiameterMm / 2 }
}

/** Direction of the wrapped tube's centre line where the webbing lies, length 1. Null when there is no such tube. */
export const wrapAxis = (mount: WrapMount, tubes: readonly Tube[]): Direction | null => {
  const tube = tubeAt(tubes, mount.tubeId)
  return tube && nearestOnPolyline(tube.points, mount.point).axis
}
