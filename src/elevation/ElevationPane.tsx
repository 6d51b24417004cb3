import { type KeyboardEvent, type PointerEvent, type ReactElement, useEffect, useId, useRef } from 'react'
import type { Elevation } from '../domain/geometry/plane'
import type { LengthUnit } from '../domain/layout/document/layout'
import type { Drawing } from '../domain/layout/drawing/primitive'
import type { Handle } from '../domain/layout/edit/handle'
import type { PointPx, PaneSizes, SizePx } from './viewTransform'
import type { Palette } from './paint/palette'
import { StageView } from './StageView'
import { paneTransform, panned, zoomedAbout } from './viewTransform'
import { type HandleDrag, useHandleDrag } from './useHandleDrag'
import { useLivePaint } from './useLivePaint'
import { useNudgeKeys } from './useNudgeKeys'
import { usePanePointer } from './usePanePointer'
import type { ViewControl } from './useView'
import { wheelFactor } from './wheelFactor'

export interface PaneProps {
  readonly elevation: Elevation
  readonly size: SizePx
  readonly sizes: PaneSizes
  readonly drawing: Drawing
  readonly unit: LengthUnit
  readonly palette: Palette
  readonly control: ViewControl
  readonly handles: readonly Handle[]
  readonly onHover: (elevation: Elevation, at: PointPx | null) => void
  readonly onRefused: (text: string) => void
}

/** A key press zooms by a quarter and pans by this much. Our judgement. */
const KEY_ZOOM = 1.25
const KEY_PAN_PX = 48

const KEY_PANS: Readonly<Record<string, PointPx>> = {
  ArrowLeft: { xPx: KEY_PAN_PX, yPx: 0 },
  ArrowRight: { xPx: -KEY_PAN_PX, yPx: 0 },
  ArrowUp: { xPx: 0, yPx: KEY_PAN_PX },
  ArrowDown: { xPx: 0, yPx: -KEY_PAN_PX },
}

const offsetIn = (element: Element, event: { clientX: number; clientY: number }): PointPx => {
  const box = element.getBoundingClientRect()
  return { xPx: event.clientX - box.left, yPx: event.clientY - box.top }
}

/** The wheel zooms about the pointer. Registered by hand: React's wheel listeners are passive and could not stop the page. */
const useWheelZoom = (props: PaneProps) => {
  const frame = useRef<HTMLDivElement>(null)
  const { control, elevation, sizes } = props
  useEffect(() => {
    const element = frame.current
    if (element === null) return undefined
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault()
      const zoom = { elevation, at: offsetIn(element, event), factor: wheelFactor(event) }
      control.set(zoomedAbout(control.latest(), zoom, sizes))
    }
    element.addEventListener('wheel', onWheel, { passive: false })
    return () => element.removeEventListener('wheel', onWheel)
  }, [control, elevation, sizes])
  return frame
}

/** Keys for the view; true when the key was one of them. */
const onViewKey = (props: PaneProps, event: KeyboardEvent): boolean => {
  const { control, elevation, size, sizes } = props
  if (event.ctrlKey || event.metaKey || event.altKey) return false
  const pan = KEY_PANS[event.key]
  const at = { xPx: size.widthPx / 2, yPx: size.heightPx / 2 }
  const zoomBy = (factor: number): void =>
    control.set(zoomedAbout(control.latest(), { elevation, at, factor }, sizes))
  if (pan !== undefined) control.set(panned(control.latest(), elevation, pan))
  else if (event.key === '+' || event.key === '=') zoomBy(KEY_ZOOM)
  else if (event.key === '-') zoomBy(1 / KEY_ZOOM)
  else if (event.key === '0') control.fit('car')
  else if (event.key === '1') control.fit('place')
  else return false
  return true
}

/** The two handlers that turn a React pointer event into px of the pane. */
const usePointerEvents = (props: PaneProps, drag: HandleDrag) => {
  const pointer = usePanePointer(props, drag)
  return {
    onPointerDown: (event: PointerEvent<HTMLDivElement>) => {
      if (event.button !== 0) return
      event.currentTarget.setPointerCapture(event.pointerId)
      event.currentTarget.focus({ preventScroll: true })
      const at = offsetIn(event.currentTarget, event)
      pointer().down(event.pointerId, at)
      // A finger never hovers: what it is put down on is named.
      props.onHover(props.elevation, at)
    },
    onPointerMove: (event: PointerEvent<HTMLDivElement>) => {
      const at = offsetIn(event.currentTarget, event)
      pointer().move(event.pointerId, at)
      props.onHover(props.elevation, at)
    },
    onPointerUp: (event: PointerEvent<HTMLDivElement>) => pointer().up(event.pointerId),
    onPointerCancel: (event: PointerEvent<HTMLDivElement>) => pointer().cancel(event.pointerId),
    onPointerLeave: (event: PointerEvent<HTMLDivElement>) => {
      // A finger leaves whenever it is lifted; what it was put down on stays named until the next touch.
      if (event.pointerType !== 'touch') props.onHover(props.elevation, null)
    },
  }
}

const INSTRUCTIONS =
  'Drag a handle to move it. With a handle selected, arrow keys move it by one step, with Shift by a larger one; Escape calls it off. ' +
  'Without one, arrow keys move the view. Plus and minus zoom, 1 fits the current place, 0 the whole car. Every handle and its numbers are also in the parts list.'

/** One elevation with everything that a pointer or the keyboard can do on it. */
export const ElevationPane = (props: PaneProps): ReactElement => {
  const { elevation, size, drawing, unit, palette, control } = props
  const frame = useWheelZoom(props)
  const drag = useHandleDrag(elevation)
  const pointerEvents = usePointerEvents(props, drag)
  const nudge = useNudgeKeys(elevation, props.onRefused)
  const helpId = useId()
  const view = paneTransform(control.view, elevation)
  const paint = useLivePaint(props, drag.draggedId)
  return (
    <div
      ref={frame}
      className="elevation-pane"
      role="application"
      aria-label={elevation === 'side' ? 'Side elevation' : 'Top elevation'}
      aria-describedby={helpId}
      tabIndex={0}
      style={{ height: size.heightPx }}
      data-testid={`elevation-${elevation}`}
      data-scale={view.pxPerMm}
      data-origin-x={view.originXPx}
      data-origin-y={view.originYPx}
      data-dragging={drag.draggedId === null ? 'false' : 'true'}
      {...pointerEvents}
      onKeyDown={(event) => {
        if (nudge.onKeyDown(event) || onViewKey(props, event)) event.preventDefault()
      }}
      onKeyUp={nudge.onKeyUp}
      onBlur={nudge.onBlur}
    >
      <p id={helpId} className="elevation-help">
        {INSTRUCTIONS}
      </p>
      <StageView
        drawing={drawing}
        unit={unit}
        view={paint.view}
        size={size}
        palette={palette}
        handles={paint.handles}
        live={paint.live}
      />
    </div>
  )
}
