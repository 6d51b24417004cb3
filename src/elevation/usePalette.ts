import { useEffect, useState } from 'react'
import { useApp } from '../state/react'
import { type Palette, paletteOf } from './paint/palette'

/** What the device asks for; see colours.css. */
const ASKED = ['(prefers-contrast: more)', '(forced-colors: active)']

/**
 * The page's colours for the canvas: read again when the theme or what the device asks for changes, and once the drawing's lettering has arrived, so that
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
    const lists = ASKED.map((query) => window.matchMedia(query))
    for (const list of lists) list.addEventListener('change', read)
    return () => {
      isGone = true
      for (const list of lists) list.removeEventListener('change', read)
    }
  }, [theme])
  return palette
}
