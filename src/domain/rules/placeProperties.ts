import { pointDistanceMm, type PointMm } from '../geometry/point'
import { pointToSegmentMm } from '../geometry/segment'
import type { Tube } from '../geometry/tube'
import { anchorForm, type Mount } from '../straps/anchor'
import {
  areShoulderStrapsJoined,
  type Belt,
  type StrapFamily,
  type StrapId,
  strapFamily,
  strapsOf,
} from '../straps/strap'
import type { PropertyScene, PropertyValue } from './properties'

/** Nearer together than this two anchors are one. Our judgement: neither two M10 bolts nor two loops of webbing find room there. */
const SHARED_WITHIN_MM = 10

const pointOf = ({ anchors }: PropertyScene, strap: StrapId): Mount['point'] | null =>
  anchors.find((anchor) => anchor.strap === strap)?.mount.point ?? null

/** Whether the shoulder straps have an anchorage each: not when they are joined into one tail, nor when both anchors lie at one point. */
export const shoulderAnchorages = (scene: PropertyScene): readonly PropertyValue[] => {
  const { belt } = scene
  const left = pointOf(scene, 'shoulder-left')
  const right = pointOf(scene, 'shoulder-right')
  if (belt.arrangement === 3 || left === null || right === null) return []
  const isShared = belt.shoulderTailMm !== undefined || pointDistanceMm(left, right) < SHARED_WITHIN_MM
  return [{ subject: 'shoulder-pair', value: isShared ? 'shared' : 'separate' }]
}

/**
 * Whether the two straps of a pair cross: the left one is anchored to the right of the right one. Joined shoulder straps, which end on
 * one anchor, do not cross. Without a family every pair is asked.
 */
export const strapsCrossed = (scene: PropertyScene, family: StrapFamily | null): readonly PropertyValue[] => {
  const { belt } = scene
  return (['shoulder', 'lap', 'sub'] as const).flatMap((each) => {
    const pair = [`${each}-left`, `${each}-right`] as const
    const [left, right] = [pointOf(scene, pair[0]), pointOf(scene, pair[1])]
    const isAsked =
      (family === null || family === each) && pair.every((strap) => strapsOf(belt).includes(strap))
    if (!isAsked || left === null || right === null) return []
    const isJoined = each === 'shoulder' && areShoulderStrapsJoined(belt)
    return [{ subject: `${each}-pair` as const, value: !isJoined && left.yMm > right.yMm ? 'yes' : 'no' }]
  })
}

/** Distance of each thigh strap's anchor from the lap strap's on its side, mm. */
export const subToLap = (scene: PropertyScene): readonly PropertyValue[] =>
  (
    [
      ['sub-left', 'lap-left'],
      ['sub-right', 'lap-right'],
    ] as const
  ).flatMap(([sub, lap]) => {
    const subPoint = pointOf(scene, sub)
    const lapPoint = pointOf(scene, lap)
    if (!strapsOf(scene.belt).includes(sub) || subPoint === null || lapPoint === null) return []
    return [{ subject: sub, value: pointDistanceMm(subPoint, lapPoint) }]
  })

/** Distance of a point from the surface of a tube, mm; negative inside. Joints are taken as round. */
const fromTubeMm = ({ points, outsideDiameterMm }: Tube, point: PointMm): number =>
  Math.min(
    ...points
      .slice(1)
      .map((to, index) => pointToSegmentMm(point, points[index] ?? to, to) - outsideDiameterMm / 2),
  )

/**
 * How far the hole or eye of each tab, clevis, insert and eye bolt that is said to be on a tube lies from that tube's surface, mm;
 * negative inside the tube. An insert is welded into its tube: its hole in there is at no distance.
 */
export const tabToTube = (
  { belt, anchors, tubes }: PropertyScene,
  family: StrapFamily | null,
): readonly PropertyValue[] =>
  anchors.flatMap(({ strap, mount }) => {
    const tube = tubes.find(({ id }) => id === mount.tubeId)
    const isAsked = strapsOf(belt).includes(strap) && (family === null || strapFamily(strap) === family)
    if (!isAsked || mount.kind === 'wrap' || tube === undefined || tube.points.length < 2) return []
    const gapMm = fromTubeMm(tube, mount.point)
    return [{ subject: strap, value: anchorForm(mount) === 'insert' ? Math.max(0, gapMm) : gapMm }]
  })

const webbingOf = (belt: Belt, strap: StrapId): number => belt.webbingMm[strapFamily(strap)]

/** By how much each strap's slot is longer than its webbing is wide, mm; negative where the webbing does not go through flat. */
export const slotSpares = (
  { belt, seat }: PropertyScene,
  family: StrapFamily | null,
): readonly PropertyValue[] =>
  strapsOf(belt)
    .filter((strap) => family === null || strapFamily(strap) === family)
    .flatMap((strap) => {
      const slot = seat.slots.find(({ straps }) => straps.includes(strap))
      if (slot === undefined) return []
      return [{ subject: strap, value: Math.max(slot.lengthMm, slot.heightMm) - webbingOf(belt, strap) }]
    })
