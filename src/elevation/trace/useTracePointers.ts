import { type MouseEvent, type PointerEvent, useCallback, useLayoutEffect, useRef } from 'react'
import type { PaneProps } from '../ElevationPane'
import type { PointerKind } from '../handles/handleHit'
import { panned, pinched, type PointPx, type SharedView } from '../viewTransform'
import type { Aim } from './TraceOverlay'
import { TracePointer, type TracePort } from './tracePointer'

interface Doing {
  readonly setAim: (aim: Aim | null) => void
  readonly place: (at: PointPx) => void
}

const offsetIn = (event: PointerEvent<HTMLDivElement>): PointPx => {
  const box = event.currentTarget.getBoundingClientRect()
  return { xPx: event.clientX - box.left, yPx: event.clientY - box.top }
}

const kindOf = ({ pointerType }: PointerEvent): PointerKind =>
  pointerType === 'touch' || pointerType === 'pen' ? pointerType : 'mouse'

/** The real pane behind the pointer machine; everything is looked up when it is needed, so nothing goes stale. */
const portOf = (latest: () => { readonly props: PaneProps; readonly doing: Doing }): TracePort => {
  let start: { readonly view: SharedView; readonly fingers: readonly [PointPx, PointPx] } | null = null
  return {
    aim: (at) => latest().doing.setAim(at === null ? null : { at, by: 'finger' }),
    place: (at) => latest().doing.place(at),
    pan: (by) => {
      const { control, elevation } = latest().props
      control.set(panned(control.latest(), elevation, by))
    },
    beginPinch: (fingers) => {
      start = { view: latest().props.control.latest(), fingers }
    },
    pinch: (fingers) => {
      const { control, elevation, sizes } = latest().props
      if (start !== null) control.set(pinched(start, fingers, elevation, sizes))
    },
  }
}

/** Pointers of the page, in px of the pane, for the pointer machine that traces. */
export const useTracePointers = (props: PaneProps, doing: Doing) => {
  const latest = useRef({ props, doing })
  useLayoutEffect(() => {
    latest.current = { props, doing }
  })
  const machine = useRef<TracePointer>(null)
  const pointer = useCallback(() => {
    machine.current ??= new TracePointer(portOf(() => latest.current))
    return machine.current
  }, [])
  return {
    onPointerDown: (event: PointerEvent<HTMLDivElement>) => {
      if (event.button !== 0) return
      event.currentTarget.setPointerCapture(event.pointerId)
      event.currentTarget.focus({ preventScroll: true })
      pointer().down(event.pointerId, kindOf(event), offsetIn(event))
    },
    onPointerMove: (event: PointerEvent<HTMLDivElement>) => {
      const at = offsetIn(event)
      pointer().move(event.pointerId, at)
      props.onHover(props.elevation, at, kindOf(event))
      if (event.pointerType === 'mouse') doing.setAim({ at, by: 'mouse' })
    },
    onPointerUp: (event: PointerEvent<HTMLDivElement>) => pointer().up(event.pointerId),
    onPointerCancel: (event: PointerEvent<HTMLDivElement>) => pointer().cancel(event.pointerId),
    onPointerLeave: (event: PointerEvent<HTMLDivElement>) => {
      if (event.pointerType !== 'mouse') return
      doing.setAim(null)
      props.onHover(props.elevation, null, 'mouse')
    },
    onContextMenu: (event: MouseEvent) => event.preventDefault(),
  }
}
