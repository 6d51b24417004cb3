import { useState, type ReactElement } from 'react'
import { TEXT_LENGTHS } from '../../domain/layout/document/limits'
import { withSignature } from '../../domain/layout/edit/asWelded'
import { isCalendarDate } from '../../domain/units/calendarDate'
import { useActions } from '../../state/react'
import { today } from '../../state/today'
import { TextField } from '../fields/TextField'
import type { WeldedView } from './useWelded'

/** What is still missing for a signature, in words; null when it can be given. */
const missingWords = (name: string, date: string): string | null => {
  if (name.trim() === '') return 'Type the name of who signs.'
  return isCalendarDate(date) ? null : 'Pick the day of the signature.'
}

/** Closes a record for good, by name and day. Nothing has to be measured for that: what was not is said on the page. */
export const SignRecord = (props: { readonly view: WeldedView }): ReactElement => {
  const { record, deviations } = props.view
  const { edit } = useActions()
  const [name, setName] = useState('')
  const [date, setDate] = useState(today)
  const missing = missingWords(name, date)
  const open = deviations.filter(({ verdict }) => verdict === 'not-measured' || verdict === 'cannot-be-told')
  return (
    <fieldset className="editor sign">
      <legend>Sign and close</legend>
      <p className="hint">
        A signed record is never changed again, not even by whoever signed it. What is measured later goes
        into another record. Only Undo takes a signature back, as long as this page stays open.
      </p>
      {open.length === 0 ? null : (
        <p className="caution">
          {open.length === 1 ? 'One anchor is' : `${open.length} anchors are`} not measured, or not well
          enough to tell. The record will say so.
        </p>
      )}
      <div className="field-grid">
        <TextField label="Signed by" value={name} maxLength={TEXT_LENGTHS.name} onCommit={setName} />
        <TextField label="Date" kind="date" value={date} maxLength={TEXT_LENGTHS.name} onCommit={setDate} />
      </div>
      <button
        type="button"
        className="primary"
        disabled={missing !== null}
        aria-describedby="sign-missing"
        onClick={() =>
          edit('Sign the as-welded record', (layout) => withSignature(layout, record.id, { name, date }))
        }
      >
        Sign and close
      </button>
      <p id="sign-missing" className="hint">
        {missing ?? ''}
      </p>
    </fieldset>
  )
}
