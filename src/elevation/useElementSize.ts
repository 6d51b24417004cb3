import { type RefObject, useLayoutEffect, useState } from 'react'
import type { SizePx } from './viewTransform'

/** The inner size of an element in whole px, followed as it changes; null before it is on the page or while it has no room. */
export const useElementSize = (element: RefObject<HTMLElement | null>): SizePx | null => {
  const [size, setSize] = useState<SizePx | null>(null)
  useLayoutEffect(() => {
    const target = element.current
    if (target === null) return undefined
    const measure = (): void => {
      const widthPx = Math.floor(target.clientWidth)
      const heightPx = Math.floor(target.clientHeight)
      setSize((before) => {
        if (widthPx < 1 || heightPx < 1) return before
        return before?.widthPx === widthPx && before.heightPx === heightPx ? before : { widthPx, heightPx }
      })
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(target)
    return () => observer.disconnect()
  }, [element])
  return size
}
