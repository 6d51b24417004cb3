import { useEffect, useState } from 'react'
import { flushSync } from 'react-dom'
import { whenComplete } from '../state/evaluation/whenComplete'
import { openDropped } from '../state/linkedFile'
import { isPictureFile, pendingPicture } from '../state/photos/pendingPicture'
import { useAppStore } from '../state/react'
import type { AppStore } from '../state/store'

/** A field with untouched text leaves undo to the layout; one being typed in keeps the browser's own. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.dataset['dirty'] === 'true'

/**
 * What is printed is the mount sheet, never the drawing board: it is opened first, and printed once everything that stands on it
 * is worked out and its letters are there. Whoever leaves the sheet meanwhile wants no print.
 */
const printedSheet = async (store: AppStore): Promise<void> => {
  // A number still being typed belongs on the sheet.
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur()
  flushSync(() => store.actions.setView({ screen: 'papers' }))
  await whenComplete(store)
  // What has just come in is on the page before it is printed.
  flushSync(() => undefined)
  await document.fonts.ready
  if (store.state.getState().view.screen === 'papers') window.print()
}

const isPrintKey = (event: KeyboardEvent): boolean =>
  (event.ctrlKey || event.metaKey) && !event.altKey && !event.shiftKey && event.key.toLowerCase() === 'p'

const onPageKey = (store: AppStore, event: KeyboardEvent): void => {
  if (event.key === 'Escape' && store.state.getState().gesture !== null) {
    event.preventDefault()
    return store.actions.cancelGesture()
  }
  if (isPrintKey(event) && store.state.getState().view.screen === 'drawing') {
    event.preventDefault()
    void printedSheet(store)
    return
  }
  if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return
  const key = event.key.toLowerCase()
  const isRedo = (key === 'z' && event.shiftKey) || (key === 'y' && !event.shiftKey)
  if (isRedo) store.actions.redo()
  else if (key === 'z') store.actions.undo()
  else return
  event.preventDefault()
}

/** Undo, redo, print and calling off a gesture from the keyboard: the only keys that work everywhere. */
export const usePageKeys = (): void => {
  const store = useAppStore()
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => onPageKey(store, event)
    // The browser's own menu asks nobody first: the page must be the whole sheet when this returns.
    const onBeforePrint = (): void =>
      flushSync(() => {
        if (store.state.getState().view.screen === 'drawing') store.actions.setView({ screen: 'papers' })
        store.actions.completeHere()
      })
    window.addEventListener('keydown', onKeyDown)
    window.addEventListener('beforeprint', onBeforePrint)
    return () => {
      window.removeEventListener('keydown', onKeyDown)
      window.removeEventListener('beforeprint', onBeforePrint)
    }
  }, [store])
}

const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') === true

/** Opens a layout file dropped anywhere on the page, and leads a picture to the photo screen; true while one is held over it. */
export const useFileDrop = (): boolean => {
  const store = useAppStore()
  const [isOver, setOver] = useState(false)
  useEffect(() => {
    const onOver = (event: DragEvent): void => {
      if (!hasFiles(event)) return
      // Without this the browser would leave the page and open the file itself.
      event.preventDefault()
      setOver(true)
    }
    const onLeave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false)
    }
    const onDrop = (event: DragEvent): void => {
      if (!hasFiles(event)) return
      event.preventDefault()
      setOver(false)
      const { dataTransfer } = event
      const file = dataTransfer?.files[0]
      if (dataTransfer === null || file === undefined) return
      if (isPictureFile(file)) {
        pendingPicture.setState({ file })
        store.actions.setView({ screen: 'photo' })
      } else void openDropped(store, dataTransfer)
    }
    window.addEventListener('dragover', onOver)
    window.addEventListener('dragleave', onLeave)
    window.addEventListener('drop', onDrop)
    return () => {
      window.removeEventListener('dragover', onOver)
      window.removeEventListener('dragleave', onLeave)
      window.removeEventListener('drop', onDrop)
    }
  }, [store])
  return isOver
}
