import { type MouseEvent, type ReactElement, useMemo } from 'react'
import { type Elevation, projected } from '../../domain/geometry/plane'
import type { PointMm } from '../../domain/geometry/point'
import type { Layout } from '../../domain/layout/document/layout'
import { elevationDrawing } from '../../domain/layout/drawing/elevationDrawing'
import { PLAIN_DRAWING } from '../../domain/layout/drawing/options'
import { layoutNumbers } from '../../domain/layout/evaluate/evaluateLayout'
import type { PlainPart } from '../../domain/layout/wording/plainNames'
import { FigureSvg } from '../figure/FigureSvg'

/** Lettering as a share of the longer side. Our judgement. */
const TEXT_SHARE = 0.03
/** A finger means a part within this distance, CSS px: half of a 44 px target. Source of the 44: WCAG 2.2, 2.5.5 (from memory). */
const REACH_PX = 22

/** A comment as it stands on the picture. */
export interface Pin {
  readonly partId: string
  /** Counted from 1, as in the list of what was said. */
  readonly number: number
}

const CAPTION: Readonly<Record<Elevation, string>> = {
  side: 'From the side, the front at the left',
  top: 'From above, the front at the left',
}

/** The parts that a tap may mean, the nearest first. */
const partsNear = (parts: readonly PlainPart[], distancePx: (point: PointMm) => number): readonly string[] =>
  parts
    .map(({ partId, point }) => ({ partId, px: distancePx(point) }))
    .filter(({ px }) => px <= REACH_PX)
    .sort((a, b) => a.px - b.px)
    .map(({ partId }) => partId)

/** Several parts may lie behind each other: tapping again goes on to the next. */
const nextOf = (near: readonly string[], chosen: string | null): string | null => {
  const at = chosen === null ? -1 : near.indexOf(chosen)
  return near[(at + 1) % near.length] ?? null
}

/** The car from one side, with a dot at every part that can be asked about. The list of parts beside it does the same by keyboard. */
export const CarPicture = (props: {
  readonly layout: Layout
  readonly elevation: Elevation
  readonly parts: readonly PlainPart[]
  readonly pins: readonly Pin[]
  readonly chosen: string | null
  readonly onChoose: (partId: string) => void
}): ReactElement => {
  const { layout, elevation, parts, pins, chosen, onChoose } = props
  const figure = useMemo(() => {
    const { bounds, primitives } = elevationDrawing(layout, layoutNumbers(layout), elevation, {
      ...PLAIN_DRAWING,
      labels: false,
      lengthUnit: layout.units.length,
    })
    const longer = Math.max(bounds.max.uMm - bounds.min.uMm, bounds.max.vMm - bounds.min.vMm)
    return { bounds, primitives, textHeightMm: TEXT_SHARE * longer }
  }, [layout, elevation])
  const { min, max } = figure.bounds
  const share = (point: PointMm): { readonly x: number; readonly y: number } => {
    const { uMm, vMm } = projected(point, elevation)
    return { x: (uMm - min.uMm) / (max.uMm - min.uMm), y: (max.vMm - vMm) / (max.vMm - min.vMm) }
  }
  const at = (point: PointMm) => ({ left: `${100 * share(point).x}%`, top: `${100 * share(point).y}%` })
  const onClick = (event: MouseEvent<HTMLDivElement>): void => {
    const box = event.currentTarget.getBoundingClientRect()
    const near = partsNear(parts, (point) => {
      const { x, y } = share(point)
      return Math.hypot(box.left + x * box.width - event.clientX, box.top + y * box.height - event.clientY)
    })
    const next = nextOf(near, chosen)
    if (next !== null) onChoose(next)
  }
  return (
    <figure className="car-figure">
      {/* Everything that a tap does here the list of parts beside it does by keyboard. */}
      <div className="car-picture" data-testid={`car-picture-${elevation}`} onClick={onClick}>
        <FigureSvg figure={figure} description={`The car as planned. ${CAPTION[elevation]}.`} />
        {parts.map(({ partId, point }) => (
          <span
            key={partId}
            aria-hidden="true"
            className={partId === chosen ? 'car-dot chosen' : 'car-dot'}
            style={at(point)}
          />
        ))}
        <Pins parts={parts} pins={pins} at={at} />
      </div>
      <figcaption>{CAPTION[elevation]}</figcaption>
    </figure>
  )
}

/** Comments at their parts; several at one part stand in one pin. */
const Pins = (props: {
  readonly parts: readonly PlainPart[]
  readonly pins: readonly Pin[]
  readonly at: (point: PointMm) => { readonly left: string; readonly top: string }
}): ReactElement => (
  <>
    {props.parts.map(({ partId, point }) => {
      const numbers = props.pins.filter((pin) => pin.partId === partId).map(({ number }) => number)
      return numbers.length === 0 ? null : (
        <span key={partId} aria-hidden="true" className="car-pin" style={props.at(point)}>
          {numbers.join(', ')}
        </span>
      )
    })}
  </>
)
