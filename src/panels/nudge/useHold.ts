import { type KeyboardEvent, type MouseEvent, type PointerEvent, useEffect, useMemo, useRef } from 'react'
import type { PointMm } from '../../domain/geometry/point'
import { handleById } from '../../domain/layout/edit/handles'
import { movedHandle } from '../../domain/layout/edit/move'
import { useAppStore } from '../../state/react'
import type { AppStore } from '../../state/store'
import { pauseAfterMs } from './holdRate'

/** One step: along which coordinate, and by how much, + toward the coordinate's own plus. */
export interface NudgeStep {
  readonly key: keyof PointMm
  readonly byMm: number
}

/** A button that is held: every step is counted from where the part was when it was pressed, so that nothing adds up on the way. */
class Hold {
  readonly #store: AppStore
  readonly #step: () => boolean
  #gesture: ReturnType<AppStore['state']['getState']>['gesture'] = null
  #steps = 0
  #timer: ReturnType<typeof setTimeout> | undefined

  constructor(store: AppStore, handleId: string, { key, byMm }: NudgeStep) {
    const { layout } = store.state.getState()
    const start = handleById(layout, handleId)
    this.#store = store
    this.#step = () => {
      // Escape, or whatever else begins or ends a gesture, has taken the part out of this hand.
      if (start === null || !this.#isMine()) return false
      this.#steps += 1
      const to = { [key]: start.point[key] + this.#steps * byMm }
      store.actions.dragTo((before) => movedHandle(before, start.ref, to))
      return true
    }
    if (start === null) return
    store.actions.beginGesture(`Nudge ${start.name}`)
    this.#gesture = store.state.getState().gesture
    this.#go()
  }

  #isMine(): boolean {
    return this.#gesture !== null && this.#store.state.getState().gesture === this.#gesture
  }

  #go(): void {
    if (this.#step()) this.#timer = setTimeout(() => this.#go(), pauseAfterMs(this.#steps))
  }

  end(): void {
    clearTimeout(this.#timer)
    if (this.#isMine()) this.#store.actions.endGesture()
  }
}

/**
 * Handlers of a button that moves a part: pressed, one step; held, ever faster ones, all of them one step to undo; let go anywhere,
 * or looked away from the page, it stops. Finger, mouse, Space and Enter alike; a reader's click is one step.
 */
export const useHold = (handleId: string, step: NudgeStep) => {
  const store = useAppStore()
  const hold = useRef<Hold | null>(null)
  const hands = useMemo(() => {
    const end = (): void => {
      hold.current?.end()
      hold.current = null
    }
    const begin = (by: NudgeStep): void => {
      end()
      hold.current = new Hold(store, handleId, by)
    }
    return { begin, end }
  }, [store, handleId])
  useEffect(() => {
    window.addEventListener('blur', hands.end)
    return () => {
      window.removeEventListener('blur', hands.end)
      hands.end()
    }
  }, [hands])
  return {
    onPointerDown: (event: PointerEvent<HTMLButtonElement>) => {
      if (event.button !== 0) return
      // The press is the button's until it is let go, wherever that is.
      event.currentTarget.setPointerCapture(event.pointerId)
      hands.begin(step)
    },
    onLostPointerCapture: hands.end,
    onPointerUp: hands.end,
    onPointerCancel: hands.end,
    onContextMenu: (event: MouseEvent) => event.preventDefault(),
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key !== 'Enter' && event.key !== ' ') return
      event.preventDefault()
      if (!event.repeat) hands.begin(step)
    },
    onKeyUp: (event: KeyboardEvent) => {
      if (event.key !== 'Enter' && event.key !== ' ') return
      event.preventDefault()
      hands.end()
    },
    onBlur: hands.end,
    onClick: (event: MouseEvent) => {
      // A click that no press came before: counted in `detail` are presses, W3C UI Events (from memory).
      if (event.detail !== 0) return
      hands.begin(step)
      hands.end()
    },
  }
}
