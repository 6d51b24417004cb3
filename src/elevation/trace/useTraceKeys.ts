import type { KeyboardEvent } from 'react'
import { nudgeMm } from '../../state/nudge'
import { useAppStore } from '../../state/react'
import { pageTracing } from '../../state/trace/trace'
import type { PaneProps } from '../ElevationPane'
import { onViewKey } from '../paneKeys'
import { paneTransform, type PointPx, toMm, toPx } from '../viewTransform'
import type { Aim } from './TraceOverlay'

interface Doing {
  readonly aim: Aim | null
  readonly setAim: (aim: Aim | null) => void
  readonly place: (at: PointPx) => void
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

const VIEW_KEYS = ['+', '=', '-', '0', '1']

/** Where the cross-hair of the keys is, or first appears: in the middle of what is seen. */
const cursorOf = ({ size }: PaneProps, aim: Aim | null): PointPx =>
  aim?.at ?? { xPx: size.widthPx / 2, yPx: size.heightPx / 2 }

/** One step from whole step to whole step, so that keys reach every place that a tap can give. */
const stepped = (valueMm: number, by: number, stepMm: number): number =>
  (Math.round(valueMm / stepMm) + by) * stepMm

const moved = (
  props: PaneProps,
  aim: Aim | null,
  [du, dv]: readonly [number, number],
  large: boolean,
): PointPx => {
  const view = paneTransform(props.control.latest(), props.elevation)
  const stepMm = nudgeMm(props.unit, 'small')
  const steps = large ? Math.round(nudgeMm(props.unit, 'large') / stepMm) : 1
  const { uMm, vMm } = toMm(view, cursorOf(props, aim))
  return toPx(view, {
    uMm: stepped(uMm, du * steps, stepMm),
    vMm: stepped(vMm, dv * steps, stepMm),
  })
}

/** Keys while something is traced; the drawing below hears none of them. */
export const useTraceKeys = (props: PaneProps, doing: Doing) => {
  const store = useAppStore()
  return (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const arrow = ARROWS[event.key]
    if (arrow !== undefined) doing.setAim({ at: moved(props, doing.aim, arrow, event.shiftKey), by: 'keys' })
    else if (event.key === 'Enter' || event.key === ' ') {
      const at = cursorOf(props, doing.aim)
      doing.setAim({ at, by: 'keys' })
      doing.place(at)
    } else if (event.key === 'Backspace') pageTracing.removeLast()
    else if (event.key.toLowerCase() === 'f') pageTracing.finish(store)
    else if (event.key === 'Escape') pageTracing.callOff()
    else if (!VIEW_KEYS.includes(event.key) || !onViewKey(props, event)) return
    event.preventDefault()
    event.stopPropagation()
  }
}
