import { type KeyboardEvent, type MouseEvent, type PointerEvent, useEffect, useMemo, useRef } from 'react'
import { useAppStore } from '../../state/react'
import { Hold, type NudgeStep } from './hold'

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
