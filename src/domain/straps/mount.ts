import type { CircleMm } from '../geometry/circle'
import { projected, type PlanePointMm } from '../geometry/plane'
import { nearestOnPolyline } from '../geometry/segment'
import { tangentPoint, type Side } from '../geometry/tangent'
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

/**
 * On which side of the strap, walked from the anchor to the body, the wrapped tube's centre lies. `over` means that the strap
 * touches the upper half: the centre is on the left while the strap runs forward (−u), on the right while it runs rearward.
 * A strap straight up counts as running forward. Meaningless and harmless for a tab or an eye.
 */
export const wrapSide = (mount: Mount, towards: PlanePointMm): Side => {
  const runsForward = towards.uMm <= mount.point.xMm
  const isOver = mount.kind !== 'wrap' || mount.over === 'over'
  return runsForward === isOver ? 'left' : 'right'
}

export const otherSide = (side: Side): Side => (side === 'left' ? 'right' : 'left')

/** Where a strap pulled straight toward `towards` first touches its mount. Null when that point is inside the wrapped tube. */
export const mountContact = (mount: Mount, circle: CircleMm, towards: PlanePointMm): PlanePointMm | null =>
  tangentPoint(circle, towards, otherSide(wrapSide(mount, towards)))

/** Direction of the wrapped tube's centre line where the webbing lies, length 1. Null when there is no such tube. */
export const wrapAxis = (mount: WrapMount, tubes: readonly Tube[]): Direction | null => {
  const tube = tubeAt(tubes, mount.tubeId)
  return tube && nearestOnPolyline(tube.points, mount.point).axis
}
