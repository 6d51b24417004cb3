import { type MouseEvent, type PointerEvent, useEffect, useRef } from 'react'
import type { PointerKind } from './handles/handleHit'
import type { PaneProps } from './ElevationPane'
import type { HandleDrag } from './useHandleDrag'
import { usePanePointer } from './usePanePointer'
import { type PointPx, zoomedAbout } from './viewTransform'
import { wheelFactor } from './wheelFactor'

const offsetIn = (element: Element, event: { clientX: number; clientY: number }): PointPx => {
  const box = element.getBoundingClientRect()
  return { xPx: event.clientX - box.left, yPx: event.clientY - box.top }
}

/** Whatever else may point is taken for a mouse. Source of the words: W3C Pointer Events, pointerType (from memory). */
const kindOf = ({ pointerType }: PointerEvent): PointerKind =>
  pointerType === 'touch' || pointerType === 'pen' ? pointerType : 'mouse'

/** The wheel zooms about the pointer. Registered by hand: React's wheel listeners are passive and could not stop the page. */
export const useWheelZoom = (props: PaneProps) => {
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

/** A turned device puts another part of the car under the finger: what was begun there is called off. */
const useCalledOffByTurning = (pointer: ReturnType<typeof usePanePointer>): void => {
  useEffect(() => {
    const onTurn = (): void => pointer().cancelAll()
    window.addEventListener('orientationchange', onTurn)
    screen.orientation?.addEventListener('change', onTurn)
    return () => {
      window.removeEventListener('orientationchange', onTurn)
      screen.orientation?.removeEventListener('change', onTurn)
    }
  }, [pointer])
}

/** The handlers that turn a React pointer event into px of the pane. */
export const usePointerEvents = (props: PaneProps, drag: HandleDrag) => {
  const pointer = usePanePointer(props, drag)
  useCalledOffByTurning(pointer)
  const { elevation, hands } = props
  const release = (): void => {
    if (pointer().isIdle) hands.free(elevation)
  }
  return {
    onPointerDown: (event: PointerEvent<HTMLDivElement>) => {
      // A pen's barrel button is 2 and its eraser 5, W3C Pointer Events (from memory): both do nothing here.
      if (event.button !== 0 || (event.pointerType === 'touch' && hands.areElsewhere(elevation))) return
      event.currentTarget.setPointerCapture(event.pointerId)
      event.currentTarget.focus({ preventScroll: true })
      const at = offsetIn(event.currentTarget, event)
      const kind = kindOf(event)
      props.onCrowd(null)
      pointer().down({ id: event.pointerId, kind, timeMs: event.timeStamp }, at)
      if (!pointer().isIdle) hands.take(elevation)
      // A finger never hovers: what it is put down on is named.
      props.onHover(props.elevation, at, kind)
    },
    onPointerMove: (event: PointerEvent<HTMLDivElement>) => {
      const at = offsetIn(event.currentTarget, event)
      if (event.pointerType === 'pen') pointer().penSeen(event.timeStamp)
      pointer().move(event.pointerId, at)
      props.onHover(props.elevation, at, kindOf(event))
    },
    onPointerUp: (event: PointerEvent<HTMLDivElement>) => {
      pointer().up(event.pointerId)
      release()
    },
    onPointerCancel: (event: PointerEvent<HTMLDivElement>) => pointer().cancel(event.pointerId),
    // Comes after every lift and cancel as well, when there is nothing left to call off.
    onLostPointerCapture: (event: PointerEvent<HTMLDivElement>) => {
      pointer().cancel(event.pointerId)
      release()
    },
    onPointerLeave: (event: PointerEvent<HTMLDivElement>) => {
      // A finger leaves whenever it is lifted; what it was put down on stays named until the next touch.
      if (event.pointerType !== 'touch') props.onHover(props.elevation, null, kindOf(event))
    },
    // A long press or a barrel button asks for the browser's menu, which would take the pointer away.
    onContextMenu: (event: MouseEvent) => event.preventDefault(),
  }
}
