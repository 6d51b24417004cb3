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

/** After everything that the event at hand sets off on the page. */
const afterwards = async (): Promise<void> => await new Promise((resolve) => setTimeout(resolve))

/** A control that was typed in since it was taken up. */
interface Typed {
  /** What stood in it when it was taken up. */
  readonly before: string
  /** The layout at the last letter. */
  readonly layout: Layout
}

/**
 * A field is entered when the layout changes as it is left or by Enter. A form of several fields that is not entered yet leaves the
 * layout as it was, and so does a value that was refused: both stay unfinished until they are gone, empty or as before.
 */
export const watchEntries = (store: AppStore): UnfinishedEntries => {
  const present = (): Layout => store.state.getState().history.present
  const takenUp = new WeakMap<TextControl, string>()
  const typed = new Map<TextControl, Typed>()
  const hear = (
    kind: 'focusin' | 'input' | 'focusout' | 'keydown',
    then: (control: TextControl) => void,
  ): void =>
    document.addEventListener(
      kind,
      (event) => {
        const control = asTextControl(event.target)
        if (control !== null && (!(event instanceof KeyboardEvent) || event.key === 'Enter')) then(control)
      },
      { capture: true },
    )
  const leave = async (control: TextControl): Promise<void> => {
    await afterwards()
    const entry = typed.get(control)
    if (entry !== undefined && entry.layout !== present()) typed.delete(control)
  }
  hear('focusin', (control) => {
    const entry = typed.get(control)
    if (entry === undefined) takenUp.set(control, control.value)
    // What changed meanwhile was not this field's doing.
    else typed.set(control, { ...entry, layout: present() })
  })
  hear('input', (control) => typed.set(control, { before: takenUp.get(control) ?? '', layout: present() }))
  hear('focusout', (control) => void leave(control))
  hear('keydown', (control) => void leave(control))
  return {
    first: async () => {
      const inHand = document.activeElement
      if (inHand instanceof HTMLElement) inHand.blur()
      store.actions.endGesture()
      await afterwards()
      for (const [control, { before }] of typed) {
        const isGone = !control.isConnected || control.value.trim() === '' || control.value === before
        if (isGone) typed.delete(control)
        else return control
      }
      return null
    },
  }
}
