import type { Elevation, PlanePointMm } from '../domain/geometry/plane'
import type { Drawing } from '../domain/layout/drawing/primitive'

/** The only file where mm meet px and the drawing's upward v meets the screen's downward y. */

export interface PointPx {
  readonly xPx: number
  readonly yPx: number
}

export interface SizePx {
  readonly widthPx: number
  readonly heightPx: number
}

/** Where the datum is in one elevation's stage, and how large the car is drawn. */
export interface ViewTransform {
  readonly pxPerMm: number
  readonly originXPx: number
  readonly originYPx: number
}

/** Both elevations on one x axis: the scale and the datum's x are common, each has its own height of the datum. */
export interface SharedView {
  readonly pxPerMm: number
  readonly originXPx: number
  readonly originYPx: Readonly<Record<Elevation, number>>
}

export type PaneSizes = Readonly<Partial<Record<Elevation, SizePx>>>
export type PaneBounds = Readonly<Record<Elevation, Drawing['bounds']>>

/** From a whole truck on a phone to a tab hole across the screen. Our judgement. */
export const MIN_PX_PER_MM = 0.02
export const MAX_PX_PER_MM = 8

/** Room left around a fitted drawing. Our judgement. */
const FIT_MARGIN_PX = 20

const ELEVATIONS: readonly Elevation[] = ['side', 'top']

export const paneTransform = (view: SharedView, elevation: Elevation): ViewTransform => ({
  pxPerMm: view.pxPerMm,
  originXPx: view.originXPx,
  originYPx: view.originYPx[elevation],
})

export const toPx = (view: ViewTransform, point: PlanePointMm): PointPx => ({
  xPx: view.originXPx + point.uMm * view.pxPerMm,
  yPx: view.originYPx - point.vMm * view.pxPerMm,
})

export const toMm = (view: ViewTransform, point: PointPx): PlanePointMm => ({
  uMm: (point.xPx - view.originXPx) / view.pxPerMm,
  vMm: (view.originYPx - point.yPx) / view.pxPerMm,
})

/** What a stage of the given size shows of the plane. */
export const visibleBox = (view: ViewTransform, size: SizePx): Drawing['bounds'] => ({
  min: toMm(view, { xPx: 0, yPx: size.heightPx }),
  max: toMm(view, { xPx: size.widthPx, yPx: 0 }),
})

const clampedScale = (pxPerMm: number): number => Math.min(MAX_PX_PER_MM, Math.max(MIN_PX_PER_MM, pxPerMm))

const scaledAbout = (fixedPx: number, originPx: number, factor: number): number =>
  fixedPx + (originPx - fixedPx) * factor

/**
 * Zoomed by `factor` so that what lies at `at` in `elevation` stays there. The other elevation follows in x and keeps the middle of
 * its height.
 */
export const zoomedAbout = (
  view: SharedView,
  zoom: { readonly elevation: Elevation; readonly at: PointPx; readonly factor: number },
  sizes: PaneSizes,
): SharedView => {
  const pxPerMm = clampedScale(view.pxPerMm * zoom.factor)
  const factor = pxPerMm / view.pxPerMm
  const originYPx = (elevation: Elevation): number => {
    const middlePx = (sizes[elevation]?.heightPx ?? 0) / 2
    const fixedPx = elevation === zoom.elevation ? zoom.at.yPx : middlePx
    return scaledAbout(fixedPx, view.originYPx[elevation], factor)
  }
  return {
    pxPerMm,
    originXPx: scaledAbout(zoom.at.xPx, view.originXPx, factor),
    originYPx: { side: originYPx('side'), top: originYPx('top') },
  }
}

/** Dragged along by the given px; x moves both elevations, y only the one under the pointer. */
export const panned = (view: SharedView, elevation: Elevation, byPx: PointPx): SharedView => ({
  ...view,
  originXPx: view.originXPx + byPx.xPx,
  originYPx: { ...view.originYPx, [elevation]: view.originYPx[elevation] + byPx.yPx },
})

