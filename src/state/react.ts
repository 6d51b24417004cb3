import { createContext, createElement, useContext, type ReactElement, type ReactNode } from 'react'
import { useStore } from 'zustand'
import type { StoreApi } from 'zustand/vanilla'
import type { AppActions, AppState } from './appState'
import type { AppStore } from './store'

const AppStoreContext = createContext<AppStore | null>(null)

export const AppStoreProvider = (props: { store: AppStore; children: ReactNode }): ReactElement =>
  createElement(AppStoreContext.Provider, { value: props.store }, props.children)

/** The store itself, for effects that read it outside of rendering. */
export const useAppStore = (): AppStore => {
  const store = useContext(AppStoreContext)
  if (store === null) throw new Error('useAppStore needs an AppStoreProvider above it')
  return store
}

/** Renders again when the selected value changes; the selector returns stable references, never fresh arrays. */
export const useApp = <Selected>(selector: (state: AppState) => Selected): Selected =>
  useStore(useAppStore().state, selector)

/** What is kept beside the one store, such as a task; renders again when it changes. */
export const useKept = <State>(
  store: Pick<StoreApi<State>, 'getState' | 'getInitialState' | 'subscribe'>,
): State => useStore(store)

/** Always the same object, so it may stand in dependency lists. */
export const useActions = (): AppActions => useAppStore().actions
