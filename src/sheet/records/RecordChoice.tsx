import type { ReactElement } from 'react'
import { useApp, useKept } from '../../state/react'
import { pageWelded } from '../../state/welded/pageWelded'
import { shownRecord } from '../../state/welded/weldedCheck'
import type { WeldedPapers } from './useWeldedPapers'

/** Which record is looked at, where the layout has several. */
export const RecordChoice = (): ReactElement | null => {
  const records = useApp((state) => state.layout.asWelded)
  const { recordId } = useKept(pageWelded.view)
  if (records === undefined || records.length < 2) return null
  const shown = shownRecord({ asWelded: records }, recordId)
  return (
    <fieldset>
      <legend>Record</legend>
      {records.map((record) => (
        <button
          key={record.id}
          type="button"
          aria-pressed={record.id === shown?.id}
          onClick={() => pageWelded.view.setState({ recordId: record.id, anchorId: null })}
        >
          {record.name.trim() === '' ? record.id : record.name}
        </button>
      ))}
    </fieldset>
  )
}

/** In place of a record's page while the findings of the car are worked out: what is waited for, or the ways on. */
export const RecordWaiting = ({ welded }: { readonly welded: WeldedPapers }): ReactElement =>
  welded.failure === null ? (
    <p className="waiting" role="status">
      Working out the findings of the car as welded…
    </p>
  ) : (
    <div className="waiting" role="alert">
      <p>
        The findings of the car as welded could not be worked out in the background (
        {welded.failure.replace(/\.$/, '')}).
      </p>
      <button type="button" onClick={welded.tryAgain}>
        Try again
      </button>{' '}
      <button type="button" onClick={welded.workOutHere}>
        Work it out here
      </button>
    </div>
  )
