import { type ReactElement, useId } from 'react'
import { TEXT_LENGTHS } from '../../domain/layout/document/limits'
import type { Conversation } from './conversation'

/** Several lines; what is typed stays until it is added, wherever one looks meanwhile. */
export const TalkText = (props: {
  readonly talk: Conversation
  /** What it is kept under. */
  readonly about: string
  readonly label: string
}): ReactElement => {
  const id = useId()
  return (
    <div className="field">
      <label htmlFor={id}>{props.label}</label>
      <textarea
        id={id}
        rows={3}
        maxLength={TEXT_LENGTHS.comment}
        value={props.talk.typed[props.about] ?? ''}
        onChange={(event) => props.talk.type(props.about, event.currentTarget.value)}
      />
    </div>
  )
}

/** Who is speaking; one name for all that is said. */
export const TalkName = (props: { readonly talk: Conversation }): ReactElement => {
  const id = useId()
  return (
    <div className="field">
      <label htmlFor={id}>Your name</label>
      <input
        id={id}
        type="text"
        autoComplete="name"
        maxLength={TEXT_LENGTHS.name}
        value={props.talk.name}
        onChange={(event) => props.talk.setName(event.currentTarget.value)}
      />
    </div>
  )
}

/** A button that says beside itself why it cannot be pressed yet. */
export const ReasonedButton = (props: {
  readonly words: string
  /** Null when it can be pressed. */
  readonly missing: string | null
  readonly isPrimary?: boolean
  readonly onPress: () => void
}): ReactElement => {
  const id = useId()
  return (
    <div className="reasoned">
      <button
        type="button"
        className={props.isPrimary === true ? 'primary' : undefined}
        disabled={props.missing !== null}
        aria-describedby={id}
        onClick={props.onPress}
      >
        {props.words}
      </button>
      <p id={id} className="hint">
        {props.missing ?? ''}
      </p>
    </div>
  )
}
