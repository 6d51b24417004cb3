import {
  useCallback,
  type ReactElement,
  type Ref,
  type RefObject,
  useImperativeHandle,
  useLayoutEffect,
  useRef,
} from 'react'
import type { Palette } from '../paint/palette'
import type { PointPx, SizePx } from '../viewTransform'
import { paintMagnifier, type Source } from './paintMagnifier'
import { placeMagnifier } from './placeMagnifier'

/** Diameter of the inset, px: 44 px of the drawing at its magnification. Our judgement. */
const INSET_PX = 132
/** The box of the numbers below it. */
const TEXT_PX = { widthPx: 184, lineHeightPx: 18 }

/** What the stage tells the inset: that it has been painted anew. */
export interface MagnifierHandle {
  readonly repaint: (sources: readonly Source[]) => void
}

/** The drawing under the finger, enlarged beside it, with a cross-hair at the point in hand and its numbers. */
export const Magnifier = (props: {
  readonly at: PointPx
  readonly lines: readonly string[]
  readonly pane: SizePx
  readonly palette: Palette
  /** The stage's canvases as last painted, to begin with. */
  readonly sources?: RefObject<readonly Source[]>
  readonly handle: Ref<MagnifierHandle>
}): ReactElement => {
  const { at, lines, pane, palette, sources, handle } = props
  const inset = useRef<HTMLCanvasElement>(null)
  const latest = useRef({ at, palette })
  useLayoutEffect(() => {
    latest.current = { at, palette }
  })
  const ratio = window.devicePixelRatio
  const repaint = useCallback(
    (from: readonly Source[]) => {
      if (inset.current === null) return
      const now = latest.current
      paintMagnifier({ canvas: inset.current, ratio }, from, now.at, INSET_PX, now.palette)
    },
    [ratio],
  )
  useImperativeHandle(handle, () => ({ repaint }), [repaint])
  // Nothing need have been painted since the finger came: what is there is shown at once.
  useLayoutEffect(() => repaint(sources?.current ?? []), [repaint, sources])
  const size = { widthPx: TEXT_PX.widthPx, heightPx: INSET_PX + lines.length * TEXT_PX.lineHeightPx }
  const { xPx, yPx } = placeMagnifier(at, pane, size)
  return (
    <div
      className="magnifier"
      data-testid="magnifier"
      data-at={`${at.xPx} ${at.yPx}`}
      aria-hidden="true"
      style={{ width: size.widthPx, transform: `translate(${xPx}px, ${yPx}px)` }}
    >
      <canvas
        ref={inset}
        width={Math.round(INSET_PX * ratio)}
        height={Math.round(INSET_PX * ratio)}
        style={{ width: INSET_PX, height: INSET_PX }}
      />
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  )
}
