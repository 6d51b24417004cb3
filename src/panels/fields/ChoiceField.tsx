import { useId, type ReactElement } from 'react'

export interface Choice<Value extends string> {
  readonly value: Value
  readonly words: string
  /** The heading it stands under in a list; choices of one group follow each other. */
  readonly group?: string
}

const Options = <Value extends string>(props: {
  readonly choices: readonly Choice<Value>[]
}): ReactElement => (
  <>
    {props.choices.map((choice) => (
      <option key={choice.value} value={choice.value}>
        {choice.words}
      </option>
    ))}
  </>
)

interface ChoiceProps<Value extends string> {
  readonly label: string
  readonly value: Value
  readonly choices: readonly Choice<Value>[]
  readonly onChange: (value: Value) => void
}

/** One of many: a drop-down list. */
export const ChoiceField = <Value extends string>(
  props: ChoiceProps<Value> & { readonly testId?: string },
): ReactElement => {
  const id = useId()
  return (
    <div className="field">
      <label htmlFor={id}>{props.label}</label>
      <select
        id={id}
        data-testid={props.testId}
        value={props.value}
        onChange={(event) => {
          const chosen = props.choices.find((choice) => choice.value === event.currentTarget.value)
          if (chosen !== undefined) props.onChange(chosen.value)
        }}
      >
        <Options choices={props.choices.filter(({ group }) => group === undefined)} />
        {[...new Set(props.choices.flatMap(({ group }) => group ?? []))].map((group) => (
          <optgroup key={group} label={group}>
            <Options choices={props.choices.filter((choice) => choice.group === group)} />
          </optgroup>
        ))}
      </select>
    </div>
  )
}

/** One of two or three: all in view, side by side. */
export const SwitchField = <Value extends string>(props: ChoiceProps<Value>): ReactElement => {
  const name = useId()
  return (
    <fieldset className="switch">
      <legend>{props.label}</legend>
      <div className="switch-choices">
        {props.choices.map((choice) => (
          <label key={choice.value}>
            <input
              type="radio"
              name={name}
              checked={choice.value === props.value}
              onChange={() => props.onChange(choice.value)}
            />
            <span>{choice.words}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}

export const ToggleField = (props: {
  readonly label: string
  readonly checked: boolean
  readonly onChange: (checked: boolean) => void
  readonly hint?: string
}): ReactElement => {
  const id = useId()
  return (
    <div className="field toggle">
      <label>
        <input
          type="checkbox"
          checked={props.checked}
          aria-describedby={props.hint === undefined ? undefined : id}
          onChange={(event) => props.onChange(event.currentTarget.checked)}
        />
        <span>{props.label}</span>
      </label>
      {props.hint === undefined ? null : (
        <small id={id} className="hint">
          {props.hint}
        </small>
      )}
    </div>
  )
}
