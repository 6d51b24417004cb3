import { useEffect, useState } from 'react'
import { openLayoutFile } from '../state/files'
import { useAppStore } from '../state/react'
import type { AppStore } from '../state/store'

/** A field with untouched text leaves undo to the layout; one being typed in keeps the browser's own. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.dataset['dirty'] === 'true'

const onPageKey = (store: AppStore, event: KeyboardEvent): void => {
  if (event.key === 'Escape' && store.state.getState().gesture !== null) {
    event.preventDefault()
    return store.actions.cancelGesture()
  }
  if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return
  const key = event.key.toLowerCase()
  const isRedo = (key === 'z' && event.shiftKey) || (key === 'y' && !event.shiftKey)
  if (isRedo) store.actions.redo()
  else if (key === 'z') store.actions.undo()
  else return
  event.preventDefault()
}

/** Undo, redo and calling off a gesture from the keyboard: the only keys that work everywhere. */
export const usePageKeys = (): void => {
  const store = useAppStore()
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => onPageKey(store, event)
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [store])
}

const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') === true

/** Opens a layout file dropped anywhere on the page; true while one is held over it. */
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
      const file = event.dataTransfer?.files[0]
      if (file !== undefined) void openLayoutFile(store, file)
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
