import type { ReactElement } from 'react'
import type { Job, Layout } from '../domain/layout/document/layout'
import { TEXT_LENGTHS } from '../domain/layout/document/limits'
import { notMeasuredTitles, withNotMeasured } from '../domain/layout/firstLayout/notMeasured'
import { agreementOf } from '../domain/layout/agreement/agreement'
import { agreementText } from '../domain/layout/wording/agreementText'
import { continueFirstLayout } from '../state/firstLayout/guideKeeper'
import { useActions, useApp, useAppStore } from '../state/react'
import { SwitchField, ToggleField } from './fields/ChoiceField'
import { TextField } from './fields/TextField'
import { RevisionFields } from './RevisionFields'
import { ToleranceFields } from './ToleranceFields'

const JOB_FIELDS = [
  { key: 'name', words: 'Job' },
  { key: 'car', words: 'Car' },
  { key: 'customer', words: 'Customer' },
  { key: 'date', words: 'Date' },
  { key: 'revision', words: 'Revision' },
  { key: 'preparedBy', words: 'Prepared by' },
  { key: 'notes', words: 'Notes' },
] as const satisfies readonly { key: keyof Omit<Job, 'revisions'>; words: string }[]

const fieldKind = (key: (typeof JOB_FIELDS)[number]['key']): 'line' | 'lines' | 'date' =>
  key === 'notes' ? 'lines' : key === 'date' ? 'date' : 'line'

const MASSES = [
  { value: 'kg', words: 'kg' },
  { value: 'lb', words: 'lb' },
] as const

const MassUnitSwitch = (): ReactElement => {
  const unit = useApp((state) => state.layout.units.mass)
  const { edit } = useActions()
  const withMassUnit =
    (mass: Layout['units']['mass']) =>
    (layout: Layout): Layout => ({ ...layout, units: { ...layout.units, mass } })
  return (
    <SwitchField
      label="Body mass in"
      value={unit}
      choices={MASSES}
      onChange={(mass) => edit(`Show body mass in ${mass}`, withMassUnit(mass))}
    />
  )
}

/** Whether the customer agreed to what is drawn, and the way to the talk. */
const AgreementStatus = (): ReactElement => {
  // Worked out only when the drawing stands still: a fingerprint at every move would hold it up.
  const layout = useApp((state) => state.history.present)
  const { setView } = useActions()
  return (
    <div className="field">
      <p data-testid="job-agreement">{agreementText(agreementOf(layout), layout)}</p>
      <button type="button" onClick={() => setView({ screen: 'customer' })}>
        Talk it over with the customer
      </button>
    </div>
  )
}

/** What still stands where the questions of a first layout started it; nothing where all was measured or chosen. */
const NotMeasured = (): ReactElement | null => {
  const titles = useApp(({ layout }) => notMeasuredTitles(layout).join(' '))
  const store = useAppStore()
  const { edit } = useActions()
  if (titles === '') return null
  return (
    <div className="field" data-testid="not-measured">
      <p>
        <strong>Nobody has measured or chosen yet:</strong> {titles} The papers say so.
      </p>
      <button type="button" onClick={() => continueFirstLayout(store)}>
        Go on with the questions
      </button>
      <button
        type="button"
        onClick={() => edit('Say that all is measured or chosen', (layout) => withNotMeasured(layout, []))}
      >
        All of it is measured or chosen now
      </button>
    </div>
  )
}

/** What the sheet says about the job, where the datum is, and how the car is used. */
export const JobPanel = (): ReactElement => {
  const job = useApp((state) => state.layout.job)
  const datum = useApp((state) => state.layout.datum)
  const isDusty = useApp((state) => state.layout.dustyOrMuddyUse)
  const { edit } = useActions()
  return (
    <section className="panel" aria-label="Job and datum">
      <TextField
        label="Datum"
        kind="lines"
        value={datum}
        maxLength={TEXT_LENGTHS.name}
        hint="The point on the car that every dimension is taken from: one a welder can find and put a tape on, such as a tube crossing."
        onCommit={(value) => edit('Describe the datum', (layout) => ({ ...layout, datum: value }))}
      />
      {JOB_FIELDS.map(({ key, words }) => (
        <TextField
          key={key}
          label={words}
          kind={fieldKind(key)}
          value={job[key]}
          maxLength={key === 'notes' ? TEXT_LENGTHS.notes : TEXT_LENGTHS.name}
          onCommit={(value) =>
            edit(`Change ${words.toLowerCase()}`, (layout) => ({
              ...layout,
              job: { ...layout.job, [key]: value },
            }))
          }
        />
      ))}
      <NotMeasured />
      <RevisionFields />
      <AgreementStatus />
      <ToggleField
        label="Used in dust or mud"
        checked={isDusty}
        hint="Some advice about buckles speaks only then."
        onChange={(checked) =>
          edit(checked ? 'Mark as used in dust or mud' : 'Mark as not used in dust or mud', (layout) => ({
            ...layout,
            dustyOrMuddyUse: checked,
          }))
        }
      />
      <ToleranceFields />
      <MassUnitSwitch />
    </section>
  )
}
