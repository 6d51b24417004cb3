import type { ReactElement } from 'react'
import type { Revision } from '../domain/layout/document/layout'
import { COUNTS, TEXT_LENGTHS } from '../domain/layout/document/limits'
import { withoutRevision, withRevision, withRevisionAdded } from '../domain/layout/edit/changeRevisions'
import { useActions, useApp } from '../state/react'
import { TextField } from './fields/TextField'

const RevisionRow = (props: { readonly revision: Revision; readonly index: number }): ReactElement => {
  const { revision, index } = props
  const { edit } = useActions()
  const line = `Line ${index + 1}`
  const set = (words: string, patch: Partial<Revision>): void =>
    edit(`Change ${words} of a revision`, (layout) => withRevision(layout, index, patch))
  return (
    <div className="field-block" role="group" aria-label={`Revision history, line ${index + 1}`}>
      <div className="field-row">
        <TextField
          label={`${line}: revision`}
          value={revision.revision}
          maxLength={TEXT_LENGTHS.name}
          onCommit={(value) => set('the letter', { revision: value })}
        />
        <TextField
          label={`${line}: date`}
          kind="date"
          value={revision.date}
          maxLength={TEXT_LENGTHS.name}
          onCommit={(value) => set('the date', { date: value })}
        />
        <TextField
          label={`${line}: by`}
          value={revision.by}
          maxLength={TEXT_LENGTHS.name}
          onCommit={(value) => set('the name', { by: value })}
        />
      </div>
      <TextField
        label={`${line}: what was changed`}
        value={revision.change}
        maxLength={TEXT_LENGTHS.change}
        onCommit={(value) => set('the words', { change: value })}
      />
      <button
        type="button"
        onClick={() =>
          edit('Take out a line of the revision history', (layout) => withoutRevision(layout, index))
        }
      >
        Take out line {index + 1}
      </button>
    </div>
  )
}

/** What was changed from one revision to the next, as the mount sheet prints it. */
export const RevisionFields = (): ReactElement => {
  const revisions = useApp((state) => state.layout.job.revisions)
  const { edit } = useActions()
  return (
    <fieldset>
      <legend>Revision history</legend>
      {(revisions ?? []).map((revision, index) => (
        // Lines have no id and keep their order: they are told apart by where they stand.
        <RevisionRow key={index} revision={revision} index={index} />
      ))}
      <button
        type="button"
        disabled={(revisions ?? []).length >= COUNTS.revisions.max}
        onClick={() => edit('Add a line to the revision history', withRevisionAdded)}
      >
        Add a line for this revision
      </button>
      <p className="hint">
        A line starts with the revision, date and name above. Print again after each change, and take the old
        sheet out of the shop.
      </p>
    </fieldset>
  )
}
