import { useCallback, useEffect, useRef, useState } from 'react'
import { pageKeeping } from '../../state/keeping/pageKeeping'
import { useApp } from '../../state/react'
import { type Entry, entryOf } from './entries'

/** `missing`: the browser does not say what it keeps. */
type ShelfState = readonly Entry[] | 'loading' | 'missing'

/** What is kept on this device, read anew after every change, when another document is open and when somebody comes back to the page. */
export const useShelf = (): { readonly shelf: ShelfState; readonly reload: () => Promise<void> } => {
  const [shelf, setShelf] = useState<ShelfState>('loading')
  const present = useApp((state) => state.history.present)
  const documentId = useApp((state) => state.documentId)
  const asked = useRef(0)
  const reload = useCallback(async (): Promise<void> => {
    asked.current += 1
    const question = asked.current
    const kept = await pageKeeping.list()
    // Of two answers that overtake each other the newer question's counts.
    if (question === asked.current) setShelf(kept === null ? 'missing' : kept.map(entryOf))
  }, [])
  useEffect(() => {
    const onBack = (): void => {
      if (document.visibilityState === 'visible') void reload()
    }
    onBack()
    window.addEventListener('focus', onBack)
    document.addEventListener('visibilitychange', onBack)
    return () => {
      window.removeEventListener('focus', onBack)
      document.removeEventListener('visibilitychange', onBack)
    }
  }, [reload, present, documentId])
  return { shelf, reload }
}
