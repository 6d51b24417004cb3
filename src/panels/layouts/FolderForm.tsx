import { type ReactElement, useId, useState } from 'react'
import { TEXT_LENGTHS } from '../../domain/layout/document/limits'

/** Names a folder, a new one or one of those there are; nothing takes it out of any. */
export const FolderForm = (props: {
  readonly label: string
  readonly button: string
  readonly folders: readonly string[]
  readonly initial?: string
  readonly onFolder: (folder: string) => void
}): ReactElement => {
  const id = useId()
  const [folder, setFolder] = useState(props.initial ?? '')
  return (
    <form
      className="folder-form"
      onSubmit={(event) => {
        event.preventDefault()
        props.onFolder(folder.trim())
      }}
    >
      <label htmlFor={id}>{props.label}</label>
      <input
        id={id}
        list={`${id}-folders`}
        value={folder}
        maxLength={TEXT_LENGTHS.name}
        placeholder="none"
        onChange={({ currentTarget }) => setFolder(currentTarget.value)}
      />
      <datalist id={`${id}-folders`}>
        {props.folders.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <button type="submit">{props.button}</button>
    </form>
  )
}
