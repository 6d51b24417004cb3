import { useState, type ReactElement, type ReactNode } from 'react'
import { useApp, useAppStore } from '../state/react'
import { CautionsStrip } from './CautionsStrip'
import { ErrorBoundary } from './ErrorBoundary'
import { Header } from './Header'
import { LiveRegion, NoticeBar } from './Messages'
import { PlaceBar } from './PlaceBar'
import { FIRST_PANELS, SidePanels } from './SidePanels'
import { useMediaQuery } from './useMediaQuery'
import { useFileDrop, usePageKeys } from './usePageEvents'
import { ZoneStatus } from './ZoneStatus'

/** Beside each other from here on; narrower, the panels go below the drawing. Kept equal to the query in shell.css. */
const SIDE_BY_SIDE = '(min-width: 900px), (min-width: 640px) and (orientation: landscape)'
const ROOM_FOR_TWO_STACKS = '(min-width: 1200px) and (min-height: 760px)'

const Workbench = (props: { readonly drawing: ReactNode }): ReactElement => {
  const store = useAppStore()
  const [arePanelsOpen, setPanelsOpen] = useState(true)
  // Kept here so that hiding the panels or turning the tablet forgets nothing.
  const [chosenPanels, setChosenPanels] = useState(FIRST_PANELS)
  const isSideBySide = useMediaQuery(SIDE_BY_SIDE)
  const hasTwoStacks = useMediaQuery(ROOM_FOR_TWO_STACKS)
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
        <ZoneStatus />
        <div className="board-drawing">
          <ErrorBoundary store={store} part="The drawing">
            {props.drawing}
          </ErrorBoundary>
          {arePanelsOpen ? null : <NoticeBar over="drawing" />}
        </div>
      </section>
      {arePanelsOpen ? (
        <aside className="side" aria-label="Panels" id="panels" tabIndex={-1}>
          <ErrorBoundary store={store} part="The panels">
            <SidePanels
              arrangement={isSideBySide && hasTwoStacks ? 'stacked' : 'single'}
              chosen={chosenPanels}
              onChoose={setChosenPanels}
            />
          </ErrorBoundary>
          <NoticeBar over="panels" />
        </aside>
      ) : null}
    </div>
  )
}

/** The page around the drawing and the papers: the drawing is the page, everything else stands beside it and never over it. */
export const AppShell = (props: {
  readonly drawing: ReactNode
  readonly papers: ReactNode
}): ReactElement => {
  const store = useAppStore()
  const screen = useApp((state) => state.view.screen)
  usePageKeys()
  const isFileOver = useFileDrop()
  return (
    <div className="app-shell" data-file-over={isFileOver ? 'true' : undefined}>
      <a className="skip-link no-print" href="#panels">
        Skip to the panels
      </a>
      <Header />
      {screen === 'papers' ? <NoticeBar over="nothing" /> : null}
      <main>
        {screen === 'papers' ? (
          <ErrorBoundary store={store} part="The papers">
            {props.papers}
          </ErrorBoundary>
        ) : (
          <Workbench drawing={props.drawing} />
        )}
      </main>
      <CautionsStrip />
      <LiveRegion />
    </div>
  )
}
