import { useRef, type KeyboardEvent, type MouseEvent, type PointerEvent, type ReactElement } from 'react'
import { markWords } from '../../domain/layout/wording/photoWords'
import type { MarkId, Photo, PicturePoint } from '../../domain/measure/photo/photo'
import type { Crosses } from './useCrosses'

const ARROWS: Readonly<Record<string, PicturePoint>> = {
  ArrowLeft: { xPx: -1, yPx: 0 },
  ArrowRight: { xPx: 1, yPx: 0 },
  ArrowUp: { xPx: 0, yPx: -1 },
  ArrowDown: { xPx: 0, yPx: 1 },
}

/** One press with Shift, pixels of the picture. Our judgement. */
const LARGE_STEP_PX = 10

interface Props {
  readonly photo: Photo
  readonly id: MarkId
  readonly at: PicturePoint
  readonly crosses: Crosses
  /** px of the page to one pixel of the picture. */
  readonly scale: number
}

/** A cross moves with the pointer as far as the pointer does, wherever on it the finger lies, so that the finger can stay beside the spot. */
const usePointer = ({ id, at, crosses, scale, photo }: Props) => {
  const start = useRef<{ readonly x: number; readonly y: number; readonly at: PicturePoint } | null>(null)
  const wasDragged = useRef(false)
  const end = (how: 'keep' | 'put-back'): void => {
    if (start.current === null) return
    start.current = null
    crosses.release(how)
  }
  return {
    onPointerDown: (event: PointerEvent<HTMLButtonElement>) => {
      if (event.button !== 0 || photo.locked) return
      event.currentTarget.setPointerCapture(event.pointerId)
      start.current = { x: event.clientX, y: event.clientY, at }
      wasDragged.current = false
      crosses.choose(id, 'taken-hold-of')
    },
    onPointerMove: (event: PointerEvent<HTMLButtonElement>) => {
      const from = start.current
      if (from === null || (event.clientX === from.x && event.clientY === from.y && crosses.held === null))
        return
      wasDragged.current = true
      crosses.hold({
        id,
        by: 'pointer',
        at: {
          xPx: from.at.xPx + (event.clientX - from.x) / scale,
          yPx: from.at.yPx + (event.clientY - from.y) / scale,
        },
      })
    },
    onPointerUp: () => end('keep'),
    onPointerCancel: () => end('put-back'),
    // A tap on a cross while another is still to be put means that both lie on one spot; from the keys it means nothing.
    onClick: (event: MouseEvent<HTMLButtonElement>) => {
      event.stopPropagation()
      const { tapId } = crosses
      const isOther = tapId !== null && tapId !== id && crosses.where(tapId) === undefined
      if (isOther && event.detail > 0 && !wasDragged.current) crosses.put(tapId, at)
    },
    putBack: () => end('put-back'),
  }
}

/** Arrow keys move it by one pixel of the picture; a key held down is one undo step. */
const onCrossKey = ({ id, at, crosses, photo }: Props, event: KeyboardEvent, putBack: () => void): void => {
  const arrow = ARROWS[event.key]
  if (event.key === 'Escape' && crosses.held !== null) {
    putBack()
    crosses.release('put-back')
  } else if (arrow !== undefined && !photo.locked) {
    const by = event.shiftKey ? LARGE_STEP_PX : 1
    crosses.hold({ id, by: 'keys', at: { xPx: at.xPx + by * arrow.xPx, yPx: at.yPx + by * arrow.yPx } })
  } else return
  event.preventDefault()
  event.stopPropagation()
}

/** One cross on the picture: as large as a fingertip, its lines clear of the very spot. */
export const Cross = (props: Props): ReactElement => {
  const { photo, id, at, crosses, scale } = props
  const { putBack, ...pointer } = usePointer(props)
  const keep = (): void => {
    if (crosses.held?.id === id && crosses.held.by === 'keys') crosses.release('keep')
  }
  const words = markWords(photo, id)
  return (
    <button
      type="button"
      className="cross"
      data-testid={`cross:${id}`}
      data-at={`${at.xPx} ${at.yPx}`}
      data-active={crosses.activeId === id}
      aria-label={`${words}: ${Math.round(at.xPx)} across, ${Math.round(at.yPx)} down, pixels of the picture. Arrow keys move it.`}
      style={{ transform: `translate(${at.xPx * scale - 22}px, ${at.yPx * scale - 22}px)` }}
      autoFocus={crosses.forKeysId === id}
      onFocus={() => crosses.choose(id, 'taken-hold-of')}
      {...pointer}
      onKeyDown={(event) => onCrossKey(props, event, putBack)}
      onKeyUp={keep}
      onBlur={keep}
    >
      <svg width="44" height="44" viewBox="-22 -22 44 44" aria-hidden="true">
        {(['rim', 'ink'] as const).map((look) => (
          <path key={look} className={`cross-${look}`} d="M-20 0H-4M4 0H20M0 -20V-4M0 4V20" />
        ))}
      </svg>
    </button>
  )
}
