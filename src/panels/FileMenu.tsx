import { useEffect, useState, type ReactElement } from 'react'
import { emptyLayout } from '../domain/layout/document/empty'
import {
  download,
  exampleList,
  openExample,
  openLayoutFile,
  saveLayoutFile,
  type ExampleEntry,
} from '../state/files'
import { useActions, useApp, useAppStore } from '../state/react'
import { Disclosure } from './Disclosure'
import { FileButton } from './FileButton'
import { RecoveredLayouts } from './RecoveredLayouts'

type Examples = readonly ExampleEntry[] | 'loading' | 'missing'

const ExampleChoices = (props: { readonly onDone: () => void }): ReactElement => {
  const store = useAppStore()
  const [examples, setExamples] = useState<Examples>('loading')
  useEffect(() => {
    let isWanted = true
    void exampleList().then((list) => {
      if (isWanted) setExamples(list ?? 'missing')
    })
    return () => {
      isWanted = false
    }
  }, [])
  if (examples === 'loading') return <p className="hint">Loading the list of examples…</p>
  if (examples === 'missing')
    return (
      <p className="hint">The examples could not be loaded. Close this menu and open it again to retry.</p>
    )
  return (
    <ul className="menu-list">
      {examples.map((example) => (
        <li key={example.file}>
          <button type="button" onClick={() => void openExample(store, example).then(props.onDone)}>
            <strong>{example.title}</strong>
            <small>{example.about}</small>
          </button>
        </li>
      ))}
    </ul>
  )
}

export const FileMenu = (): ReactElement => {
  const store = useAppStore()
  const actions = useActions()
  const setAside = useApp((state) => state.setAside)
  const save = async (): Promise<void> => {
    const isSaved = await saveLayoutFile(store.state.getState().history.present)
    if (isSaved)
      actions.notify('info', 'The layout file is saved. Everything in it can be opened again from here.')
  }
  return (
    <Disclosure words="File" className="file-menu">
      {(close) => (
        <>
          <ul className="menu-list">
            <li>
              <button
                type="button"
                onClick={() => {
                  actions.openLayout(emptyLayout(), 'Start a new layout')
                  close()
                }}
              >
                New layout
              </button>
            </li>
            <li>
              <FileButton
                words="Open a file…"
                label="Layout file to open"
                testId="open-file"
                onPick={(file) => openLayoutFile(store, file).then(close)}
              />
            </li>
            <li>
              <button type="button" onClick={() => void save().then(close)}>
                Save to a file
              </button>
            </li>
            {setAside === null ? null : (
              <li>
                <button type="button" onClick={() => download(setAside, 'damaged-copy.layout.json')}>
                  Save the damaged copy
                </button>
              </li>
            )}
          </ul>
          <RecoveredLayouts onDone={close} />
          <h2 className="menu-heading">Examples</h2>
          <ExampleChoices onDone={close} />
        </>
      )}
    </Disclosure>
  )
}
