import { useMemo, type ReactElement } from 'react'
import { bodyOf } from '../domain/body/body'
import { BODY_MEASURES, type BodyMeasure, type Occupant, type Sex } from '../domain/body/occupant'
import { STUDENT_TEMPLATE_MEASURES } from '../domain/body/template'
import type { Place } from '../domain/layout/document/layout'
import { LIMITS, MEASURE_LIMITS, TEXT_LENGTHS } from '../domain/layout/document/limits'
import { addOccupant, removeOccupant, withOccupant } from '../domain/layout/edit/change'
import { tenthsText } from '../domain/units/numberText'
import { useActions, useApp } from '../state/react'
import { currentPlace, lengthUnitOf } from '../state/selectors'
import type { Change } from './change'
import { SwitchField, type Choice } from './fields/ChoiceField'
import { lengthFormat, massFormat } from './fields/formats'
import { AngleField, LengthField } from './fields/LengthField'
import { NumberField } from './fields/NumberField'
import { TextField } from './fields/TextField'
import { measureWords } from './measureWords'

const SEXES: readonly Choice<Sex>[] = [
  { value: 'female', words: 'Female' },
  { value: 'male', words: 'Male' },
]

const SurveyFields = (props: {
  readonly occupant: Occupant
  readonly change: Change<Occupant>
}): ReactElement => {
  const { occupant, change } = props
  const massUnit = useApp((state) => state.layout.units.mass)
  return (
    <>
      <SwitchField
        label="Sex in the survey"
        value={occupant.sex}
        choices={SEXES}
        onChange={(sex) => change('the sex', { sex })}
      />
      <div className="field-row">
        <LengthField
          label="Stature"
          value={occupant.statureMm}
          limits={LIMITS.statureMm}
          onCommit={(statureMm) => change('the stature', { statureMm })}
        />
        <NumberField
          label="Mass"
          value={occupant.massKg}
          format={massFormat(massUnit)}
          limits={LIMITS.massKg}
          onCommit={(massKg) => change('the mass', { massKg })}
        />
      </div>
    </>
  )
}

const without = (measured: Occupant['measured'], measure: BodyMeasure): Occupant['measured'] => {
  const { [measure]: _removed, ...rest } = measured
  return rest
}

const MeasureField = (props: {
  readonly measure: BodyMeasure
  readonly occupant: Occupant
  readonly change: Change<Occupant>
}): ReactElement => {
  const { measure, occupant, change } = props
  const unit = useApp(lengthUnitOf)
  // What would be used if this field were empty; the other measured values count for it.
  const predicted = useMemo(
    () => bodyOf({ ...occupant, measured: without(occupant.measured, measure) })[measure],
    [occupant, measure],
  )
  const isAngle = MEASURE_LIMITS[measure].unit === '°'
  const Field = isAngle ? AngleField : LengthField
  const shown = isAngle ? tenthsText(predicted) : lengthFormat(unit).text(predicted)
  const words = measureWords(measure)
  return (
    <Field
      label={words}
      value={occupant.measured[measure] ?? null}
      placeholder={shown}
      limits={MEASURE_LIMITS[measure]}
      onCommit={(value) =>
        change(words.toLowerCase(), { measured: { ...occupant.measured, [measure]: value } })
      }
      onClear={() =>
        change(`${words.toLowerCase()} back to the prediction`, {
          measured: without(occupant.measured, measure),
        })
      }
    />
  )
}

const MeasuredFields = (props: {
  readonly occupant: Occupant
  readonly change: Change<Occupant>
}): ReactElement => {
  const { occupant, change } = props
  const count = Object.keys(occupant.measured).length
  return (
    <details className="editor">
      <summary>
        Measured on this person: {count === 0 ? 'nothing yet' : `${count} of ${BODY_MEASURES.length}`}
      </summary>
      <p className="hint">
        What is left empty is predicted from sex, stature and mass by regressions on a survey of soldiers
        (ANSUR, Gordon et al.). Two people of one stature and mass differ by some 35 mm at the shoulder:
        measure the person.
      </p>
      <div className="field-grid">
        {BODY_MEASURES.map((measure) => (
          <MeasureField key={measure} measure={measure} occupant={occupant} change={change} />
        ))}
      </div>
      <button
        type="button"
        onClick={() =>
          change('measurements to the template', {
            measured: { ...occupant.measured, ...STUDENT_TEMPLATE_MEASURES },
          })
        }
      >
        Fill in the student car template (FSAE 2026 F.5.6)
      </button>
    </details>
  )
}

const OccupantEditor = (props: { readonly place: Place; readonly occupant: Occupant }): ReactElement => {
  const { place, occupant } = props
  const { edit } = useActions()
  const name = occupant.name === '' ? 'Unnamed person' : occupant.name
  const isLast = place.occupants.length === 1
  const change: Change<Occupant> = (words, part) =>
    edit(`${name}: change ${words}`, (layout) => withOccupant(layout, place.id, occupant.id, part))
  return (
    <section className="editor" aria-label={name}>
      <div className="editor-head">
        <TextField
          label="Name"
          value={occupant.name}
          maxLength={TEXT_LENGTHS.name}
          onCommit={(value) => change('the name', { name: value })}
        />
        <button
          type="button"
          disabled={isLast}
          title={isLast ? 'A place has at least one person' : undefined}
          onClick={() => edit(`Remove ${name}`, (layout) => removeOccupant(layout, place.id, occupant.id))}
        >
          Remove
        </button>
      </div>
      <SurveyFields occupant={occupant} change={change} />
      <MeasuredFields occupant={occupant} change={change} />
    </section>
  )
}

/** Everyone who will sit at the current place; checks run over all of them. */
export const PeoplePanel = (): ReactElement | null => {
  const place = useApp(currentPlace)
  const { edit } = useActions()
  if (place === undefined) return null
  return (
    <section className="panel" aria-label="People">
      <p className="hint">
        The drawing shows the first person unless another sitting is chosen; the checks cover everyone.
      </p>
      {place.occupants.map((occupant) => (
        <OccupantEditor key={occupant.id} place={place} occupant={occupant} />
      ))}
      <button type="button" onClick={() => edit('Add a person', (layout) => addOccupant(layout, place.id))}>
        Add a person
      </button>
    </section>
  )
}
