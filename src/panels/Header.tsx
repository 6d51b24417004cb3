import type { ReactElement } from 'react'
import { jobWords } from '../domain/layout/wording/variantWords'
import { useActions, useApp } from '../state/react'
import { canRedo, canUndo } from '../state/selectors'
import { Disclosure } from './Disclosure'
import { FileMenu } from './FileMenu'
import { AboutLine } from './help/AboutLine'
import { ScreenMenu } from './ScreenMenu'
import {
  BoardSwitch,
  ElevationSwitch,
  LengthUnitSwitch,
  RuleSetSelect,
  ThemeSwitch,
  ZoneSwitch,
} from './settings'
import { useMediaQuery } from './useMediaQuery'

const HistoryButtons = (): ReactElement => {
  const { undo, redo } = useActions()
  const hasPast = useApp(canUndo)
  const hasFuture = useApp(canRedo)
  const undoLabel = useApp((state) => state.history.past.at(-1)?.label)
  const redoLabel = useApp((state) => state.history.future.at(-1)?.label)
  return (
    <div className="button-pair">
      <button type="button" disabled={!hasPast} onClick={undo} title={undoLabel && `Undo: ${undoLabel}`}>
        Undo
      </button>
      <button type="button" disabled={!hasFuture} onClick={redo} title={redoLabel && `Redo: ${redoLabel}`}>
        Redo
      </button>
    </div>
  )
}

/** The way to the papers; they have their own way back. */
const PapersButton = (): ReactElement | null => {
  const screen = useApp((state) => state.view.screen)
  const { setView } = useActions()
  if (screen === 'papers') return null
  return (
    <button type="button" className="primary" onClick={() => setView({ screen: 'papers' })}>
      Papers
    </button>
  )
}

/** The name of the job, the ways back, the file and what every number is shown in and held against. */
export const Header = (): ReactElement => {
  const jobName = useApp((state) => jobWords(state.layout))
  const isNarrow = useMediaQuery('(max-width: 640px)')
  return (
    <header className="header no-print">
      <div className="title">
        <span className="wordmark">Tabwright</span>
        <h1 title={jobName === '' ? undefined : jobName}>{jobName === '' ? 'Unnamed layout' : jobName}</h1>
      </div>
      <div className="header-tools">
        <HistoryButtons />
        <ScreenMenu />
        <FileMenu />
        <Disclosure words="View" className="view-menu">
          {(close) => (
            <div className="menu-settings">
              {isNarrow ? <RuleSetSelect /> : null}
              <LengthUnitSwitch />
              <BoardSwitch />
              <ElevationSwitch />
              <ZoneSwitch />
              <ThemeSwitch />
              <AboutLine onLeave={close} />
            </div>
          )}
        </Disclosure>
        {isNarrow ? null : <RuleSetSelect />}
        <PapersButton />
      </div>
    </header>
  )
}
