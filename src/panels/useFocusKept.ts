import { useEffect } from 'react'

const FOCUSABLE =
  'a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), summary, [tabindex="0"]'

/** An element that holds what has the focus, and which of its children does. */
interface Step {
  readonly parent: Element
  readonly index: number
}

/** From the inside out. */
const pathOf = (element: Element): readonly Step[] => {
  const steps: Step[] = []
  for (let child = element; child.parentElement !== null; child = child.parentElement) {
    const parent = child.parentElement
    steps.push({ parent, index: [...parent.children].indexOf(child) })
  }
  return steps
}

const firstIn = (element: Element | undefined): HTMLElement | null => {
  if (element === undefined) return null
  if (element instanceof HTMLElement && element.matches(FOCUSABLE)) return element
  return element.querySelector<HTMLElement>(FOCUSABLE)
}

/** What stands where the lost element stood, else after it, else before it, else further out. */
const nearest = (path: readonly Step[]): HTMLElement | null => {
  for (const { parent, index } of path) {
    if (!parent.isConnected) continue
    const children = [...parent.children]
    const inOrder = [...children.slice(index), ...children.slice(0, index).toReversed()]
    for (const child of inOrder) {
      const found = firstIn(child)
      if (found !== null) return found
    }
  }
  return null
}

/**
 * A keyboard never loses its place: when what has the focus is taken off the page (a button that adds what it stands for, one that
 * removes its own line), what stands in its place gets it. Fingers and mice lose nothing and open no keyboard on the screen.
 */
export const useFocusKept = (): void => {
  useEffect(() => {
    let last: { readonly element: Element; readonly path: readonly Step[] } | null = null
    const onFocus = ({ target }: FocusEvent): void => {
      const isByKeyboard = target instanceof Element && target.matches(':focus-visible')
      last = isByKeyboard ? { element: target, path: pathOf(target) } : null
    }
    const onPointer = (): void => {
      last = null
    }
    const observer = new MutationObserver(() => {
      if (last === null || last.element.isConnected || document.activeElement !== document.body) return
      const { path } = last
      last = null
      nearest(path)?.focus()
    })
    document.addEventListener('focusin', onFocus)
    document.addEventListener('pointerdown', onPointer, true)
    observer.observe(document.body, { childList: true, subtree: true })
    return () => {
      document.removeEventListener('focusin', onFocus)
      document.removeEventListener('pointerdown', onPointer, true)
      observer.disconnect()
    }
  }, [])
}
