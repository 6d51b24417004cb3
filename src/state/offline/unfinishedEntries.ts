import type { Layout } from '../../domain/layout/document/layout'
import type { AppStore } from '../store'

/** Follows what is typed on a page, so that nothing typed is lost when it is loaded anew. */
export interface UnfinishedEntries {
  /** Leaves the field in hand, which enters it, and gives the first entry that is in no layout; null: there is none. */
  readonly first: () => Promise<HTMLElement | null>
}

type TextControl = HTMLInputElement | HTMLTextAreaElement

/** Only what takes text holds something half typed; what is searched for is no entry. */
const NO_TEXT = new Set(['checkbox', 'radio', 'file', 'range', 'button', 'submit', 'search', 'color'])

const asTextControl = (target: EventTarget | null): TextControl | null => {
  if (target instanceof HTMLTextAreaElement) return target
  return target instanceof HTMLInputElement && !NO_TEXT.has(target.type) ? target : null
}

const nextFrame = async (): Promise<void> =>
  await new Promise((resolve) => {
    // A page in the background paints no frames.
    if (document.visibilityState === 'hidden') setTimeout(resolve)
    else requestAnimationFrame(() => resolve())
  })

/**
 * A field that was typed in is finished when the layout changed since, or it is gone or empty. A form of several fields that is not
 * entered yet leaves the layout as it was, and so does a value that was refused: both count as unfinished.
 */
export const watchEntries = (store: AppStore): UnfinishedEntries => {
  const present = (): Layout => store.state.getState().history.present
  const typed = new Map<TextControl, Layout>()
  document.addEventListener(
    'input',
    ({ target }) => {
      const control = asTextControl(target)
      if (control !== null) typed.set(control, present())
    },
    { capture: true },
  )
  return {
    first: async () => {
      const inHand = document.activeElement
      if (inHand instanceof HTMLElement) inHand.blur()
      store.actions.endGesture()
      await nextFrame()
      for (const [control, before] of typed) {
        const isFinished = !control.isConnected || control.value.trim() === '' || present() !== before
        if (isFinished) typed.delete(control)
        else return control
      }
      return null
    },
  }
}
