import { planeDistanceMm, projected, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { err, ok, type Result } from '../result'
import type { SubEnd, SubReach } from './bodyEnd'
import type { PathProblem } from './path'
import { beyondMm, isWithinPortal, type Portal } from './portal'
import type { StrapId } from './strap'
import type { StraightRun, StrapRun } from './strapRun'

/** The front one of the two places where the groin arc passes an opening's plane, seen from the side; null where it does not. */
const frontMeeting = (portal: Portal, { groin }: SubEnd): PlanePointMm | null => {
  const { centre, radiusMm } = groin
  const { x, z } = portal.normal
  const sideShare = Math.hypot(x, z)
  if (sideShare < 1e-9) return null
  const offMm =
    ((portal.centre.xMm - centre.uMm) * x + (portal.centre.zMm - centre.vMm) * z) / (sideShare * sideShare)
  const halfSqMm2 = radiusMm * radiusMm - offMm * offMm * sideShare * sideShare
  if (halfSqMm2 < 0) return null
  const halfMm = Math.sqrt(halfSqMm2)
  const forward = z > 0 ? -1 : 1
  return {
    uMm: centre.uMm + offMm * x + (forward * halfMm * z) / sideShare,
    vMm: centre.vMm + offMm * z - (forward * halfMm * x) / sideShare,
  }
}

/** The place carried across the seat: y changes evenly along the unrolled strap from the low contact to the buckle. */
const carried = (end: SubEnd, reach: SubReach, at: PlanePointMm): PointMm => {
  const { centre, radiusMm } = end.groin
  const low = projected(reach.point, 'side')
  const chordMm = planeDistanceMm(low, at)
  const alongMm = 2 * radiusMm * Math.asin(Math.min(1, chordMm / (2 * radiusMm)))
  const allMm = reach.onGroin?.toBuckleMm ?? 1
  const yMm = reach.point.yMm + (alongMm / allMm) * (end.buckle.yMm - reach.point.yMm)
  return { xMm: centre.uMm + (at.uMm - centre.uMm), yMm, zMm: at.vMm }
}

/**
 * An anti-submarine strap that still lies on the groin where it passes its slot: clean when it passes within the opening, otherwise
 * the edge it would bear on is inside the body.
 */
export const arcPass = (
  strap: StrapId,
  end: SubEnd,
  portal: Portal,
  { contact, reach }: StraightRun,
): Result<StrapRun, PathProblem> => {
  const clean: StrapRun = { contact, edges: [], edgesOn: 'slot', reach, pass: null }
  const onGroin = reach as SubReach
  if (onGroin.onGroin === null || !(beyondMm(portal, end.buckle) < 0)) return ok(clean)
  const meeting = frontMeeting(portal, end)
  if (meeting === null) return ok(clean)
  const point = carried(end, onGroin, meeting)
  if (isWithinPortal(portal, point)) return ok({ ...clean, pass: { portal, point, touches: false } })
  const nearest = nearestWithin(portal, point)
  const insideMm = end.groin.radiusMm - planeDistanceMm(end.groin.centre, projected(nearest, 'side'))
  return err({ kind: 'slot-blocked', strap, by: 'body', insideMm: Math.max(0, insideMm) })
}

const nearestWithin = (portal: Portal, { xMm, yMm, zMm }: PointMm): PointMm => {
  const { centre, long, short } = portal
  const along = (axis: Portal['long']): number =>
    (xMm - centre.xMm) * axis.x + (yMm - centre.yMm) * axis.y + (zMm - centre.zMm) * axis.z
  const l = Math.min(portal.longMaxMm, Math.max(portal.longMinMm, along(long)))
  const s = Math.min(portal.shortMaxMm, Math.max(portal.shortMinMm, along(short)))
  return {
    xMm: centre.xMm + l * long.x + s * short.x,
    yMm: centre.yMm + l * long.y + s * short.y,
    zMm: centre.zMm + l * long.z + s * short.z,
  }
}
