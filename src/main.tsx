import '@fontsource/ibm-plex-sans-condensed/latin-400.css'
import '@fontsource/ibm-plex-sans-condensed/latin-600.css'
import '@fontsource/ibm-plex-sans/latin-400.css'
import '@fontsource/ibm-plex-sans/latin-600.css'
import '@fontsource/ibm-plex-sans/latin-ext-400.css'
import './panels/colours.css'
import './panels/base.css'
import './panels/shell.css'
import './panels/panels.css'
import './panels/fit/fit.css'
import './panels/propose/propose.css'
import './panels/welded/welded.css'
import './panels/fields/fields.css'
import './panels/figure/figure.css'
import './panels/explain/explain.css'
import './panels/first/first.css'
import './panels/help/help.css'
import './panels/share/share.css'
import { lazy, StrictMode, Suspense } from 'react'
import { createRoot } from 'react-dom/client'
import { AppShell } from './panels/AppShell'
import { ErrorBoundary } from './panels/ErrorBoundary'
import { ArrivedLayoutDialog } from './panels/share/ArrivedLayoutDialog'
import { startCompleting } from './state/evaluation/evaluationRunner'
import { pageEvaluationWorker, roomsWorkers } from './state/evaluation/pageEvaluationWorker'
import { browserTabs, takeOffered } from './state/talk/answerHandOver'
import { soundStep } from './state/talk/soundStep'
import { takeLaunchedFiles } from './state/linkedFile'
import { pageKeeping, warnBeforeLosing } from './state/keeping/pageKeeping'
import { startKeepingApp, startOffline } from './state/offline/pageOffline'
import { preferredView, startKeepingView } from './state/keptView'
import { Papers } from './sheet/Papers'
import { AppStoreProvider } from './state/react'
import { takeArrival } from './state/share/arrival'
import { carriedIn } from './state/share/fragment'
import { type AppStore, createAppStore } from './state/store'

// Loaded after the page stands, so that panels and findings do not wait for the canvas.
const Elevations = lazy(async () => ({ default: (await import('./elevation/Elevations')).Elevations }))

const CustomerPage = lazy(async () => ({
  default: (await import('./panels/customer/CustomerPage')).CustomerPage,
}))

/** What a customer sees who follows the link to a proposal: nothing of the builder's, and nothing is kept but what they type. */
const startCustomer = (root: HTMLElement, text: string): void => {
  createRoot(root).render(
    <StrictMode>
      <Suspense fallback={<p className="waiting">One moment…</p>}>
        <CustomerPage text={text} />
      </Suspense>
    </StrictMode>,
  )
  startKeepingApp()
}

/** Links and files that arrive while the page is open or that it was started with. */
const startArrivals = (store: AppStore): void => {
  window.addEventListener('hashchange', () => void takeArrival(store, window.location.hash))
  void takeArrival(store, window.location.hash)
  takeLaunchedFiles(store)
  takeOffered(store, browserTabs())
}

const startWorkbench = async (root: HTMLElement): Promise<void> => {
  const before = await pageKeeping.restored()
  const { layout, notice, setAside, from } = before
  // Two elevations on a phone are both too small to take hold of anything.
  const isSmallScreen = window.matchMedia('(max-width: 640px)').matches
  const store = createAppStore(layout, {
    view: { ...preferredView(), elevations: isSmallScreen ? 'side' : 'both' },
    check: soundStep,
    setAside,
    documentId: from?.id,
  })
  if (notice !== null) store.actions.notify(notice.kind, notice.text, notice.details)
  startKeepingView(store)
  pageKeeping.start(store, before)
  warnBeforeLosing()
  startOffline(store)
  startArrivals(store)
  if (pageEvaluationWorker !== null) startCompleting(store, pageEvaluationWorker, roomsWorkers())
  createRoot(root).render(
    <StrictMode>
      <AppStoreProvider store={store}>
        <ErrorBoundary store={store} part="The page">
          <AppShell
            drawing={
              <Suspense fallback={<p className="waiting">Setting up the drawing…</p>}>
                <Elevations />
              </Suspense>
            }
            papers={<Papers />}
          />
          <ArrivedLayoutDialog />
        </ErrorBoundary>
      </AppStoreProvider>
    </StrictMode>,
  )
}

/** What a link that cannot be read meant to carry. */
const cutKind = (hash: string): string => /^#([a-z]*)/.exec(hash)?.[1] ?? ''

const root = document.getElementById('root')
if (root === null) throw new Error('index.html has no element with the id "root"')
const carried = carriedIn(window.location.hash)
// A link to a proposal that was cut on its way is not the builder's page either: it says there what is wrong.
const proposal = carried.ok ? carried.value : { kind: cutKind(window.location.hash), text: '' }
if (proposal?.kind === 'proposal') {
  startCustomer(root, proposal.text)
  // Another link in the same tab begins anew, whatever it carries.
  window.addEventListener('hashchange', () => window.location.reload())
} else void startWorkbench(root)
