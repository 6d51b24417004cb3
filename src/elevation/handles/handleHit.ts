import type { PointPx } from '../viewTransform'

/** A handle as the pointer meets it. */
export interface HandleSpot {
  readonly id: string
  readonly at: PointPx
  /** Whether the elevation lets it move at all. */
  readonly isMovable: boolean
  /** Scenery such as a tube's end: gives way to what is being mounted. */
  readonly isMinor: boolean
}

export type PointerKind = 'mouse' | 'touch' | 'pen'

/** By how much nearer a minor handle must be to win against one that is not. Our judgement. */
export const MINOR_HANDICAP_PX = 8

/**
 * How far from a handle it is still taken. A finger and the tip of a pen get half of 44 px. Source: W3C WCAG 2.2, success criterion
 * 2.5.5 Target Size (Enhanced), 44 by 44 CSS px (from memory). A mouse aims better and needs free paper to pan on: a little more
 * than the 24 px of criterion 2.5.8 (from memory).
 */
export const HIT_RADIUS_PX: Readonly<Record<PointerKind, number>> = { mouse: 14, touch: 22, pen: 22 }

/** A handle this much further from the finger than the nearest is as likely meant: a fingertip is no finer. Our judgement. */
export const CROWD_SLACK_PX = 12

interface Reached {
  readonly spot: HandleSpot
  readonly distancePx: number
}

/** What lies in reach of the pointer, nearest first. */
const inReach = (spots: readonly HandleSpot[], pointer: PointPx, kind: PointerKind): readonly Reached[] =>
  spots
    .map((spot) => ({ spot, distancePx: Math.hypot(spot.at.xPx - pointer.xPx, spot.at.yPx - pointer.yPx) }))
    .filter(({ distancePx }) => distancePx <= HIT_RADIUS_PX[kind])
    .toSorted((a, b) => a.distancePx - b.distancePx)

const withHandicap = ({ spot, distancePx }: Reached): number =>
  distancePx + (spot.isMinor ? MINOR_HANDICAP_PX : 0)

/**
 * The handle under the pointer. Where several are in reach, the selected one wins (that is how a builder says which of two parts in
 * one spot is meant), then those that can move here, then the nearest, with a small handicap for scenery. Null when none is within reach; the edge still counts.
 */
export const handleAt = (
  spots: readonly HandleSpot[],
  pointer: PointPx,
  selectedId: string | null,
  kind: PointerKind,
): HandleSpot | null => {
  const reached = inReach(spots, pointer, kind)
  const selected = reached.find(({ spot }) => spot.id === selectedId)
  if (selected !== undefined) return selected.spot
  const best = reached.toSorted(
    (a, b) => Number(b.spot.isMovable) - Number(a.spot.isMovable) || withHandicap(a) - withHandicap(b),
  )[0]
  return best?.spot ?? null
}

/**
 * The handles a finger may have meant, nearest first: all in reach that are hardly further away than the nearest. One or none: there
 * is nothing to ask.
 */
export const crowdAt = (
  spots: readonly HandleSpot[],
  pointer: PointPx,
  kind: PointerKind,
): readonly HandleSpot[] => {
  const reached = inReach(spots, pointer, kind)
  const nearestPx = reached[0]?.distancePx ?? 0
  return reached.filter(({ distancePx }) => distancePx - nearestPx <= CROWD_SLACK_PX).map(({ spot }) => spot)
}
