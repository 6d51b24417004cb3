import { useState, type ReactElement } from 'react'
import { COUNTS, type NumberLimits } from '../../domain/layout/document/limits'
import type { Readings } from '../../domain/measure/measurement'
import { AngleField, LengthField } from '../fields/LengthField'

export interface ReadingFieldsProps {
  /** What is read: "Tape 1", "x rearward". */
  readonly label: string
  readonly unit: 'mm' | 'deg'
  readonly readings: Readings
  readonly limits: NumberLimits
  readonly onChange: (readings: Readings) => void
  readonly testId?: string
  /** Other than the first: what comes after the label. */
  readonly hint?: string
}

/** Every reading of one thing, each in a field of its own; one more can be added, and one that is emptied goes. */
export const ReadingFields = (props: ReadingFieldsProps): ReactElement => {
  const { label, unit, readings, limits, onChange } = props
  const [isAdding, setAdding] = useState(false)
  const Field = unit === 'mm' ? LengthField : AngleField
  const count = readings.length + (readings.length === 0 || isAdding ? 1 : 0)
  const put = (index: number, value: number): void => {
    setAdding(false)
    onChange(
      index < readings.length
        ? readings.map((old, at) => (at === index ? value : old))
        : [...readings, value],
    )
  }
  const remove = (index: number): void => {
    setAdding(false)
    onChange(readings.filter((_, at) => at !== index))
  }
  return (
    <div className="readings">
      {Array.from({ length: count }, (_, index) => (
        <Field
          // Readings have no identity of their own but their order.
          // oxlint-disable-next-line react/no-array-index-key
          key={index}
          label={index === 0 ? label : `${label}, reading ${index + 1}`}
          value={readings[index] ?? null}
          limits={limits}
          hint={index === 0 ? props.hint : undefined}
          placeholder="not read"
          testId={props.testId === undefined ? undefined : `${props.testId}:${index}`}
          onCommit={(value) => put(index, value)}
          onClear={() => remove(index)}
        />
      ))}
      {readings.length > 0 && !isAdding && readings.length < COUNTS.readings.max ? (
        <button type="button" aria-label={`Add another reading: ${label}`} onClick={() => setAdding(true)}>
          Add another reading
        </button>
      ) : null}
    </div>
  )
}
