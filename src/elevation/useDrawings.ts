import { useMemo } from 'react'
import type { Elevation } from '../domain/geometry/plane'
import type { Layout } from '../domain/layout/document/layout'
import { elevationDrawing } from '../domain/layout/drawing/elevationDrawing'
import { placeBounds } from '../domain/layout/drawing/placeBounds'
import { type DrawingOptions, PLAIN_DRAWING } from '../domain/layout/drawing/options'
import type { Drawing } from '../domain/layout/drawing/primitive'
import type { AppState } from '../state/appState'
import { useApp } from '../state/react'
import { currentPlace, movingEvaluation, numbersOf, zonesShown } from '../state/selectors'
import type { FitBounds } from './heldView'
import { TEXT_LINE_PX } from './paint/brush'
import { useMeasured } from './useMeasured'
import { useProposed } from './useProposed'

const BARE_CAR = { ...PLAIN_DRAWING, labels: false } as const

/** The layout without what a gesture is just doing to it. */
const settledLayout = (state: AppState): Layout => state.gesture?.startedFrom ?? state.layout

/**
 * Corners of the bare car and of the current place in both elevations: what the view is fitted to, whatever is written around it.
 * Unchanged while something is dragged, or a fitted view would pull the drawing from under the finger.
 */
export const useFitBounds = (): FitBounds => {
  const layout = useApp(settledLayout)
  const placeId = useApp((state) => currentPlace(state)?.id ?? '')
  return useMemo(() => {
    const evaluation = numbersOf(layout)
    const options = { ...BARE_CAR, lengthUnit: layout.units.length }
    const boundsOf = (elevation: Elevation): Drawing['bounds'] =>
      elevationDrawing(layout, evaluation, elevation, options).bounds
    const placeBoundsOf = (elevation: Elevation): Drawing['bounds'] =>
      placeBounds(layout, evaluation, placeId, elevation)
    return {
      placeId,
      car: { side: boundsOf('side'), top: boundsOf('top') },
      place: { side: placeBoundsOf('side'), top: placeBoundsOf('top') },
    }
  }, [layout, placeId])
}

/** As text and back, so that the selector's result stays the same value as long as the same zones are shown. */
const zonesKey = (state: AppState): string => JSON.stringify(zonesShown(state))

const zonesOf = (key: string): DrawingOptions['zones'] => JSON.parse(key) as DrawingOptions['zones']

/** Both elevations as the screen shows them at a scale; an elevation that is not shown is not computed. */
export const useDrawing = (
  elevation: Elevation,
  pxPerMm: number,
  within: Drawing['bounds'] | null,
  ghosts: boolean,
): Drawing => {
  const layout = useApp((state) => state.layout)
  const evaluation = useApp(movingEvaluation)
  const placeId = useApp((state) => currentPlace(state)?.id ?? null)
  const sittingId = useApp((state) => state.currentSittingId)
  const pointedSittingId = useApp((state) => state.pointedSittingId)
  const focusedFindingId = useApp((state) => state.focusedFindingId)
  const selectedId = useApp((state) => state.selectedHandleId)
  const zones = useApp(zonesKey)
  const proposed = useProposed()
  const measured = useMeasured()
  return useMemo(
    () =>
      elevationDrawing(layout, evaluation, elevation, {
        placeId,
        sittingId,
        ghosts,
        pointedSittingId,
        zones: zonesOf(zones),
        focusedFindingId,
        proposed,
        measured,
        dimensions: selectedId === null ? 'none' : [selectedId],
        lengthUnit: layout.units.length,
        angles: true,
        handles: true,
        textHeightMm: TEXT_LINE_PX / pxPerMm,
        ...(within === null ? {} : { within }),
      }),
    [
      layout,
      evaluation,
      elevation,
      placeId,
      sittingId,
      pointedSittingId,
      focusedFindingId,
      proposed,
      measured,
      selectedId,
      zones,
      ghosts,
      pxPerMm,
      within,
    ],
  )
}
