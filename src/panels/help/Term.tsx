import { type ReactElement, lazy, Suspense, useId, useRef, useState } from 'react'
import { termOf, type TermId } from '../../domain/layout/wording/terms'

// Drawings are made when somebody asks; the panels do not wait for them.
const TermCard = lazy(async () => ({ default: (await import('./TermCard')).TermCard }))

/**
 * A small button that explains a word in place: a mark beside the word, or the word itself. It stands beside a heading or label, never
 * inside, so that their names stay what they are.
 */
export const Term = (props: { readonly id: TermId; readonly shows?: 'mark' | 'word' }): ReactElement => {
  const cardId = useId()
  const [isOpen, setOpen] = useState(false)
  const button = useRef<HTMLButtonElement>(null)
  const { word } = termOf(props.id)
  return (
    <>
      <button
        type="button"
        ref={button}
        className={props.shows === 'word' ? 'term-word no-print' : 'term no-print'}
        aria-label={`What is: ${word}?`}
        aria-expanded={isOpen}
        aria-controls={isOpen ? cardId : undefined}
        data-testid={`term:${props.id}`}
        onClick={() => setOpen(!isOpen)}
      >
        {props.shows === 'word' ? word : <span aria-hidden="true">?</span>}
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
