import type { ReactElement } from 'react'
import { TEXT_LENGTHS } from '../../domain/layout/document/limits'
import { TextField } from '../fields/TextField'
import { countText } from './cardWords'
import { byFolder, type Entry } from './entries'
import { LayoutCard } from './LayoutCard'
import type { ShelfActions } from './useShelfActions'

const FolderHead = (props: {
  readonly folder: string
  readonly count: number
  /** Everything in the folder, what the search leaves out and what lies in the bin too. */
  readonly all: readonly Entry[]
  readonly actions: ShelfActions
}): ReactElement => (
  <div className="folder-head">
    <h3>
      {props.folder} <small>{countText(props.count)}</small>
    </h3>
    <details className="layout-more">
      <summary>
        Rename<span className="visually-hidden"> the folder {props.folder}</span>
      </summary>
      <TextField
        label="Folder name"
        value={props.folder}
        maxLength={TEXT_LENGTHS.name}
        hint="The name of another folder puts both together; nothing takes all of it out."
        onCommit={(name) => void props.actions.moveToFolder(props.all, name.trim())}
      />
    </details>
  </div>
)

/** The layouts in their folders; those in none come first, under no heading. */
export const Folders = (props: {
  readonly entries: readonly Entry[]
  readonly all: readonly Entry[]
  readonly chosenIds: ReadonlySet<string>
  readonly onChosen: (ids: ReadonlySet<string>) => void
  readonly folders: readonly string[]
  readonly actions: ShelfActions
}): ReactElement => {
  const { entries, all, chosenIds, onChosen, folders, actions } = props
  const choose = (id: string, isChosen: boolean): void => {
    const others = [...chosenIds].filter((other) => other !== id)
    onChosen(new Set(isChosen ? [...others, id] : others))
  }
  return (
    <>
      {byFolder(entries).map((group) => (
        <section
          key={group.folder}
          aria-label={group.folder === '' ? 'In no folder' : `Folder ${group.folder}`}
        >
          {group.folder === '' ? null : (
            <FolderHead
              folder={group.folder}
              count={group.entries.length}
              all={all.filter(({ folder }) => folder === group.folder)}
              actions={actions}
            />
          )}
          <ul
            className="layout-cards"
            aria-label={group.folder === '' ? 'Layouts' : `Layouts in ${group.folder}`}
          >
            {group.entries.map((entry) => (
              <LayoutCard
                key={entry.id}
                entry={entry}
                folders={folders}
                isChosen={chosenIds.has(entry.id)}
                onChoose={(isChosen) => choose(entry.id, isChosen)}
                actions={actions}
              />
            ))}
          </ul>
        </section>
      ))}
    </>
  )
}
