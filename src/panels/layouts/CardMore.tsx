import type { ReactElement } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import { TEXT_LENGTHS } from '../../domain/layout/document/limits'
import { layoutText } from '../../domain/layout/document/layoutText'
import { download, layoutFileName } from '../../state/files'
import { startFromPattern } from '../../state/firstLayout/guideKeeper'
import { useAppStore } from '../../state/react'
import { TextField } from '../fields/TextField'
import { entryName } from './cardWords'
import type { Entry } from './entries'
import { FolderForm } from './FolderForm'
import type { ShelfActions } from './useShelfActions'

interface Props {
  readonly entry: Entry
  readonly folders: readonly string[]
  readonly actions: ShelfActions
}

const OfLayout = (props: Props & { readonly layout: Layout }): ReactElement => {
  const store = useAppStore()
  const { entry, layout, actions } = props
  return (
    <>
      <div className="button-row">
        <button type="button" onClick={() => void actions.duplicate([entry])}>
          Duplicate
        </button>
        <button type="button" onClick={() => startFromPattern(store, layout)}>
          Start a similar car
        </button>
        <button type="button" onClick={() => actions.share(layout)}>
          Share…
        </button>
        <button type="button" onClick={() => download(layoutText(layout), layoutFileName(layout))}>
          Save to a file
        </button>
      </div>
      {entry.isOpenElsewhere ? (
        <p className="hint">It is called otherwise in the tab that has it open.</p>
      ) : (
        <TextField
          label="Job name"
          value={entry.job.name}
          maxLength={TEXT_LENGTHS.name}
          onCommit={(name) => void actions.rename(entry, name)}
        />
      )}
    </>
  )
}

/** Everything that can be done with one kept layout but opening it. `layout` is null while it is not read and where it is damaged. */
export const CardMore = (props: Props & { readonly layout: Layout | null }): ReactElement => {
  const { entry, layout, folders, actions } = props
  return (
    <details className="layout-more">
      <summary>
        More<span className="visually-hidden"> for {entryName(entry)}</span>
      </summary>
      <div className="layout-more-body">
        {layout === null ? (
          <button type="button" onClick={() => download(entry.text, 'damaged-copy.layout.json')}>
            Save its text to a file
          </button>
        ) : (
          <OfLayout {...props} layout={layout} />
        )}
        <FolderForm
          key={entry.folder}
          label="Folder"
          button="Move"
          folders={folders}
          initial={entry.folder}
          onFolder={(folder) => void actions.moveToFolder([entry], folder)}
        />
        <button
          type="button"
          disabled={entry.isOpenElsewhere}
          onClick={() => void actions.putIntoBin([entry])}
        >
          Remove
        </button>
      </div>
    </details>
  )
}
