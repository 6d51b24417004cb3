import { type ReactElement, lazy, Suspense, useId, useRef, useState } from 'react'
import { termOf, type TermId } from '../../domain/layout/wording/terms'

// Drawings are made when somebody asks; the panels do not wait for them.
const TermCard = lazy(async () => ({ default: (await import('./TermCard')).TermCard }))

/** A small button beside a word that explains it in place. It stands beside a heading or label, never inside. */
export const Term = (props: { readonly id: TermId }): ReactElement => {
  const cardId = useId()
  const [isOpen, setOpen] = useState(false)
  const button = useRef<HTMLButtonElement>(null)
  const { word } = termOf(props.id)
  return (
    <>
      <button
        type="button"
        ref={button}
        className="term no-print"
        aria-label={`What is: ${word}?`}
        aria-expanded={isOpen}
        aria-controls={isOpen ? cardId : undefined}
        data-testid={`term:${props.id}`}
        onClick={() => setOpen(!isOpen)}
      >
        <span aria-hidden="true">?</span>
      </button>
      {isOpen ? (
        <Suspense fallback={null}>
          <TermCard
            id={cardId}
            term={props.id}
            opener={button}
            onClose={(focus) => {
              setOpen(false)
              if (focus === 'returns') button.current?.focus()
            }}
          />
        </Suspense>
      ) : null}
    </>
  )
}
