import type { Layout } from '../domain/layout/document/layout'
import type { Completion } from './evaluation/completion'
import type { Rooms } from './evaluation/rooms'
import type { History } from './history'

/** What the page shows between its header and the cautions. */
export type Screen = 'drawing' | 'papers' | 'layouts' | 'photo' | 'compare' | 'customer' | 'guide'

/** How the page shows the layout; never part of the document and never undone. */
export interface View {
  readonly elevations: 'both' | 'side' | 'top'
  /** The elevations, or everything on them as text for those who cannot use a drawing. */
  readonly board: 'drawing' | 'list'
  /** Zones are hatched while something moves, or always: of the anchor in hand and its pair, or of all anchors of the place. */
  readonly showZones: 'moving' | 'in-hand' | 'all'
  readonly paper: 'a4' | 'letter'
  readonly screen: Screen
  /** What stands beside the drawing: the panels, or the questions that lead to a first layout. */
  readonly side: 'panels' | 'first-layout'
  /** Which of the papers that leave the shop is looked at. */
  readonly paperKind: 'mount-sheet' | 'templates' | 'as-welded' | 'belts' | 'comparison'
  /** Whether the mount sheet shows the harness bar from behind. */
  readonly sheetRearView: boolean
  readonly theme: 'light' | 'dark'
  /** The numbers of the drawn sitting, or of every sitting beside each other. */
  readonly numbers: 'shown' | 'all'
  /** Whether the drawing offers the points of the current seat's outlines instead of its other handles. */
  readonly shell: 'fixed' | 'shaped'
}

export interface Notice {
  readonly kind: 'info' | 'problem'
  readonly text: string
  /** One line for each thing that is wrong; often empty. */
  readonly details: readonly string[]
}

/** A worker died of the zones of a layout, or could not be had for them. */
interface ZonesFailure {
  readonly layout: Layout
  readonly message: string
}

interface Gesture {
  readonly label: string
  readonly startedFrom: Layout
}

export interface AppState {
  /** Where the document is kept: the id of its slot (keeping/). Another id is another document, with a history of its own. */
  readonly documentId: string
  /** What is drawn and computed from now: the present of the history, or where the running gesture has got to. */
  readonly layout: Layout
  readonly history: History<Layout>
  readonly gesture: Gesture | null
  /** How far remedies and tolerance cases are, which are worked out beside the page. */
  readonly completion: Completion
  /** The newest answer about rooms and zones, of the drawn layout or of one before; null before the first. */
  readonly rooms: Rooms | null
  /** The last try at a zone failed, and none has come since; null when that is not so. */
  readonly zonesFailure: ZonesFailure | null
  readonly selectedHandleId: string | null
  readonly focusedFindingId: string | null
  readonly currentPlaceId: string
  /** Null: the drawn position of the place's first occupant. */
  readonly currentSittingId: string | null
  /** The sitting pointed at in the drawing or the numbers, whose outline is picked out and named; null: none. */
  readonly pointedSittingId: string | null
  readonly view: View
  readonly notice: Notice | null
  /** The text of a layout that could not be read at a start, for saving to a file; null when there never was one. */
  readonly setAside: string | null
  /** The last thing that happened, in words, for those who hear the page instead of seeing it. */
  readonly announcement: string
}

export interface AppActions {
  /**
   * One undo step; nothing happens when `change` changes nothing. A running gesture is ended first. A change that a layout
   * file could not hold is refused with a notice, so that what is kept can always be opened again.
   */
  readonly edit: (label: string, change: (layout: Layout) => Layout) => void
  /** Everything until `endGesture` is one undo step. A gesture still running is ended first. */
  readonly beginGesture: (label: string) => void
  /** Shows `change` applied to the layout the gesture started from; ignored when no gesture runs. */
  readonly dragTo: (change: (start: Layout) => Layout) => void
  readonly endGesture: () => void
  /** Puts back the layout the gesture started from and leaves no step. */
  readonly cancelGesture: () => void
  /** During a gesture both only cancel the gesture. */
  readonly undo: () => void
  readonly redo: () => void
  readonly selectHandle: (id: string | null) => void
  readonly focusFinding: (id: string | null) => void
  readonly selectPlace: (id: string) => void
  readonly selectSitting: (id: string | null) => void
  readonly pointAtSitting: (id: string | null) => void
  readonly setView: (change: Partial<View>) => void
  /**
   * Opens another document with an undo history of its own; the former one stays among the layouts as it was. Without an id it is a new
   * document; with one it is what lies in that slot already. A layout that a file could not hold is refused with a notice.
   */
  readonly openLayout: (layout: Layout, label: string, documentId?: string) => void
  /** The same document, history and all, is kept in another slot from now on. */
  readonly moveTo: (documentId: string) => void
  /** What has come of having a layout evaluated beside the page. */
  readonly setCompletion: (completion: Completion) => void
  readonly setRooms: (rooms: Rooms) => void
  readonly setZonesFailure: (failure: AppState['zonesFailure']) => void
  /** Has what could not be worked out beside the page tried once more there. */
  readonly tryAgain: () => void
  /** Evaluates the drawn layout completely on the page itself, which holds it up; for whoever cannot wait or has no worker left. */
  readonly completeHere: () => void
  readonly notify: (kind: Notice['kind'], text: string, details?: readonly string[]) => void
  readonly dismissNotice: () => void
}
