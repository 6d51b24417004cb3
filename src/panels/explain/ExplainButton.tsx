import { useRef, type ReactElement, type Ref } from 'react'

/** Opens and closes the drawing of what a number is measured between; Escape on it closes too. */
export const ExplainButton = ({
  ref,
  ...props
}: {
  readonly words: string
  /** What it opens, for those who hear the page: it begins with the visible words. */
  readonly label: string
  readonly isOpen: boolean
  readonly controls: string
  readonly onToggle: () => void
  readonly ref?: Ref<HTMLButtonElement>
}): ReactElement => (
  <button
    type="button"
    ref={ref}
    className="explain-button"
    aria-label={props.label}
    aria-expanded={props.isOpen}
    aria-controls={props.isOpen ? props.controls : undefined}
    onClick={props.onToggle}
    onKeyDown={(event) => {
      if (event.key !== 'Escape' || !props.isOpen) return
      event.stopPropagation()
      props.onToggle()
    }}
  >
    {props.words}
    <span aria-hidden="true" className="explain-mark" />
  </button>
)

/** Closing gives the focus back to what opened it. */
export const useReturnedFocus = (close: () => void) => {
  const button = useRef<HTMLButtonElement>(null)
  return {
    button,
    onClose: (): void => {
      close()
      button.current?.focus()
    },
  }
}
