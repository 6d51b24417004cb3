import { useId, useState, type ReactElement } from 'react'

export interface TextFieldProps {
  readonly label: string
  readonly value: string
  readonly onCommit: (value: string) => void
  readonly kind?: 'line' | 'lines' | 'date'
  readonly maxLength: number
  readonly placeholder?: string
  readonly hint?: string
}

/** Typed words, taken over as one step when the field is left or, in a single line, by Enter; Escape puts them back. */
export const TextField = (props: TextFieldProps): ReactElement => {
  const id = useId()
  const [draft, setDraft] = useState<string | null>(null)
  const commit = (): void => {
    if (draft !== null && draft !== props.value) props.onCommit(draft)
    setDraft(null)
  }
  const shared = {
    id,
    value: draft ?? props.value,
    maxLength: props.maxLength,
    placeholder: props.placeholder,
    'data-dirty': draft === null ? undefined : 'true',
    'aria-describedby': props.hint === undefined ? undefined : `${id}-hint`,
    onBlur: commit,
  }
  const onKey = (key: string): void => {
    if (key === 'Escape') setDraft(null)
    if (key === 'Enter' && props.kind !== 'lines') commit()
  }
  return (
    <div className="field">
      <label htmlFor={id}>{props.label}</label>
      {props.kind === 'lines' ? (
        <textarea
          {...shared}
          rows={4}
          onChange={(event) => setDraft(event.currentTarget.value)}
          onKeyDown={(event) => onKey(event.key)}
        />
      ) : (
        <input
          {...shared}
          type={props.kind === 'date' ? 'date' : 'text'}
          autoComplete="off"
          onChange={(event) => setDraft(event.currentTarget.value)}
          onKeyDown={(event) => onKey(event.key)}
        />
      )}
      {props.hint === undefined ? null : (
        <small id={`${id}-hint`} className="hint">
          {props.hint}
        </small>
      )}
    </div>
  )
}
