import type { View } from './appState'
import type { AppStore } from './store'

/** What of the view the next visit begins with: never part of a layout, and the same for all of them. */
type Kept = Pick<View, 'theme' | 'showZones' | 'board'>

const CHOICES: {
  readonly [Key in keyof Kept]: { readonly key: string; readonly values: readonly Kept[Key][] }
} = {
  theme: { key: 'tabwright-theme', values: ['light', 'dark'] },
  board: { key: 'tabwright-board', values: ['drawing', 'list'] },
  showZones: { key: 'tabwright-zones', values: ['moving', 'in-hand', 'all'] },
}

/** Null where nothing was kept, or nothing that there is, or the browser forbids storage. */
const kept = <Key extends keyof Kept>(name: Key): Kept[Key] | null => {
  const { key, values } = CHOICES[name]
  try {
    const text = localStorage.getItem(key)
    return values.find((value) => value === text) ?? null
  } catch {
    return null
  }
}

const keep = (name: keyof Kept, view: View): void => {
  try {
    localStorage.setItem(CHOICES[name].key, view[name])
  } catch {
    // Not kept for the next visit; nothing else depends on it.
  }
}

/** As chosen at an earlier visit; the theme else as the device asks for it. */
export const preferredView = (): Partial<Kept> => {
  const showZones = kept('showZones')
  const board = kept('board')
  const isDark = (): boolean => window.matchMedia('(prefers-color-scheme: dark)').matches
  return {
    theme: kept('theme') ?? (isDark() ? 'dark' : 'light'),
    ...(showZones === null ? {} : { showZones }),
    ...(board === null ? {} : { board }),
  }
}

/** Keeps the page's `data-theme` equal to the store's theme, before anything renders with it, and what is chosen for the next visit. */
export const startKeepingView = (store: AppStore): void => {
  const show = ({ theme }: View): void => {
    document.documentElement.dataset['theme'] = theme
    // The frame that the device draws round the page has the colour of its paper.
    const paper = getComputedStyle(document.documentElement).getPropertyValue('--paper').trim()
    for (const meta of document.querySelectorAll('meta[name="theme-color"]'))
      meta.setAttribute('content', paper)
  }
  show(store.state.getState().view)
  store.state.subscribe(({ view }, before) => {
    if (view.theme !== before.view.theme) {
      show(view)
      keep('theme', view)
    }
    for (const name of ['showZones', 'board'] as const) if (view[name] !== before.view[name]) keep(name, view)
  })
}
