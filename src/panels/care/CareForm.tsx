import { useEffect, useId, useRef, useState, type ReactElement, type ReactNode } from 'react'
import type { BeltEntry } from '../../domain/care/beltRecord'
import type { EntryProblem } from '../../domain/care/entryProblems'
import { TEXT_LENGTHS } from '../../domain/layout/document/limits'
import { entryProblemText } from '../../domain/layout/wording/beltHistoryText'
import { useApp } from '../../state/react'
import { today } from '../../state/today'
import { TextField } from '../fields/TextField'

type Said = Pick<BeltEntry, 'date' | 'by' | 'note'>

/** When, by whom and why, as it is typed: today, and who prepared the job, until something else is. */
export const useSaid = (): readonly [Said, (change: Partial<Said>) => void] => {
  const preparedBy = useApp((state) => state.layout.job.preparedBy)
  const [said, setSaid] = useState<Said>(() => ({ date: today(), by: preparedBy, note: '' }))
  return [said, (change) => setSaid((before) => ({ ...before, ...change }))]
}

export const SaidFields = (props: {
  readonly said: Said
  readonly onChange: (change: Partial<Said>) => void
  readonly noteLabel: string
}): ReactElement => {
  const { said, onChange } = props
  return (
    <>
      <div className="field-row">
        <TextField
          label="Date"
          kind="date"
          value={said.date}
          maxLength={10}
          onCommit={(date) => onChange({ date })}
        />
        <TextField
          label="By"
          value={said.by}
          maxLength={TEXT_LENGTHS.name}
          onCommit={(by) => onChange({ by })}
        />
      </div>
      <TextField
        label={props.noteLabel}
        kind="lines"
        value={said.note}
        maxLength={TEXT_LENGTHS.notes}
        onCommit={(note) => onChange({ note })}
      />
    </>
  )
}

/** What keeps a form from being entered, each with how to mend it; read out when it appears. */
const FormProblems = (props: { readonly problems: readonly EntryProblem[] }): ReactElement | null =>
  props.problems.length === 0 ? null : (
    <ul className="care-problems" role="alert">
      {props.problems.map((problem, index) => (
        // Problems have no identity of their own but their order.
        <li key={index} className="field-problem">
          {entryProblemText(problem)}
        </li>
      ))}
    </ul>
  )

/**
 * The fields of a form with its button. `submit` does the edit and gives back what keeps it from being done; with nothing in the way
 * the form closes and forgets what was typed.
 */
export const CareForm = (props: {
  readonly button: string
  readonly submit: () => readonly EntryProblem[]
  readonly onDone: () => void
  readonly children: ReactNode
}): ReactElement => {
  const [problems, setProblems] = useState<readonly EntryProblem[]>([])
  return (
    <div className="care-form">
      {props.children}
      <FormProblems problems={problems} />
      <button
        type="button"
        onClick={() => {
          const found = props.submit()
          setProblems(found)
          if (found.length === 0) props.onDone()
        }}
      >
        {props.button}
      </button>
    </div>
  )
}

/** A form behind a heading that opens it; what was typed is gone when it closes, so that nothing old is entered by mistake. */
export const FormSection = (props: {
  readonly words: string
  readonly children: (close: () => void) => ReactNode
}): ReactElement => {
  const id = useId()
  const [isOpen, setOpen] = useState(false)
  const button = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    if (!isOpen) return
    const opener = button.current
    return () => {
      // What had the focus went away with the form.
      if (document.activeElement === document.body) opener?.focus()
    }
  }, [isOpen])
  return (
    <div className="care-section">
      <button
        type="button"
        ref={button}
        className="care-opener"
        aria-expanded={isOpen}
        aria-controls={id}
        onClick={() => setOpen(!isOpen)}
      >
        {props.words}
        <span aria-hidden="true" className="disclosure-mark" />
      </button>
      <div id={id} hidden={!isOpen}>
        {isOpen ? props.children(() => setOpen(false)) : null}
      </div>
    </div>
  )
}
