import type { View } from './appState'
import type { AppStore } from './store'

const KEY = 'tabwright-theme'

const isTheme = (value: unknown): value is View['theme'] => value === 'light' || value === 'dark'

/** The theme chosen at an earlier visit, else the one the device asks for. */
export const preferredTheme = (): View['theme'] => {
  try {
    const kept = localStorage.getItem(KEY)
    if (isTheme(kept)) return kept
  } catch {
    // A browser that forbids storage still has a preference of its own.
  }
  return window.matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light'
}

/** Keeps the page's `data-theme` equal to the store's theme, before anything renders with it. */
export const startTheme = (store: AppStore): void => {
  const show = (theme: View['theme']): void => {
    document.documentElement.dataset['theme'] = theme
  }
  show(store.state.getState().view.theme)
  store.state.subscribe((state, before) => {
    if (state.view.theme === before.view.theme) return
    show(state.view.theme)
    try {
      localStorage.setItem(KEY, state.view.theme)
    } catch {
      // Not kept for the next visit; nothing else depends on it.
    }
  })
}
