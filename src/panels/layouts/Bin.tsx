import { type ReactElement, useState } from 'react'
import { ModalDialog } from '../share/ModalDialog'
import { countText, entryName, removedText } from './cardWords'
import type { Entry } from './entries'
import type { ShelfActions } from './useShelfActions'

const EmptyDialog = (props: {
  readonly entries: readonly Entry[]
  readonly onRemove: () => void
  readonly onClose: () => void
}): ReactElement => (
  <ModalDialog title="Empty the bin" onClose={props.onClose}>
    <p>
      {countText(props.entries.length)} would be gone from this device for good. Nothing brings them back but
      a file or a link that you have of them.
    </p>
    <ul className="plain-list">
      {props.entries.map((entry) => (
        <li key={entry.id}>{entryName(entry)}</li>
      ))}
    </ul>
    <div className="button-row">
      <button type="button" onClick={props.onClose}>
        Keep them
      </button>
      <button type="button" onClick={props.onRemove}>
        Remove for good
      </button>
    </div>
  </ModalDialog>
)

/** What was removed: still there until the bin is emptied, and put back with one press. */
export const Bin = (props: {
  readonly entries: readonly Entry[]
  readonly actions: ShelfActions
}): ReactElement | null => {
  const { entries, actions } = props
  const [isAsking, setAsking] = useState(false)
  if (entries.length === 0) return null
  return (
    <section className="layout-bin" aria-labelledby="layout-bin-title">
      <h3 id="layout-bin-title">Removed layouts</h3>
      <ul aria-label="Removed layouts">
        {entries.map((entry) => (
          <li key={entry.id}>
            <span>
              {entryName(entry)} <small>{removedText(entry)}</small>
            </span>
            <button type="button" onClick={() => void actions.putBack([entry.id])}>
              Put back<span className="visually-hidden"> {entryName(entry)}</span>
            </button>
          </li>
        ))}
      </ul>
      <button type="button" onClick={() => setAsking(true)}>
        Empty the bin…
      </button>
      {isAsking ? (
        <EmptyDialog
          entries={entries}
          onClose={() => setAsking(false)}
          onRemove={() => {
            setAsking(false)
            void actions.removeForGood(entries)
          }}
        />
      ) : null}
    </section>
  )
}
