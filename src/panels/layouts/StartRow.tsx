import type { ReactElement } from 'react'
import { emptyLayout } from '../../domain/layout/document/empty'
import { startFirstLayout } from '../../state/firstLayout/guideKeeper'
import { useActions, useAppStore } from '../../state/react'
import { OpenFileButton } from '../OpenFileButton'

/** The ways to a layout that is not here yet. */
export const StartRow = (): ReactElement => {
  const store = useAppStore()
  const { openLayout, setView } = useActions()
  return (
    <div className="button-row layout-start">
      <button
        type="button"
        onClick={() => {
          openLayout(emptyLayout(), 'Start a new layout')
          setView({ screen: 'drawing', side: 'panels' })
        }}
      >
        New layout
      </button>
      <button type="button" onClick={() => startFirstLayout(store)}>
        Answer questions
      </button>
      <OpenFileButton testId="open-file-here" />
    </div>
  )
}