/** The largest scale at which every shown elevation's bounds fit its stage, each centred, both on one x axis. */
export const fittedView = (bounds: PaneBounds, sizes: PaneSizes): SharedView => {
  const shown = ELEVATIONS.filter((elevation) => sizes[elevation] !== undefined)
  const minU = Math.min(...shown.map((elevation) => bounds[elevation].min.uMm))
  const maxU = Math.max(...shown.map((elevation) => bounds[elevation].max.uMm))
  const scales = shown.flatMap((elevation) => {
    const size = sizes[elevation] ?? { widthPx: 1, heightPx: 1 }
    const { min, max } = bounds[elevation]
    const widthPx = Math.max(1, size.widthPx - 2 * FIT_MARGIN_PX)
    const heightPx = Math.max(1, size.heightPx - 2 * FIT_MARGIN_PX)
    return [widthPx / Math.max(1, maxU - minU), heightPx / Math.max(1, max.vMm - min.vMm)]
  })
  const pxPerMm = clampedScale(Math.min(...scales, MAX_PX_PER_MM))
  const widthPx = Math.max(0, ...shown.map((elevation) => sizes[elevation]?.widthPx ?? 0))
  const originYPx = (elevation: Elevation): number => {
    const { min, max } = bounds[elevation]
    return (sizes[elevation]?.heightPx ?? 0) / 2 + ((min.vMm + max.vMm) / 2) * pxPerMm
  }
  const originXPx = shown.length === 0 ? 0 : widthPx / 2 - ((minU + maxU) / 2) * pxPerMm
  return { pxPerMm, originXPx, originYPx: { side: originYPx('side'), top: originYPx('top') } }
}

/** The same part of the car in the middle after the stages changed size. */
export const resizedView = (view: SharedView, before: PaneSizes, after: PaneSizes): SharedView => {
  const growth = (elevation: Elevation, side: keyof SizePx): number =>
    ((after[elevation]?.[side] ?? 0) - (before[elevation]?.[side] ?? after[elevation]?.[side] ?? 0)) / 2
  const wide = after.side === undefined ? 'top' : 'side'
  return {
    ...view,
    originXPx: view.originXPx + growth(wide, 'widthPx'),
    originYPx: {
      side: view.originYPx.side + growth('side', 'heightPx'),
      top: view.originYPx.top + growth('top', 'heightPx'),
    },
  }
}

const middleOf = (a: PointPx, b: PointPx): PointPx => ({
  xPx: (a.xPx + b.xPx) / 2,
  yPx: (a.yPx + b.yPx) / 2,
})

const apartPx = (a: PointPx, b: PointPx): number => Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx)

/**
 * Two fingers: what lay under them when the second one landed stays under them. Measured from that moment and not from the last
 * event, so that no rounding adds up and nothing is lost before the first move.
 */
export const pinched = (
  start: { readonly view: SharedView; readonly fingers: readonly [PointPx, PointPx] },
  fingers: readonly [PointPx, PointPx],
  elevation: Elevation,
  sizes: PaneSizes,
): SharedView => {
  const from = middleOf(...start.fingers)
  const to = middleOf(...fingers)
  const startApartPx = apartPx(...start.fingers)
  // Fingers on one spot have no spread to compare with: they only pan.
  const factor = startApartPx < 1 ? 1 : apartPx(...fingers) / startApartPx
  const zoomed = factor > 0 ? zoomedAbout(start.view, { elevation, at: from, factor }, sizes) : start.view
  return panned(zoomed, elevation, { xPx: to.xPx - from.xPx, yPx: to.yPx - from.yPx })
}

/**
 * Whether a drawing has become another one: an edge of what is drawn moved by more than a third of its extent at once. Then the
 * view is fitted again; an ordinary edit must not make the drawing jump. The share is our judgement.
 */
export const isAnotherDrawing = (before: Drawing['bounds'], after: Drawing['bounds']): boolean => {
  const limitU = Math.max(1, before.max.uMm - before.min.uMm) / 3
  const limitV = Math.max(1, before.max.vMm - before.min.vMm) / 3
  return (
    Math.abs(after.min.uMm - before.min.uMm) > limitU ||
    Math.abs(after.max.uMm - before.max.uMm) > limitU ||
    Math.abs(after.min.vMm - before.min.vMm) > limitV ||
    Math.abs(after.max.vMm - before.max.vMm) > limitV
  )
}
