import { lazy, Suspense, type ReactElement } from 'react'
import { pageTracing } from '../../state/trace/trace'
import { useKept } from '../../state/react'
import { stripView } from './stripView'

// Few want it, and the drawing is not to wait for it.
const PhotoStrip = lazy(async () => ({ default: (await import('./PhotoStrip')).PhotoStrip }))

const useIsOpen = (): boolean => {
  const { isOpen } = useKept(stripView)
  // What is traced needs its numbers and a way out.
  const isTracing = useKept(pageTracing.state).kind !== 'off'
  return isOpen || isTracing
}

/** The way to the photos and to tracing, beside the drawing. */
export const PhotoToggle = (): ReactElement => {
  const isOpen = useIsOpen()
  return (
    <button
      type="button"
      aria-expanded={isOpen}
      onClick={() => {
        if (isOpen) pageTracing.callOff()
        stripView.setState({ isOpen: !isOpen })
      }}
    >
      Trace, photo
    </button>
  )
}

/** The controls of photos and tracing, over the drawing while they are asked for. */
export const PhotoControls = (): ReactElement | null =>
  useIsOpen() ? (
    <Suspense fallback={<p className="waiting">One moment…</p>}>
      <PhotoStrip />
    </Suspense>
  ) : null
