import { useEffect, useState, type ReactElement } from 'react'
import type { Layout } from '../domain/layout/document/layout'
import { emptyLayout } from '../domain/layout/document/empty'
import { download } from '../state/files'
import { continueFirstLayout, startFirstLayout } from '../state/firstLayout/guideKeeper'
import { linkedFileName, save, saveAs } from '../state/linkedFile'
import { useActions, useApp, useAppStore } from '../state/react'
import { Disclosure } from './Disclosure'
import { OpenFileButton } from './OpenFileButton'
import { ShareDialog } from './share/ShareDialog'

/** The name of the file that the open document goes back to; null: none, or not known yet. */
const useLinkedFile = (): string | null => {
  const documentId = useApp((state) => state.documentId)
  const [linked, setLinked] = useState<{ readonly documentId: string; readonly name: string | null }>()
  useEffect(() => {
    let isWanted = true
    void linkedFileName(documentId).then((name) => {
      if (isWanted) setLinked({ documentId, name })
    })
    return () => {
      isWanted = false
    }
  }, [documentId])
  return linked?.documentId === documentId ? linked.name : null
}

const SaveEntries = (props: { readonly onDone: () => void }): ReactElement => {
  const store = useAppStore()
  const fileName = useLinkedFile()
  if (fileName === null)
    return (
      <li>
        <button type="button" onClick={() => void saveAs(store).then(props.onDone)}>
          Save to a file
        </button>
      </li>
    )
  return (
    <>
      <li>
        <button type="button" onClick={() => void save(store).then(props.onDone)}>
          <strong>Save</strong>
          <small>to {fileName}</small>
        </button>
      </li>
      <li>
        <button type="button" onClick={() => void saveAs(store).then(props.onDone)}>
          Save as…
        </button>
      </li>
    </>
  )
}

const Entry = (props: {
  readonly words: string
  readonly about?: string
  readonly onChoose: () => void
}): ReactElement => (
  <li>
    <button type="button" onClick={props.onChoose}>
      {props.about === undefined ? props.words : <strong>{props.words}</strong>}
      {props.about === undefined ? null : <small>{props.about}</small>}
    </button>
  </li>
)

const MenuEntries = (props: {
  readonly onDone: () => void
  readonly onShare: (layout: Layout) => void
}): ReactElement => {
  const store = useAppStore()
  const { openLayout, setView } = useActions()
  const setAside = useApp((state) => state.setAside)
  const { onDone } = props
  const after = (act: () => void) => (): void => {
    act()
    onDone()
  }
  return (
    <ul className="menu-list">
      <Entry
        words="Layouts"
        about="all that is kept on this device, and examples"
        onChoose={after(() => setView({ screen: 'layouts' }))}
      />
      <Entry
        words="New layout"
        onChoose={after(() => {
          openLayout(emptyLayout(), 'Start a new layout')
          setView({ screen: 'drawing', side: 'panels' })
        })}
      />
      <Entry
        words="Answer questions"
        about="begin with nothing, in the order a car is measured"
        onChoose={after(() => startFirstLayout(store))}
      />
      <Entry
        words="Questions of this layout"
        about="what was answered, and what nobody has measured yet"
        onChoose={after(() => continueFirstLayout(store))}
      />
      <li>
        <OpenFileButton testId="open-file" onDone={onDone} />
      </li>
      <SaveEntries onDone={onDone} />
      <Entry
        words="Share…"
        about="a link or a QR code that holds all of it"
        onChoose={after(() => props.onShare(store.state.getState().history.present))}
      />
      {setAside === null ? null : (
        <Entry
          words="Save the damaged copy"
          onChoose={() => download(setAside, 'damaged-copy.layout.json')}
        />
      )}
    </ul>
  )
}

/** Short: what is done with the open layout as a whole, and the way to all the others. */
export const FileMenu = (): ReactElement => {
  const [shared, setShared] = useState<Layout | null>(null)
  return (
    <>
      <Disclosure words="File" className="file-menu">
        {(close) => <MenuEntries onDone={close} onShare={setShared} />}
      </Disclosure>
      {shared === null ? null : <ShareDialog layout={shared} onClose={() => setShared(null)} />}
    </>
  )
}
