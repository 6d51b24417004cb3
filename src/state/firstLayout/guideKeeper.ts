import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Layout } from '../../domain/layout/document/layout'
import {
  begunFresh,
  begunFrom,
  type Guided,
  withAnswer,
  withEdit,
  withoutAnswers,
} from '../../domain/layout/firstLayout/answer'
import { asPattern } from '../../domain/layout/firstLayout/asPattern'
import { withNotMeasured } from '../../domain/layout/firstLayout/notMeasured'
import type { Answer, QuestionId } from '../../domain/layout/firstLayout/question'
import type { AppState } from '../appState'
import { isSameValue } from '../sameValue'
import type { AppStore } from '../store'
import { type Guide, guideOn, unmeasuredQuestions, withConfirmed, withOpened } from './guide'
import { keepGuide, keptGuide } from './keptGuides'

/** The questions of the open document, and the ways to answer them. */
export interface GuideKeeper {
  /** Null: nobody has begun with the questions of this document. */
  readonly state: Pick<StoreApi<Guide | null>, 'getState' | 'getInitialState' | 'subscribe'>
  /** Goes to another question or says how one was left; nothing of the layout changes. */
  readonly move: (change: (guide: Guide) => Guide) => void
  /** The numbers of one question said to be right as they are shown, as one undo step. */
  readonly confirm: (label: string, questionId: QuestionId) => void
  /** One answer as one undo step; null takes it back to where it starts. */
  readonly answer: (label: string, askId: string, answer: Answer | null) => void
  /** Everything of one question back to where it starts, as one undo step, and the question open again. */
  readonly restart: (label: string, questionId: QuestionId) => void
  /** Another change of the layout as one undo step; what hangs on it follows. */
  readonly change: (label: string, change: (layout: Layout) => Layout) => void
  /** Shows what a number would come to while it is typed; null puts back what there was. */
  readonly preview: (label: string, askId: string, answer: Answer | null) => void
  /** Puts the questions of the open document beside the drawing, begun where they were left. */
  readonly open: () => void
  readonly begin: (guided: Guided, label: string) => void
}

type GuideState = StoreApi<Guide | null>

/** The layout with what nobody has measured by these questions. */
const accounted = (layout: Layout, guide: Guide): Layout =>
  withNotMeasured(
    layout,
    unmeasuredQuestions(guide, layout).map(({ question }) => question.id),
  )

/** How the questions stood at each step of the history, so that undo takes an answer and its mark back together. */
type Stands = WeakMap<Layout, Guide>

const follow = (store: AppStore, guide: GuideState, stands: Stands): void => {
  store.state.subscribe((state, before) => {
    const { present } = state.history
    if (state.documentId !== before.documentId) {
      // Another slot for the same document keeps its questions; another document has its own.
      if (present !== before.history.present) {
        guide.setState(keptGuide(state.documentId), true)
        if (state.view.side === 'first-layout') store.actions.setView({ side: 'panels' })
      }
    } else if (present !== before.history.present) {
      const stand = stands.get(present)
      if (stand !== undefined) guide.setState(stand, true)
    }
  })
  guide.subscribe((now) => {
    if (now === null) return
    const { documentId, history } = store.state.getState()
    stands.set(history.present, now)
    keepGuide(documentId, now)
  })
}

/** What all ways to answer have in common: how the questions stand now, and a change of the layout as one step with them. */
interface GuideSteps {
  readonly guide: GuideState
  readonly current: () => Guide
  readonly step: (label: string, change: (guided: Guided) => Guided, left?: (guide: Guide) => Guide) => void
  /** What was moved by hand beside the questions is not called unmeasured any more. */
  readonly account: () => void
  readonly preview: GuideKeeper['preview']
  readonly endPreview: () => void
}

