import { useEffect, useId, useRef, useState, type ReactElement, type ReactNode } from 'react'

/** A button that opens a small sheet under it; closed by Escape, by leaving it or by choosing something in it. */
export const Disclosure = (props: {
  readonly words: string
  readonly className?: string
  readonly children: (close: () => void) => ReactNode
}): ReactElement => {
  const id = useId()
  const [isOpen, setOpen] = useState(false)
  const root = useRef<HTMLDivElement>(null)
  const button = useRef<HTMLButtonElement>(null)
  const close = (): void => setOpen(false)
  useEffect(() => {
    if (!isOpen) return
    const onPointerDown = (event: PointerEvent): void => {
      if (event.target instanceof Node && root.current?.contains(event.target) !== true) setOpen(false)
    }
    const opener = button.current
    document.addEventListener('pointerdown', onPointerDown)
    return () => {
      document.removeEventListener('pointerdown', onPointerDown)
      // What had the focus went away with the sheet.
      if (document.activeElement === document.body) opener?.focus()
    }
  }, [isOpen])
  return (
    <div
      className={`disclosure ${props.className ?? ''}`}
      ref={root}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !isOpen) return
        event.stopPropagation()
        close()
      }}
      onBlur={(event) => {
        const next = event.relatedTarget
        if (next instanceof Node && !event.currentTarget.contains(next)) setOpen(false)
      }}
    >
      <button
        type="button"
        ref={button}
        aria-expanded={isOpen}
        aria-controls={id}
        onClick={() => setOpen(!isOpen)}
      >
        {props.words}
        <span aria-hidden="true" className="disclosure-mark" />
      </button>
      {isOpen ? (
        <div id={id} className="disclosure-sheet">
          {props.children(close)}
        </div>
      ) : null}
    </div>
  )
}
