import { lazy, Suspense, useState, type ReactElement, type ReactNode } from 'react'
import { useApp, useAppStore } from '../state/react'
import { CautionsStrip } from './CautionsStrip'
import { ErrorBoundary } from './ErrorBoundary'
import { Header } from './Header'
import { UpdateBar } from './help/UpdateBar'
import { LiveRegion } from './LiveRegion'
import { NoticeBar } from './Messages'
import { FirstLayoutPanel } from './first/FirstLayoutPanel'
import { PhotoControls } from './photo/PhotoToggle'
import { PlaceBar } from './PlaceBar'
import { SCREENS } from './screens'
import { StepsOverDrawing } from './SelectedPart'
import { FIRST_PANELS, SidePanels } from './SidePanels'
import { useMediaQuery } from './useMediaQuery'
import { useFocusKept } from './useFocusKept'
import { useFileDrop, usePageKeys } from './usePageEvents'
import { ZoneStatus } from './ZoneStatus'

// Few want it, and the drawing is not to wait for it.
const ListBoard = lazy(async () => ({ default: (await import('./list/ListBoard')).ListBoard }))

/** Beside each other from here on; narrower, the panels go below the drawing. Kept equal to the query in shell.css. */
const SIDE_BY_SIDE = '(min-width: 900px), (min-width: 640px) and (orientation: landscape)'
const ROOM_FOR_TWO_STACKS = '(min-width: 1200px) and (min-height: 760px)'

/** The drawing, or everything on it as a list in its place. */
const BoardShown = (props: { readonly drawing: ReactNode }): ReactNode => {
  const isList = useApp((state) => state.view.board === 'list')
  if (!isList) return props.drawing
  return (
    <Suspense fallback={<p className="waiting">One moment…</p>}>
      <ListBoard />
    </Suspense>
  )
}

const Workbench = (props: { readonly drawing: ReactNode }): ReactElement => {
  const store = useAppStore()
  const [arePanelsOpen, setPanelsOpen] = useState(true)
  // Kept here so that hiding the panels or turning the tablet forgets nothing.
  const [chosenPanels, setChosenPanels] = useState(FIRST_PANELS)
  const isSideBySide = useMediaQuery(SIDE_BY_SIDE)
  const hasTwoStacks = useMediaQuery(ROOM_FOR_TWO_STACKS)
  const isAsking = useApp((state) => state.view.side === 'first-layout')
  return (
    <div className="workbench" data-panels={arePanelsOpen ? 'open' : 'closed'}>
      <section className="board" aria-label="Drawing" id="drawing" tabIndex={-1}>
        <PlaceBar
          panelToggle={
            <button
              type="button"
              className="panel-toggle"
              aria-expanded={arePanelsOpen}
              onClick={() => setPanelsOpen(!arePanelsOpen)}
            >
              {arePanelsOpen ? 'Hide panels' : 'Show panels'}
            </button>
          }
        />
        <div>
          <ZoneStatus />
          <PhotoControls />
        </div>
        <div className="board-drawing">
          <ErrorBoundary store={store} part="The drawing">
            <BoardShown drawing={props.drawing} />
          </ErrorBoundary>
          {arePanelsOpen ? null : (
            <>
              <StepsOverDrawing />
              <NoticeBar over="drawing" />
            </>
          )}
        </div>
      </section>
      {arePanelsOpen ? (
        <aside className="side" aria-label="Panels" id="panels" tabIndex={-1}>
          <ErrorBoundary store={store} part="The panels">
            {isAsking ? (
              <FirstLayoutPanel />
            ) : (
              <SidePanels
                arrangement={isSideBySide && hasTwoStacks ? 'stacked' : 'single'}
                chosen={chosenPanels}
                onChoose={setChosenPanels}
              />
            )}
          </ErrorBoundary>
          <NoticeBar over="panels" />
        </aside>
      ) : null}
    </div>
  )
}

/** What stands between the header and the cautions; each part fails by itself. */
const ScreenShown = (props: { readonly drawing: ReactNode; readonly papers: ReactNode }): ReactElement => {
  const store = useAppStore()
  const screen = useApp((state) => state.view.screen)
  if (screen === 'drawing') return <Workbench drawing={props.drawing} />
  const other = SCREENS.find(({ id }) => id === screen)
  return (
    <ErrorBoundary store={store} part={other === undefined ? 'The papers' : `“${other.words}”`}>
      {other === undefined ? (
        props.papers
      ) : (
        <Suspense fallback={<p className="waiting">One moment…</p>}>
          <other.Content />
        </Suspense>
      )}
    </ErrorBoundary>
  )
}

/** Past the header, to what the page is about. */
const SkipLinks = (props: { readonly isDrawing: boolean }): ReactElement => (
  <div className="skip-links no-print">
    {(props.isDrawing
      ? [
          { href: '#drawing', words: 'Skip to the drawing' },
          { href: '#panels', words: 'Skip to the panels' },
        ]
      : [{ href: '#content', words: 'Skip to the content' }]
    ).map(({ href, words }) => (
      <a
        key={href}
        className="skip-link"
        href={href}
        onClick={(event) => {
          // Not by the address: it belongs to what a link carries.
          event.preventDefault()
          document.querySelector<HTMLElement>(href)?.focus()
        }}
      >
        {words}
      </a>
    ))}
  </div>
)

/** The page around the drawing and the papers: the drawing is the page, everything else stands beside it and never over it. */
export const AppShell = (props: {
  readonly drawing: ReactNode
  readonly papers: ReactNode
}): ReactElement => {
  const isDrawing = useApp((state) => state.view.screen === 'drawing')
  usePageKeys()
  useFocusKept()
  const isFileOver = useFileDrop()
  return (
    <div className="app-shell" data-file-over={isFileOver ? 'true' : undefined}>
      <SkipLinks isDrawing={isDrawing} />
      <Header />
      <UpdateBar />
      {isDrawing ? null : <NoticeBar over="nothing" />}
      <main id="content" tabIndex={-1}>
        <ScreenShown {...props} />
      </main>
      <CautionsStrip />
      <LiveRegion />
    </div>
  )
}
