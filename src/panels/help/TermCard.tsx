import {
  type ReactElement,
  type RefObject,
  useEffect,
  useEffectEvent,
  useLayoutEffect,
  useMemo,
  useRef,
} from 'react'
import { createPortal } from 'react-dom'
import { termPicture } from '../../domain/layout/drawing/terms/termPicture'
import { termOf, termOrigin, type TermId } from '../../domain/layout/wording/terms'
import { FigureSvg } from '../figure/FigureSvg'

/** A word's drawing and meaning, the same on a card and in the guide. */
export const TermBody = (props: { readonly term: TermId }): ReactElement => {
  const term = termOf(props.term)
  const picture = useMemo(() => termPicture(props.term), [props.term])
  return (
    <>
      <FigureSvg figure={picture} description={picture.description} />
      <p>{term.says}</p>
      <p>{term.watch}</p>
      <p className="hint">{termOrigin(term)}</p>
    </>
  )
}

/** Clear of the window's edges and of the word, px. */
const MARGIN_PX = 8

/** Beside the word where there is room: below it, else above, never over the window's edges. */
const place = (card: HTMLElement, opener: HTMLElement): void => {
  const word = opener.getBoundingClientRect()
  const { offsetWidth, offsetHeight } = card
  const left = Math.min(word.left, window.innerWidth - offsetWidth - MARGIN_PX)
  const below = word.bottom + MARGIN_PX
  const above = word.top - offsetHeight - MARGIN_PX
  const isBelow = below + offsetHeight <= window.innerHeight - MARGIN_PX
  const top = isBelow ? below : above >= MARGIN_PX ? above : window.innerHeight - offsetHeight - MARGIN_PX
  card.style.left = `${Math.max(MARGIN_PX, left)}px`
  card.style.top = `${Math.max(MARGIN_PX, top)}px`
}

/** The card of a word, over the page. Escape, its button, another place or scrolling closes it. */
export const TermCard = (props: {
  readonly id: string
  readonly term: TermId
  readonly opener: RefObject<HTMLButtonElement | null>
  readonly onClose: (focus: 'returns' | 'stays') => void
}): ReactElement => {
  const { opener } = props
  const card = useRef<HTMLDivElement>(null)
  const { word } = termOf(props.term)
  useLayoutEffect(() => {
    if (card.current === null || opener.current === null) return
    place(card.current, opener.current)
    card.current.focus({ preventScroll: true })
  }, [opener])
  const onElsewhere = useEffectEvent(({ target }: Event): void => {
    const isHere = (element: HTMLElement | null): boolean =>
      target instanceof Node && element?.contains(target) === true
    if (!isHere(card.current) && !isHere(opener.current)) props.onClose('stays')
  })
  useEffect(() => {
    const hear = (event: Event): void => onElsewhere(event)
    document.addEventListener('pointerdown', hear)
    document.addEventListener('scroll', hear, { capture: true })
    window.addEventListener('resize', hear)
    return () => {
      document.removeEventListener('pointerdown', hear)
      document.removeEventListener('scroll', hear, { capture: true })
      window.removeEventListener('resize', hear)
    }
  }, [])
  return createPortal(
    <div
      ref={card}
      id={props.id}
      className="term-card no-print"
      role="dialog"
      aria-label={word}
      tabIndex={-1}
      data-testid="term-card"
      onKeyDown={(event) => {
        // Keys of the page, such as undo, are not meant while a card is read.
        event.stopPropagation()
        if (event.key === 'Escape') props.onClose('returns')
      }}
      onBlur={(event) => {
        const next = event.relatedTarget
        if (next instanceof Node && !event.currentTarget.contains(next) && next !== opener.current)
          props.onClose('stays')
      }}
    >
      <div className="term-head">
        <h3>{word}</h3>
        <button type="button" onClick={() => props.onClose('returns')}>
          Close
        </button>
      </div>
      <TermBody term={props.term} />
    </div>,
    document.body,
  )
}
