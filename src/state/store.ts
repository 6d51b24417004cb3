import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Layout } from '../domain/layout/document/layout'
import type { AppActions, AppState, Notice, View } from './appState'
import { completedHere, type Completion } from './evaluation/completion'
import type { Rooms } from './evaluation/rooms'
import { committed, historyOf, redone, undone, type History } from './history'
import { uniqueId } from './uniqueId'

/** The one store of a page: state to read and subscribe to, and the only ways to change it. */
export interface AppStore {
  readonly state: Pick<StoreApi<AppState>, 'getState' | 'getInitialState' | 'subscribe'>
  readonly actions: AppActions
}

const FIRST_VIEW: View = {
  elevations: 'both',
  board: 'drawing',
  showZones: 'moving',
  paper: 'a4',
  screen: 'drawing',
  side: 'panels',
  paperKind: 'mount-sheet',
  sheetRearView: true,
  theme: 'light',
  numbers: 'shown',
  shell: 'fixed',
}

const firstPlaceId = (layout: Layout): string => layout.places[0]?.id ?? ''

/** Puts a history in front: what is drawn follows it and the current place stays if it is still there. */
const withHistory = (state: AppState, history: History<Layout>, announcement: string): AppState => {
  const layout = history.present
  const placeStays = layout.places.some((place) => place.id === state.currentPlaceId)
  return {
    ...state,
    history,
    layout,
    gesture: null,
    announcement,
    // Good news is about the change before; a problem stays until it is closed.
    notice: state.notice?.kind === 'info' ? null : state.notice,
    currentPlaceId: placeStays ? state.currentPlaceId : firstPlaceId(layout),
    currentSittingId: placeStays ? state.currentSittingId : null,
  }
}

/** Why a layout may not follow the one before, one sentence each; empty when it may. Null: it begins a document. */
type LayoutCheck = (layout: Layout, before: Layout | null) => readonly string[]

const withRefusal = (state: AppState, label: string, problems: readonly string[]): AppState => ({
  ...state,
  layout: state.history.present,
  gesture: null,
  announcement: `Not done: ${label}`,
  notice: { kind: 'problem', text: `Not done: ${label}. Nothing was changed.`, details: problems },
})

interface Commit {
  readonly label: string
  readonly layout: Layout
}

const withCommit = (state: AppState, { label, layout }: Commit, check: LayoutCheck): AppState => {
  const history = committed(state.history, label, layout)
  // An unchanged document keeps its identity, so that nothing is computed or saved again.
  if (history === state.history) return { ...state, layout: history.present, gesture: null }
  const problems = check(layout, state.history.present)
  return problems.length > 0 ? withRefusal(state, label, problems) : withHistory(state, history, label)
}

const withGestureEnded = (state: AppState, check: LayoutCheck): AppState =>
  state.gesture === null
    ? state
    : withCommit(state, { label: state.gesture.label, layout: state.layout }, check)

const withGestureCancelled = (state: AppState): AppState =>
  state.gesture === null
    ? state
    : {
        ...state,
        layout: state.gesture.startedFrom,
        gesture: null,
        announcement: `Cancelled: ${state.gesture.label}`,
      }

const withStepBack = (state: AppState): AppState => {
  if (state.gesture !== null) return withGestureCancelled(state)
  const step = state.history.past.at(-1)
  return step === undefined ? state : withHistory(state, undone(state.history), `Undone: ${step.label}`)
}

const withStepForward = (state: AppState): AppState => {
  if (state.gesture !== null) return withGestureCancelled(state)
  const step = state.history.future.at(-1)
  return step === undefined ? state : withHistory(state, redone(state.history), `Redone: ${step.label}`)
}

const withDocument = (
  state: AppState,
  { label, layout, documentId }: Commit & { readonly documentId: string },
  check: LayoutCheck,
): AppState => {
  const problems = check(layout, null)
  if (problems.length > 0) return withRefusal(state, label, problems)
  return {
    ...withHistory(state, historyOf(layout), label),
    documentId,
    selectedHandleId: null,
    focusedFindingId: null,
    pointedSittingId: null,
    currentPlaceId: firstPlaceId(layout),
    currentSittingId: null,
  }
}

