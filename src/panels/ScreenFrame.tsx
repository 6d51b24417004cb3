import { type ReactElement, type ReactNode, useEffect, useRef } from 'react'
import { useActions } from '../state/react'

/** What every screen beside the drawing has: its name, the way back, tools in a bar and a body that scrolls. */
export const ScreenFrame = (props: {
  readonly title: string
  readonly tools?: ReactNode
  readonly children: ReactNode
}): ReactElement => {
  const { setView } = useActions()
  const heading = useRef<HTMLHeadingElement>(null)
  // Whoever hears the page learns where they are.
  useEffect(() => heading.current?.focus({ preventScroll: true }), [])
  return (
    <section className="screen" aria-label={props.title}>
      <div className="screen-bar no-print">
        <button type="button" onClick={() => setView({ screen: 'drawing' })}>
          Back to the drawing
        </button>
        <h2 ref={heading} tabIndex={-1}>
          {props.title}
        </h2>
        {props.tools}
      </div>
      <div className="screen-body">{props.children}</div>
    </section>
  )
}
