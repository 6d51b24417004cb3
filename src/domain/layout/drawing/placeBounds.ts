import { type Elevation, type PlanePointMm, planePoint, projected } from '../../geometry/plane'
import type { Tube } from '../../geometry/tube'
import type { Layout, Place } from '../document/layout'
import type { ShownEvaluation } from '../evaluate/evaluation'
import { drawingBounds } from './box'
import { elevationDrawing } from './elevationDrawing'
import { DEFAULT_TEXT_HEIGHT_MM, PLAIN_DRAWING } from './options'
import type { Drawing } from './primitive'

/** The bars that the place's shoulder belts hang on, or every harness bar while none is hung up. */
const barsOf = (layout: Layout, place: Place): readonly Tube[] => {
  const bars = layout.tubes.filter((tube) => tube.role === 'harness-bar')
  const own = bars.filter((bar) => place.anchors.some((anchor) => anchor.mount.tubeId === bar.id))
  return own.length > 0 ? own : bars
}

const between = (value: number, min: number, max: number): number => Math.min(max, Math.max(min, value))

/**
 * Corners of what one place is about in an elevation: its seat, person, straps and anchors, and its harness bar as far across the
 * car as the rest goes. Other tubes, other places and the datum are left out. The whole drawing's corners for an unknown place.
 */
export const placeBounds = (
  layout: Layout,
  evaluation: ShownEvaluation,
  placeId: string,
  elevation: Elevation,
): Drawing['bounds'] => {
  const place = layout.places.find((candidate) => candidate.id === placeId)
  const options = {
    ...PLAIN_DRAWING,
    placeId: place === undefined ? null : placeId,
    lengthUnit: layout.units.length,
    labels: false,
  } as const
  if (place === undefined) return elevationDrawing(layout, evaluation, elevation, options).bounds
  const alone: Layout = { ...layout, places: [place], tubes: [] }
  const figures = elevationDrawing(alone, evaluation, elevation, options).primitives.filter(
    (primitive) => primitive.key !== 'datum',
  )
  const own = drawingBounds(figures, DEFAULT_TEXT_HEIGHT_MM)
  const anchors = place.anchors.map((anchor) => projected(anchor.mount.point, elevation))
  const bars = barsOf(layout, place).flatMap((bar) => bar.points.map((point) => projected(point, elevation)))
  const acrossBars =
    elevation === 'side'
      ? bars
      : bars.map((point) => planePoint(point.uMm, between(point.vMm, own.min.vMm, own.max.vMm)))
  return boundsWith(own, [...anchors, ...acrossBars])
}

const boundsWith = (bounds: Drawing['bounds'], points: readonly PlanePointMm[]): Drawing['bounds'] => ({
  min: planePoint(
    Math.min(bounds.min.uMm, ...points.map((point) => point.uMm)),
    Math.min(bounds.min.vMm, ...points.map((point) => point.vMm)),
  ),
  max: planePoint(
    Math.max(bounds.max.uMm, ...points.map((point) => point.uMm)),
    Math.max(bounds.max.vMm, ...points.map((point) => point.vMm)),
  ),
})
