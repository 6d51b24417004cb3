import { type ReactElement, useId, useMemo, useRef, useState } from 'react'
import { type Carried, carriedIn } from '../../state/share/fragment'
import { isOnlyThisMachine, linkTo, SAFE_LINK_CHARACTERS } from '../../state/share/link'
import { QrCode } from './QrCode'

/** Copies where the browser allows it; elsewhere the link stands selected for the builder to copy. */
const copied = async (link: string, field: HTMLTextAreaElement | null): Promise<string> => {
  try {
    await navigator.clipboard.writeText(link)
    return 'The link is copied.'
  } catch {
    field?.select()
    return 'The browser does not let this page copy. The link is selected: copy it with the keyboard or the menu of the field.'
  }
}

const sent = async (link: string, subject: string): Promise<string> => {
  try {
    await navigator.share({ title: subject, url: link })
    return 'The link is handed over.'
  } catch (problem) {
    return problem instanceof DOMException && problem.name === 'AbortError'
      ? ''
      : 'The device could not hand the link over. Copy it instead.'
  }
}

const LengthWords = (props: { readonly link: string }): ReactElement => {
  const { length } = props.link
  return (
    <p className="hint">
      {length} characters.{' '}
      {length > SAFE_LINK_CHARACTERS
        ? `Some mail programs and messengers cut links after about ${SAFE_LINK_CHARACTERS}. A link that was cut says so when it is opened; send the file where that happens.`
        : 'Mail programs and messengers take a link of this length whole.'}
      {isOnlyThisMachine(props.link)
        ? ' This page is served by this device alone, so the link opens only here. Send the file to others.'
        : ''}
    </p>
  )
}

/** The link; null when it could not be read again, because it would hold more than a link may. */
const soundLink = (carried: Carried): string | null => {
  const link = linkTo(window.location.href, carried)
  const back = carriedIn(new URL(link).hash)
  return back.ok && back.value?.text === carried.text ? link : null
}

/** A link that carries a text whole, to copy, to hand over and as a QR code. `subject` says in a few words what it is. */
export const ShareLink = (props: Carried & { readonly subject: string }): ReactElement => {
  const { kind, text, subject } = props
  const link = useMemo(() => soundLink({ kind, text }), [kind, text])
  if (link === null) return <p>This is too long for a link. Send the file instead.</p>
  return <SoundLink link={link} subject={subject} />
}

const SoundLink = (props: { readonly link: string; readonly subject: string }): ReactElement => {
  const { link, subject } = props
  const id = useId()
  const field = useRef<HTMLTextAreaElement>(null)
  const [outcome, setOutcome] = useState('')
  return (
    <div className="share-link">
      <label htmlFor={id}>Link</label>
      <textarea
        id={id}
        ref={field}
        readOnly
        rows={3}
        value={link}
        spellCheck={false}
        data-testid="share-link"
        onFocus={({ currentTarget }) => currentTarget.select()}
      />
      <div className="button-row">
        <button
          type="button"
          className="primary"
          onClick={() => void copied(link, field.current).then(setOutcome)}
        >
          Copy the link
        </button>
        {typeof navigator.share === 'function' ? (
          <button type="button" onClick={() => void sent(link, subject).then(setOutcome)}>
            Hand over…
          </button>
        ) : null}
      </div>
      <p role="status">{outcome}</p>
      <LengthWords link={link} />
      <QrCode text={link} label={`QR code of the link: ${subject}`} />
    </div>
  )
}
