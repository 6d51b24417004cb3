import type { ReactElement } from 'react'
import { entriesMissingIn, withMissingEntries } from '../../domain/layout/edit/asWelded'
import {
  entryName,
  goneText,
  offBarText,
  otherRulesText,
  replannedText,
} from '../../domain/layout/wording/weldedWords'
import { otherVariantText } from '../../domain/layout/wording/variantWords'
import { useActions } from '../../state/react'
import type { WeldedView } from './useWelded'

/** What of a record and the plan does not go together any more, and bars that are not where they were planned. */
export const RecordNotes = (props: { readonly view: WeldedView }): ReactElement | null => {
  const { layout, record, measured } = props.view
  const { edit } = useActions()
  const notes = [
    ...measured.anchors.flatMap((anchor) => [offBarText(anchor, layout), replannedText(anchor)]),
    ...measured.gone.map((entry) => goneText(entry, layout)),
    otherRulesText(record, layout),
    otherVariantText(record, layout),
  ].flatMap((text) => (text === null ? [] : [text]))
  const missing = entriesMissingIn(layout, record)
  if (notes.length === 0 && missing.length === 0) return null
  return (
    <div className="problems" data-testid="welded-notes">
      {notes.map((text) => (
        <p key={text}>{text}</p>
      ))}
      {missing.length === 0 ? null : (
        <p>
          Planned after this record was begun: {missing.map((entry) => entryName(entry, layout)).join(', ')}.
        </p>
      )}
      {missing.length === 0 || record.signed !== undefined ? null : (
        <button
          type="button"
          onClick={() =>
            edit('Take new anchors into the record', (now) => withMissingEntries(now, record.id))
          }
        >
          Take them into this record
        </button>
      )}
    </div>
  )
}
