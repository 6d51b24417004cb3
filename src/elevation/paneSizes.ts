import type { PaneBounds, PaneSizes, SizePx } from './viewTransform'

export type ShownElevations = 'both' | 'side' | 'top'

/** Neither elevation is squeezed below this share of the height, however flat the car. Our judgement. */
const LEAST_SHARE = 0.36

/**
 * How the drawing's room is shared: the top elevation above the side elevation, as wide as the room, and as high as what each has
 * to show. Whole px, so that lines stay sharp.
 */
export const paneSizes = (room: SizePx, shown: ShownElevations, bounds: PaneBounds): PaneSizes => {
  if (shown !== 'both') return { [shown]: room }
  const topMm = Math.max(1, bounds.top.max.vMm - bounds.top.min.vMm)
  const sideMm = Math.max(1, bounds.side.max.vMm - bounds.side.min.vMm)
  const share = Math.min(1 - LEAST_SHARE, Math.max(LEAST_SHARE, topMm / (topMm + sideMm)))
  const topPx = Math.round(room.heightPx * share)
  return {
    top: { widthPx: room.widthPx, heightPx: topPx },
    side: { widthPx: room.widthPx, heightPx: room.heightPx - topPx },
  }
}
