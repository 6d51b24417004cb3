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

/** By how much nearer a minor handle must be to win against one that is not. Our judgement. */
export const MINOR_HANDICAP_PX = 8

/**
 * Half of the 44 px that a finger needs. Source: W3C WCAG 2.2, success criterion 2.5.5 Target Size (Enhanced), 44 by 44 CSS px
 * (from memory).
 */
export const HIT_RADIUS_PX = 22

/**
 * The handle under the pointer. Where several are in reach, the selected one wins (that is how a builder says which of two parts in
 * one spot is meant), then those that can move here, then the nearest, with a small handicap for scenery. Null when none is within reach; the edge still counts.
 */
export const handleAt = (
  spots: readonly HandleSpot[],
  pointer: PointPx,
  selectedId: string | null,
): HandleSpot | null => {
  const inReach = spots
    .map((spot) => ({
      spot,
      distancePx: Math.hypot(spot.at.xPx - pointer.xPx, spot.at.yPx - pointer.yPx),
      handicapPx: spot.isMinor ? MINOR_HANDICAP_PX : 0,
    }))
    .filter(({ distancePx }) => distancePx <= HIT_RADIUS_PX)
  const selected = inReach.find(({ spot }) => spot.id === selectedId)
  if (selected !== undefined) return selected.spot
  const best = inReach.toSorted(
    (a, b) =>
      Number(b.spot.isMovable) - Number(a.spot.isMovable) ||
      a.distancePx + a.handicapPx - (b.distancePx + b.handicapPx),
  )[0]
  return best?.spot ?? null
}