const documentActions = (store: StoreApi<AppState>, check: LayoutCheck) => ({
  edit: (label: string, change: (layout: Layout) => Layout) =>
    store.setState((state) => {
      const ended = withGestureEnded(state, check)
      return withCommit(ended, { label, layout: change(ended.layout) }, check)
    }),
  beginGesture: (label: string) =>
    store.setState((state) => {
      const ended = withGestureEnded(state, check)
      return { ...ended, gesture: { label, startedFrom: ended.layout } }
    }),
  dragTo: (change: (start: Layout) => Layout) =>
    store.setState((state) =>
      state.gesture === null ? state : { ...state, layout: change(state.gesture.startedFrom) },
    ),
  endGesture: () => store.setState((state) => withGestureEnded(state, check)),
  cancelGesture: () => store.setState(withGestureCancelled),
  undo: () => store.setState(withStepBack),
  redo: () => store.setState(withStepForward),
  openLayout: (layout: Layout, label: string, documentId: string = uniqueId()) => {
    // A change of its own, so that whoever keeps the former document sees its last step.
    store.setState((state) => withGestureEnded(state, check))
    store.setState((state) => withDocument(state, { label, layout, documentId }, check))
  },
  moveTo: (documentId: string) => store.setState({ documentId }),
})

const viewActions = (store: StoreApi<AppState>) => ({
  selectHandle: (id: string | null) => store.setState({ selectedHandleId: id }),
  focusFinding: (id: string | null) => store.setState({ focusedFindingId: id }),
  selectPlace: (id: string) =>
    store.setState((state) =>
      state.layout.places.some((place) => place.id === id) && id !== state.currentPlaceId
        ? { currentPlaceId: id, currentSittingId: null }
        : state,
    ),
  selectSitting: (id: string | null) => store.setState({ currentSittingId: id }),
  pointAtSitting: (id: string | null) =>
    store.setState((state) => (state.pointedSittingId === id ? state : { pointedSittingId: id })),
  setView: (change: Partial<View>) => store.setState((state) => ({ view: { ...state.view, ...change } })),
  setCompletion: (completion: Completion) => store.setState({ completion }),
  setRooms: (rooms: Rooms) => store.setState({ rooms }),
  setZonesFailure: (zonesFailure: AppState['zonesFailure']) => store.setState({ zonesFailure }),
  tryAgain: () =>
    store.setState(({ completion, layout }) => ({
      zonesFailure: null,
      completion:
        completion.kind === 'failed' && completion.layout === layout
          ? { kind: 'working', layout }
          : completion,
    })),
  completeHere: () =>
    store.setState((state) => {
      const { completion, layout } = state
      if (completion.kind === 'direct' || (completion.kind === 'ready' && completion.layout === layout))
        return state
      return { completion: completedHere(layout) }
    }),
  notify: (kind: Notice['kind'], text: string, details: readonly string[] = []) =>
    store.setState({ notice: { kind, text, details } }),
  dismissNotice: () => store.setState({ notice: null }),
})

export interface StoreOptions {
  /** Where the layout is kept already; a new document otherwise. */
  readonly documentId?: string | undefined
  readonly view?: Partial<View>
  readonly check?: LayoutCheck
  readonly setAside?: string | null
}

export const createAppStore = (initial: Layout, options: StoreOptions = {}): AppStore => {
  const store = createStore<AppState>(() => ({
    documentId: options.documentId ?? uniqueId(),
    layout: initial,
    history: historyOf(initial),
    gesture: null,
    completion: { kind: 'direct' },
    rooms: null,
    zonesFailure: null,
    selectedHandleId: null,
    focusedFindingId: null,
    currentPlaceId: firstPlaceId(initial),
    currentSittingId: null,
    pointedSittingId: null,
    view: { ...FIRST_VIEW, ...options.view },
    notice: null,
    setAside: options.setAside ?? null,
    announcement: '',
  }))
  return {
    state: store,
    actions: { ...documentActions(store, options.check ?? (() => [])), ...viewActions(store) },
  }
}
