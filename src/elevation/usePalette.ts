import { useEffect, useState } from 'react'
import { useApp } from '../state/react'
import { type Palette, paletteOf } from './paint/palette'

/**
 * The page's colours for the canvas: read again when the theme changes, and once the drawing's lettering has arrived, so that
 * canvas text painted in a stand-in face is painted anew (a new object repaints everything).
 */
export const usePalette = (): Palette => {
  const theme = useApp((state) => state.view.theme)
  const [palette, setPalette] = useState(() => paletteOf(document.documentElement))
  useEffect(() => {
    const read = (): void => setPalette(paletteOf(document.documentElement))
    read()
    let isGone = false
    void document.fonts.ready.then(() => {
      if (!isGone) read()
    })
    return () => {
      isGone = true
    }
  }, [theme])
  return palette
}
