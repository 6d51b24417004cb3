import type { ReactElement } from 'react'
import type { AsWeldedRecord } from '../../domain/measure/asWeldedRecord'
import { COUNTS } from '../../domain/layout/document/limits'
import { toleranceOf } from '../../domain/layout/asWelded/deviation'
import { addRecord, removeRecord } from '../../domain/layout/edit/asWelded'
import { deviationWords } from '../../domain/layout/wording/weldedWords'
import { toleranceText } from '../../domain/layout/wording/toleranceText'
import { pageWelded } from '../../state/welded/pageWelded'
import { useActions, useApp } from '../../state/react'
import { ChoiceField } from '../fields/ChoiceField'
import { AnchorIntake } from './AnchorIntake'
import { RecordFields } from './RecordFields'
import { SignRecord } from './SignRecord'
import { useShownRecord, useWelded, useWeldedInView, type WeldedView } from './useWelded'
import { WeldedFindings } from './WeldedFindings'
import { RecordNotes } from './RecordNotes'

const ABOUT =
  'After welding, measure every anchor on the car. What was measured is held beside the plan and all findings are worked out again with it; the plan itself is never changed by it.'

/** Records of what was really welded: measuring in, deviations, findings of the real car, signature. */
export const WeldedPanel = (): ReactElement => {
  useWeldedInView()
  const record = useShownRecord()
  return (
    <section className="panel welded" aria-label="As welded">
      <RecordChooser shown={record} />
      {record === null ? <p className="hint">{ABOUT}</p> : <OneRecord key={record.id} record={record} />}
    </section>
  )
}

const recordWords = (record: AsWeldedRecord): string => {
  const state = record.signed === undefined ? 'open' : `signed ${record.signed.date}`
  const name = record.name.trim() === '' ? record.id : record.name.trim()
  return `${name} (${state})`
}

const RecordChooser = (props: { readonly shown: AsWeldedRecord | null }): ReactElement => {
  const records = useApp((state) => state.layout.asWelded)
  const { edit } = useActions()
  const all = records ?? []
  const begin = (): void => {
    // The newest is shown while none is picked.
    pageWelded.view.setState({ recordId: null, anchorId: null })
    edit('Begin a record of what was welded', addRecord)
  }
  return (
    <div className="group-head">
      {props.shown === null ? (
        <p>Nothing was measured on the car yet.</p>
      ) : (
        <ChoiceField
          label="Record"
          value={props.shown.id}
          choices={all.map((record) => ({ value: record.id, words: recordWords(record) }))}
          testId="welded-record"
          onChange={(recordId) => pageWelded.view.setState({ recordId, anchorId: null })}
        />
      )}
      <button type="button" disabled={all.length >= COUNTS.asWelded.max} onClick={begin}>
        {all.length === 0 ? 'Begin a record' : 'Begin another record'}
      </button>
    </div>
  )
}

/** Everything about one record, in the order of the work. */
const OneRecord = (props: { readonly record: AsWeldedRecord }): ReactElement => {
  const { record } = props
  const view = useWelded(record)
  const { setView, edit } = useActions()
  return (
    <>
      {record.signed === undefined ? null : (
        <p className="signed" data-testid="welded-signed">
          Signed by {record.signed.name} on {record.signed.date}. Nothing in this record can be changed any
          more; begin another one to measure again.
        </p>
      )}
      <Summary view={view} />
      <ul className="entries">
        {view.deviations.map((deviation) => {
          const { placeId, anchorId } = deviation.reading.entry
          return (
            <li key={`${placeId}/${anchorId}`}>
              <AnchorIntake view={view} deviation={deviation} />
            </li>
          )
        })}
      </ul>
      <RecordNotes view={view} />
      <WeldedFindings view={view} />
      <RecordFields record={record} />
      <div className="button-row">
        <button type="button" onClick={() => setView({ screen: 'papers', paperKind: 'as-welded' })}>
          Record page
        </button>
        {record.signed === undefined ? (
          <button
            type="button"
            onClick={() => edit(`Remove ${recordWords(record)}`, (layout) => removeRecord(layout, record.id))}
          >
            Remove this record
          </button>
        ) : null}
      </div>
      {record.signed === undefined ? <SignRecord view={view} /> : null}
    </>
  )
}

/** How many are measured and how they came out, and what they are held against. */
const Summary = (props: { readonly view: WeldedView }): ReactElement => {
  const { layout, record, deviations } = props.view
  const allowed = toleranceOf(layout, record)
  const verdicts = (['outside', 'cannot-be-told', 'within', 'no-tolerance', 'not-measured'] as const).flatMap(
    (verdict) => {
      const count = deviations.filter((deviation) => deviation.verdict === verdict).length
      return count === 0 ? [] : [`${count} ${deviationWords(verdict)}`]
    },
  )
  const angleless = deviations.filter(
    ({ verdict, areAnglesUnmeasured }) => verdict === 'within' && areAnglesUnmeasured,
  ).length
  return (
    <div className="welded-summary">
      <p data-testid="welded-summary">
        {deviations.length === 0 ? 'The layout has no anchors to measure.' : verdicts.join(' · ')}
      </p>
      {angleless === 0 ? null : (
        <p className="hint" data-testid="welded-angleless">
          {`Of those within tolerance ${angleless} only by ${angleless === 1 ? 'its' : 'their'} position: not all angles of the tab were measured.`}
        </p>
      )}
      <p className="hint">
        {allowed === undefined
          ? 'No tolerance is typed (Job, Weld and measuring error), so deviations are only shown and not judged.'
          : `Held against the typed tolerance: ${toleranceText(allowed, layout.units.length)}.`}
      </p>
    </div>
  )
}