/** A number that is being typed is shown as a gesture, so that it leaves no step when it is called off. */
const typedPreview = (
  { state, actions }: AppStore,
  current: () => Guide,
): Pick<GuideSteps, 'preview' | 'endPreview'> => {
  /** The gesture that shows it; null or another's once it was ended from elsewhere. */
  let typing: AppState['gesture'] = null
  const isTyping = (): boolean => typing !== null && state.getState().gesture === typing
  const endPreview = (): void => {
    if (isTyping()) actions.cancelGesture()
    typing = null
  }
  return {
    endPreview,
    preview: (label, askId, answer) => {
      if (answer === null) return endPreview()
      if (!isTyping()) {
        // Something is being dragged: it is not ended by a key.
        if (state.getState().gesture !== null) return
        actions.beginGesture(label)
        typing = state.getState().gesture
      }
      const { progress } = current()
      actions.dragTo((layout) => withAnswer({ layout, progress }, askId, answer).layout)
    },
  }
}

const guideSteps = (store: AppStore): GuideSteps => {
  const { actions } = store
  const guide: GuideState = createStore<Guide | null>(() => keptGuide(store.state.getState().documentId))
  const stands: Stands = new WeakMap()
  follow(store, guide, stands)
  const present = (): Layout => store.state.getState().history.present
  const current = (): Guide => guide.getState() ?? guideOn(present())
  const typed = typedPreview(store, current)
  return {
    guide,
    current,
    ...typed,
    /** One undo step with the questions as they are after it; as they were where the step was refused. */
    step: (label, change, left = (same) => same) => {
      typed.endPreview()
      const before = current()
      // Undo leads back to the questions as they stand now.
      stands.set(present(), before)
      let after = before
      let made: Layout | null = null
      actions.edit(label, (layout) => {
        const guided = change({ layout, progress: before.progress })
        after = left({ ...before, progress: guided.progress })
        made = accounted(guided.layout, after)
        return made
      })
      if (made !== null && isSameValue(present(), made)) guide.setState(after, true)
    },
    account: () => {
      const now = current()
      actions.edit('Keep account of what was measured or moved', (layout) => accounted(layout, now))
    },
  }
}

const createGuideKeeper = (store: AppStore): GuideKeeper => {
  const { actions } = store
  const { guide, current, step, account, preview, endPreview } = guideSteps(store)
  return {
    state: guide,
    move: (change) => {
      endPreview()
      const next = change(current())
      if (next.at === 'end') account()
      guide.setState(next, true)
    },
    answer: (label, askId, answer) => step(label, (guided) => withAnswer(guided, askId, answer)),
    confirm: (label, questionId) =>
      step(
        label,
        (guided) => guided,
        (now) => withConfirmed(now, questionId),
      ),
    restart: (label, questionId) =>
      step(
        label,
        (guided) => withoutAnswers(guided, questionId),
        (now) => withOpened(now, questionId),
      ),
    change: (label, change) => step(label, (guided) => withEdit(guided, change)),
    preview,
    open: () => {
      if (guide.getState() !== null) account()
      guide.setState(current(), true)
      actions.setView({ screen: 'drawing', board: 'drawing', side: 'first-layout' })
    },
    begin: ({ layout, progress }, label) => {
      endPreview()
      const begun: Guide = { progress, confirmed: [], skipped: [], at: 'job' }
      actions.openLayout(accounted({ ...layout, notMeasured: [] }, begun), label)
      guide.setState(begun, true)
      actions.setView({ screen: 'drawing', board: 'drawing', side: 'first-layout' })
    },
  }
}

const keepers = new WeakMap<AppStore, GuideKeeper>()

/** The one keeper of a page's questions, made when it is first asked for. */
export const guideKeeper = (store: AppStore): GuideKeeper => {
  const known = keepers.get(store)
  if (known !== undefined) return known
  const made = createGuideKeeper(store)
  keepers.set(store, made)
  return made
}

/** Opens a new layout of starting values, with its questions beside the drawing. */
export const startFirstLayout = (store: AppStore): void =>
  guideKeeper(store).begin(begunFresh(), 'Start a layout with questions')

/** Opens a new layout that starts as another one is, without what belongs to that job, with its questions beside the drawing. */
export const startFromPattern = (store: AppStore, pattern: Layout): void =>
  guideKeeper(store).begin(begunFrom(asPattern(pattern)), 'Start from a similar car')

/** The questions of the open layout beside the drawing, where they were left. */
export const continueFirstLayout = (store: AppStore): void => guideKeeper(store).open()
