import { useId, useState, type KeyboardEvent, type ReactElement } from 'react'
import type { NumberLimits } from '../../domain/layout/document/limits'
import type { Result } from '../../domain/result'

/** How one kind of number is shown, read and stepped. */
export interface NumberFormat {
  readonly text: (value: number) => string
  /** The failure is a sentence: what was typed, what is wrong, how to mend it. */
  readonly parse: (text: string) => Result<number, string>
  readonly unit: string
  readonly step: { readonly small: number; readonly large: number }
  readonly inputMode: 'decimal' | 'text'
}

export interface NumberFieldProps {
  readonly label: string
  /** Null: nothing typed; the placeholder shows what is used instead. */
  readonly value: number | null
  readonly format: NumberFormat
  readonly limits?: NumberLimits | undefined
  readonly onCommit: (value: number) => void
  /** What is being typed, as far as it can be taken over; null once nothing is, or nothing usable. */
  readonly onDraft?: ((value: number | null) => void) | undefined
  /** Given where the field may be emptied. */
  readonly onClear?: (() => void) | undefined
  readonly placeholder?: string | undefined
  readonly hint?: string | undefined
  readonly testId?: string | undefined
  readonly name?: string | undefined
}

const outsideLimits = (props: NumberFieldProps, value: number): string | null => {
  const { limits, format } = props
  if (limits === undefined || (value >= limits.min && value <= limits.max)) return null
  const range = `${format.text(limits.min)} to ${format.text(limits.max)} ${format.unit}`
  return `${props.label} ${format.text(value)} ${format.unit} is outside what a layout can hold. Type a value from ${range}.`
}

/** The typed text until it is taken over; null while the field shows the layout's own value. */
const useDraft = (props: NumberFieldProps) => {
  const [draft, setDraft] = useState<string | null>(null)
  const [problem, setProblem] = useState<string | null>(null)
  const shown = props.value === null ? '' : props.format.text(props.value)

  const settle = (): void => {
    setDraft(null)
    setProblem(null)
    if (draft !== null) props.onDraft?.(null)
  }
  const take = (value: number): void => {
    const outside = outsideLimits(props, value)
    if (outside !== null) return setProblem(outside)
    settle()
    if (value !== props.value) props.onCommit(value)
  }
  const commit = (): void => {
    // Text that was not touched must not round the value behind it.
    if (draft === null || draft.trim() === shown) return settle()
    if (draft.trim() === '' && props.onClear !== undefined) {
      settle()
      return props.onClear()
    }
    const parsed = props.format.parse(draft)
    if (parsed.ok) take(parsed.value)
    else setProblem(parsed.error)
  }
  const nudge = (by: number): void => {
    const typed = draft === null || draft.trim() === shown ? null : props.format.parse(draft)
    const from = typed?.ok === true ? typed.value : props.value
    if (from !== null) take(from + by)
  }
  const type = (text: string): void => {
    setDraft(text)
    setProblem(null)
    const parsed = props.onDraft === undefined ? null : props.format.parse(text)
    const isUsable = parsed?.ok === true && outsideLimits(props, parsed.value) === null
    props.onDraft?.(isUsable ? parsed.value : null)
  }
  return { draft, problem, shown, settle, commit, nudge, type }
}

const onFieldKey = (
  event: KeyboardEvent<HTMLInputElement>,
  field: ReturnType<typeof useDraft>,
  step: NumberFormat['step'],
): void => {
  const size = event.shiftKey ? step.large : step.small
  if (event.key === 'Enter') field.commit()
  else if (event.key === 'Escape' && field.draft !== null) field.settle()
  else if (event.key === 'ArrowUp') field.nudge(size)
  else if (event.key === 'ArrowDown') field.nudge(-size)
  else return
  event.preventDefault()
  event.stopPropagation()
}

/** A typed number: taken over by Enter or by leaving the field, stepped by the arrow keys, put back by Escape. */
export const NumberField = (props: NumberFieldProps): ReactElement => {
  const id = useId()
  const field = useDraft(props)
  const described = [
    props.hint === undefined ? '' : `${id}-hint`,
    field.problem === null ? '' : `${id}-problem`,
  ]
  return (
    <div className="field">
      <label htmlFor={id}>{props.label}</label>
      <span className="field-entry">
        <input
          id={id}
          className="number"
          type="text"
          inputMode={props.format.inputMode}
          autoComplete="off"
          spellCheck={false}
          name={props.name}
          data-testid={props.testId}
          data-dirty={field.draft === null ? undefined : 'true'}
          value={field.draft ?? field.shown}
          placeholder={props.placeholder}
          aria-invalid={field.problem !== null}
          aria-describedby={described.join(' ').trim() || undefined}
          onFocus={(event) => event.currentTarget.select()}
          onChange={(event) => field.type(event.currentTarget.value)}
          onBlur={field.commit}
          onKeyDown={(event) => onFieldKey(event, field, props.format.step)}
        />
        <span className="unit">{props.format.unit}</span>
      </span>
      {props.hint === undefined ? null : (
        <small id={`${id}-hint`} className="hint">
          {props.hint}
        </small>
      )}
      {field.problem === null ? null : (
        <p id={`${id}-problem`} className="field-problem" role="alert">
          {field.problem}
        </p>
      )}
    </div>
  )
}
