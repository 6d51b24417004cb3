import type { ReactElement } from 'react'
import { countText } from './cardWords'
import type { Entry } from './entries'
import { FolderForm } from './FolderForm'
import type { ShelfActions } from './useShelfActions'

/** What can be done with several layouts at once; nothing while none is chosen. */
export const ChosenBar = (props: {
  readonly chosen: readonly Entry[]
  readonly folders: readonly string[]
  readonly actions: ShelfActions
  readonly onNone: () => void
}): ReactElement | null => {
  const { chosen, folders, actions, onNone } = props
  if (chosen.length === 0) return null
  return (
    <section className="chosen-bar" aria-label="Chosen layouts">
      <strong>{countText(chosen.length)} chosen</strong>
      <FolderForm
        label="Folder"
        button="Move them"
        folders={folders}
        onFolder={(folder) => void actions.moveToFolder(chosen, folder).then(onNone)}
      />
      <div className="button-row">
        <button type="button" onClick={() => void actions.duplicate(chosen).then(onNone)}>
          Duplicate them
        </button>
        <button type="button" onClick={() => void actions.putIntoBin(chosen).then(onNone)}>
          Remove them
        </button>
        <button type="button" onClick={onNone}>
          Choose none
        </button>
      </div>
    </section>
  )
}
