import './trace.css'
import { type ReactElement, type RefObject, useEffect, useId, useRef, useState } from 'react'
import { pageTracing, type Trace, tracedLine } from '../../state/trace/trace'
import { useAppStore, useKept } from '../../state/react'
import type { PaneProps } from '../ElevationPane'
import { coordinateText } from '../handles/liveText'
import { Magnifier, type MagnifierHandle } from '../magnifier/Magnifier'
import { useWheelZoom } from '../usePaneEvents'
import { paneTransform, type PointPx, toMm, toPx } from '../viewTransform'
import { TraceLines } from './TraceLines'
import { useTraceKeys } from './useTraceKeys'
import { useTracePointers } from './useTracePointers'

const INSTRUCTIONS =
  'Arrow keys move the cross-hair by one step, with Shift by a larger one. Enter sets a point there, Backspace takes the last one back, F finishes the tube, Escape calls it off. Plus and minus zoom.'

/** Whether the next tap on this elevation places something. */
const isTracedOn = (trace: Trace, elevation: PaneProps['elevation']): boolean =>
  trace.kind === 'point' || (trace.kind === 'tube' && trace.elevation === elevation)

/** Where something is aimed at: by a finger that is down, by a mouse that hovers, by the keys. */
export interface Aim {
  readonly at: PointPx
  readonly by: 'finger' | 'mouse' | 'keys'
}

/** The page's focus goes where it was when nothing is traced any more. */
const useOwnFocus = (overlay: RefObject<HTMLDivElement | null>, shouldTake: boolean): void => {
  useEffect(() => {
    const element = overlay.current
    const pane = element?.parentElement?.querySelector<HTMLElement>('.elevation-pane')
    if (shouldTake) element?.focus({ preventScroll: true })
    return () => {
      if (document.activeElement === document.body || document.activeElement === element)
        pane?.focus({ preventScroll: true })
    }
  }, [overlay, shouldTake])
}

/** The enlarged drawing beside the finger that aims, copied from what lies below. */
const AimMagnifier = (props: {
  readonly pane: PaneProps
  readonly at: PointPx
  readonly lines: readonly string[]
}) => {
  const { pane, at, lines } = props
  const handle = useRef<MagnifierHandle>(null)
  const place = useRef<HTMLSpanElement>(null)
  useEffect(() => {
    const frame = place.current?.closest('.elevation-frame')
    const canvases = [...(frame?.querySelectorAll<HTMLCanvasElement>('.elevation-pane canvas') ?? [])]
    handle.current?.repaint(
      canvases.map((canvas) => ({ canvas, ratio: canvas.width / Math.max(1, canvas.clientWidth) })),
    )
  }, [at])
  return (
    <>
      <span ref={place} hidden />
      <Magnifier at={at} lines={lines} pane={pane.size} palette={pane.palette} handle={handle} />
    </>
  )
}

const Overlay = (props: PaneProps & { readonly trace: Trace }): ReactElement => {
  const { elevation, size, control, unit, trace } = props
  const store = useAppStore()
  const helpId = useId()
  const [aim, setAim] = useState<Aim | null>(null)
  const overlay = useWheelZoom(props)
  // Of two that may be tapped the side elevation hears the keys first.
  useOwnFocus(overlay, trace.kind === 'tube' || elevation === 'side' || props.sizes.side === undefined)
  const view = paneTransform(control.view, elevation)
  const place = (at: PointPx): void => {
    pageTracing.tap(store, elevation, toMm(paneTransform(control.latest(), elevation), at))
  }
  const pointers = useTracePointers(props, { setAim, place })
  const keys = useTraceKeys(props, { aim, setAim, place })
  const line = tracedLine(trace, elevation).map((point) => toPx(view, point))
  const words = aim === null ? '' : coordinateText(elevation, toMm(view, aim.at), unit)
  return (
    <div
      ref={overlay}
      className="trace-overlay"
      role="application"
      aria-label={`Tracing on the ${elevation} elevation`}
      aria-describedby={helpId}
      tabIndex={0}
      data-testid={`trace-${elevation}`}
      style={{ width: size.widthPx, height: size.heightPx }}
      {...pointers}
      onKeyDown={keys}
    >
      <p id={helpId} className="elevation-help">
        {INSTRUCTIONS}
      </p>
      <TraceLines size={size} line={line} aim={aim?.at ?? null} />
      {aim?.by === 'finger' ? <AimMagnifier pane={props} at={aim.at} lines={[words]} /> : null}
      <output className="elevation-help" aria-live={aim?.by === 'keys' ? 'polite' : 'off'}>
        {words}
      </output>
    </div>
  )
}

/** Lies over an elevation while something is traced on it, and takes its pointers and keys; otherwise it is not there. */
export const TraceOverlay = (props: PaneProps): ReactElement | null => {
  const trace = useKept(pageTracing.state)
  return isTracedOn(trace, props.elevation) ? <Overlay {...props} trace={trace} /> : null
}
