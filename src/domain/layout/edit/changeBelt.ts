import { pointBetween } from '../../geometry/point'
import type { Mount } from '../../straps/anchor'
import { anchorOf } from '../../straps/mount'
import {
  type Adjuster,
  areShoulderStrapsJoined,
  type Belt,
  type StrapFamily,
  strapFamily,
  strapsOf,
} from '../../straps/strap'
import type { Layout, Place } from '../document/layout'
import { LIMITS, limited } from '../document/limits'
import { withPlaceChanged } from './replace'
import { pointOnTube } from './tubeMove'

/*
 * Edits of a belt keep it in one piece: what only another arrangement has goes, and joined shoulder straps end on one anchor.
 */

export const withBelt = (layout: Layout, placeId: string, patch: Partial<Belt>): Layout =>
  withPlaceChanged(layout, placeId, (place) => ({ ...place, belt: fitting({ ...place.belt, ...patch }) }))

/** The belt without what its arrangement does not have. */
const fitting = (belt: Belt): Belt => {
  const { diagonal, thighStraps, shoulderTailMm, adjusters, ...plain } = belt
  const isPaired = belt.arrangement === 6 || belt.arrangement === 7
  return {
    ...plain,
    ...(diagonal === undefined || belt.arrangement !== 3 ? {} : { diagonal }),
    ...(thighStraps === undefined || !isPaired ? {} : { thighStraps }),
    ...(shoulderTailMm === undefined || belt.arrangement === 3 ? {} : { shoulderTailMm }),
    ...(adjusters === undefined ? {} : usedAdjusters(belt, adjusters)),
  }
}

/** Those adjusters whose straps the belt has; none at all rather than an empty group. */
const usedAdjusters = (belt: Belt, adjusters: NonNullable<Belt['adjusters']>): Pick<Belt, 'adjusters'> => {
  const families = strapsOf(belt).map(strapFamily)
  const used = (Object.entries(adjusters) as [StrapFamily, Adjuster][]).filter(([family]) =>
    families.includes(family),
  )
  return used.length === 0 ? {} : { adjusters: Object.fromEntries(used) }
}

/**
 * The place of a family's adjuster, or null to say nothing about it. A body that would reach beyond the anchor is moved along the
 * strap by as much.
 */
export const withAdjuster = (
  layout: Layout,
  placeId: string,
  family: StrapFamily,
  adjuster: Adjuster | null,
): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const { [family]: _old, ...others } = place.belt.adjusters ?? {}
    const seated = adjuster && {
      ...adjuster,
      fromAnchorMm: limited(Math.max(adjuster.fromAnchorMm, adjuster.lengthMm / 2), LIMITS.adjusterPlaceMm),
    }
    const adjusters = seated === null ? others : { ...others, [family]: seated }
    return { ...place, belt: fitting({ ...place.belt, adjusters }) }
  })

/**
 * The two shoulder straps joined behind the neck into a tail of this length, or two separate straps for null. Joining brings
 * their anchors to one point, the middle of the two (on a wrapped tube: the place on it nearest to that), on what the left
 * one is mounted on.
 */
export const withShoulderTail = (layout: Layout, placeId: string, tailMm: number | null): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const { shoulderTailMm: _old, ...plain } = place.belt
    if (tailMm === null) return { ...place, belt: plain }
    const belt = fitting({ ...plain, shoulderTailMm: tailMm })
    return areShoulderStrapsJoined(place.belt) || !areShoulderStrapsJoined(belt)
      ? { ...place, belt }
      : broughtTogether(layout, { ...place, belt })
  })

const broughtTogether = (layout: Layout, place: Place): Place => {
  const left = anchorOf(place.anchors, 'shoulder-left')
  const right = anchorOf(place.anchors, 'shoulder-right')
  if (left === null || right === null) return place
  const middle = pointBetween(left.mount.point, right.mount.point, 0.5)
  const { tubeId } = left.mount
  const tube = layout.tubes.find((candidate) => candidate.id === tubeId)
  const isWrap = left.mount.kind === 'wrap' && tube !== undefined
  const mount: Mount = { ...left.mount, point: isWrap ? pointOnTube(tube.points, middle) : middle }
  const anchors = place.anchors.map((anchor) =>
    anchor === left || anchor === right ? { ...anchor, mount } : anchor,
  )
  return { ...place, anchors }
}
