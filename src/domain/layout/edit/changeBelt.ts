import { pointBetween } from '../../geometry/point'
import type { Mount } from '../../straps/anchor'
import { anchorOf } from '../../straps/mount'
import {
  type Adjuster,
  areShoulderStrapsJoined,
  type Belt,
  type StrapBolt,
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
  const { diagonal, thighStraps, shoulderTailMm, adjusters, hardware, ...plain } = belt
  const isPaired = belt.arrangement === 6 || belt.arrangement === 7
  return {
    ...plain,
    ...(diagonal === undefined || belt.arrangement !== 3 ? {} : { diagonal }),
    ...(thighStraps === undefined || !isPaired ? {} : { thighStraps }),
    ...(shoulderTailMm === undefined || belt.arrangement === 3 ? {} : { shoulderTailMm }),
    ...grouped('adjusters', ofFamilies(belt, adjusters)),
    ...grouped('hardware', ofFamilies(belt, hardware)),
  }
}

type OfFamilies<Said> = { readonly [family in StrapFamily]?: Said }

/** What is said about kinds of straps, without the kinds that the belt does not have. */
const ofFamilies = <Said>(belt: Belt, said: OfFamilies<Said> | undefined): OfFamilies<Said> => {
  const families = strapsOf(belt).map(strapFamily)
  const used = (Object.entries(said ?? {}) as [StrapFamily, Said][]).filter(([family]) =>
    families.includes(family),
  )
  return Object.fromEntries(used) as OfFamilies<Said>
}

/** A group of a belt, left out rather than empty. */
const grouped = <Name extends 'adjusters' | 'hardware'>(
  name: Name,
  said: NonNullable<Belt[Name]>,
): Pick<Belt, Name> | Record<string, never> =>
  Object.keys(said).length === 0 ? {} : ({ [name]: said } as unknown as Pick<Belt, Name>)

/** What of a bolt is typed, with `undefined` for what is not any more. */
export type StrapBoltPatch = { readonly [Field in keyof StrapBolt]: StrapBolt[Field] | undefined }

/** Bolts of one kind of strap with some fields changed; a field that is emptied goes, and so does a bolt of which nothing is left. */
export const withStrapBolt = (
  layout: Layout,
  placeId: string,
  family: StrapFamily,
  patch: StrapBoltPatch,
): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const { [family]: old, ...others } = place.belt.hardware ?? {}
    const typed = Object.entries({ ...old, ...patch }).filter(
      ([, value]) => value !== undefined && value !== '',
    )
    const bolt: StrapBolt | null = typed.length === 0 ? null : Object.fromEntries(typed)
    const hardware = bolt === null ? others : { ...others, [family]: bolt }
    return { ...place, belt: fitting({ ...place.belt, hardware }) }
  })

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
