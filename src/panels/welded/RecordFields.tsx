import type { ReactElement } from 'react'
import type { AsWeldedRecord } from '../../domain/measure/asWeldedRecord'
import { TEXT_LENGTHS } from '../../domain/layout/document/limits'
import { withRecord } from '../../domain/layout/edit/asWelded'
import { useActions } from '../../state/react'
import { TextField } from '../fields/TextField'

const FIELDS = [
  { key: 'name', words: 'Name of the record', kind: 'line' },
  { key: 'date', words: 'Measured on', kind: 'date' },
  { key: 'measuredBy', words: 'Measured by', kind: 'line' },
  { key: 'plannedRevision', words: 'Welded from revision', kind: 'line' },
  { key: 'notes', words: 'Notes on the measuring', kind: 'lines' },
] as const

/** What is said of a record as a whole; only read once it is signed. */
export const RecordFields = (props: { readonly record: AsWeldedRecord }): ReactElement => {
  const { record } = props
  const { edit } = useActions()
  if (record.signed !== undefined)
    return (
      <dl className="record-facts">
        {FIELDS.filter(({ key }) => record[key].trim() !== '').map(({ key, words }) => (
          <div key={key}>
            <dt>{words}</dt>
            <dd>{record[key]}</dd>
          </div>
        ))}
      </dl>
    )
  return (
    <details className="editor" open={record.date === '' && record.measuredBy === ''}>
      <summary>Who measured, and when</summary>
      {FIELDS.map(({ key, words, kind }) => (
        <TextField
          key={key}
          label={words}
          kind={kind}
          value={record[key]}
          maxLength={kind === 'lines' ? TEXT_LENGTHS.notes : TEXT_LENGTHS.name}
          onCommit={(value) =>
            edit(`Change ${words.toLowerCase()}`, (layout) => withRecord(layout, record.id, { [key]: value }))
          }
        />
      ))}
    </details>
  )
}
