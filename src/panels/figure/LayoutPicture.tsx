import { type ReactElement, useMemo } from 'react'
import type { Elevation } from '../../domain/geometry/plane'
import type { Layout } from '../../domain/layout/document/layout'
import { elevationDrawing } from '../../domain/layout/drawing/elevationDrawing'
import { type DrawingOptions, PLAIN_DRAWING } from '../../domain/layout/drawing/options'
import { layoutNumbers } from '../../domain/layout/evaluate/evaluateLayout'
import { FigureSvg } from './FigureSvg'

/** Lettering as a share of the longer side of a picture. Our judgement. */
const TEXT_SHARE = 0.03

/** Around it, so that marks and lines at its edge are whole. Our judgement. */
const RIM_SHARE = 0.015

/** A layout as a small still drawing, with nothing but the car, the people and their straps on it unless more is asked for. */
export const LayoutPicture = (props: {
  readonly layout: Layout
  readonly elevation: Elevation
  readonly description: string
  readonly options?: Partial<DrawingOptions>
}): ReactElement => {
  const { layout, elevation, options } = props
  const figure = useMemo(() => {
    const { bounds, primitives } = elevationDrawing(layout, layoutNumbers(layout), elevation, {
      ...PLAIN_DRAWING,
      labels: false,
      lengthUnit: layout.units.length,
      ...options,
    })
    const longer = Math.max(bounds.max.uMm - bounds.min.uMm, bounds.max.vMm - bounds.min.vMm)
    const rimMm = RIM_SHARE * longer
    const { min, max } = bounds
    return {
      bounds: {
        min: { uMm: min.uMm - rimMm, vMm: min.vMm - rimMm },
        max: { uMm: max.uMm + rimMm, vMm: max.vMm + rimMm },
      },
      primitives,
      textHeightMm: TEXT_SHARE * longer,
    }
  }, [layout, elevation, options])
  return <FigureSvg figure={figure} description={props.description} />
}
