import { useLayoutEffect, useRef, useState, type MouseEvent, type ReactElement } from 'react'
import { markWords } from '../../domain/layout/wording/photoWords'
import type { Photo, PicturePoint } from '../../domain/measure/photo/photo'
import { Cross } from './Cross'
import { CrossMagnifier } from './CrossMagnifier'
import { PictureLines } from './PictureLines'
import { pictureAddress } from './usePicture'
import type { Crosses } from './useCrosses'

/** How much larger than its frame the picture is shown; the frame scrolls. Our judgement. */
const ZOOMS = [1, 1.5, 2, 3, 4, 6, 8] as const

/** The width that the frame gives the picture, px; 0 before it is laid out. */
const useFrameWidth = () => {
  const frame = useRef<HTMLDivElement>(null)
  const [widthPx, setWidth] = useState(0)
  useLayoutEffect(() => {
    const element = frame.current
    if (element === null) return undefined
    const read = (): void => setWidth(element.clientWidth)
    read()
    const observer = new ResizeObserver(read)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return { frame, widthPx }
}

const PutCrosses = (props: {
  readonly photo: Photo
  readonly crosses: Crosses
  readonly scale: number
}): readonly ReactElement[] =>
  props.crosses.ids.flatMap((id) => {
    const at = props.crosses.where(id)
    return at === undefined ? [] : [<Cross key={id} {...props} id={id} at={at} />]
  })

const ZoomButtons = (props: {
  readonly zoom: number
  readonly onZoom: (index: number) => void
}): ReactElement => (
  <div className="button-row" role="group" aria-label="Size of the picture">
    <button
      type="button"
      aria-label="Smaller"
      disabled={props.zoom === 0}
      onClick={() => props.onZoom(props.zoom - 1)}
    >
      −
    </button>
    <button
      type="button"
      aria-label="Larger"
      disabled={props.zoom === ZOOMS.length - 1}
      onClick={() => props.onZoom(props.zoom + 1)}
    >
      +
    </button>
  </div>
)

const STEPS = [
  { words: 'left', arrow: '←', by: { xPx: -1, yPx: 0 } },
  { words: 'right', arrow: '→', by: { xPx: 1, yPx: 0 } },
  { words: 'up', arrow: '↑', by: { xPx: 0, yPx: -1 } },
  { words: 'down', arrow: '↓', by: { xPx: 0, yPx: 1 } },
] as const

/** One pixel of the picture at a time, for fingers. */
const StepButtons = (props: {
  readonly name: string
  readonly onStep: (by: PicturePoint) => void
}): ReactElement => (
  <div className="button-row" role="group" aria-label={`Move the ${props.name} by one pixel`}>
    {STEPS.map(({ words, arrow, by }) => (
      <button key={words} type="button" aria-label={`One pixel ${words}`} onClick={() => props.onStep(by)}>
        {arrow}
      </button>
    ))}
  </div>
)

const hintOf = (photo: Photo, { activeId, tapId, where }: Crosses): string => {
  if (photo.locked) return 'Locked: unlock the photo to move its crosses.'
  if (activeId === null || tapId === null) return 'Drag a cross to move it.'
  const tap = markWords(photo, tapId)
  if (where(activeId) === undefined) return `Tap the ${tap} on the picture.`
  const inHand = `In hand: ${markWords(photo, activeId)}.`
  return tapId === activeId
    ? `${inHand} Drag it, or tap where it belongs.`
    : `${inHand} A tap puts the ${tap}.`
}

/** The bar over the picture: what the next tap does, finer steps, and how large the picture is. */
const PictureBar = (props: {
  readonly photo: Photo
  readonly crosses: Crosses
  readonly zoom: number
  readonly onZoom: (index: number) => void
}): ReactElement => {
  const { photo, crosses } = props
  const { activeId } = crosses
  const at = activeId === null ? undefined : crosses.where(activeId)
  return (
    <div className="picture-bar">
      <p role="status" data-testid="picture-hint">
        {hintOf(photo, crosses)}
      </p>
      {activeId === null ? null : at === undefined ? (
        <button type="button" onClick={() => crosses.putInMiddle(activeId)}>
          Put it in the middle
        </button>
      ) : (
        <StepButtons
          name={markWords(photo, activeId)}
          onStep={({ xPx, yPx }) => crosses.put(activeId, { xPx: at.xPx + xPx, yPx: at.yPx + yPx })}
        />
      )}
      <ZoomButtons zoom={props.zoom} onZoom={props.onZoom} />
    </div>
  )
}

/** The picture with its crosses: tap to put one, drag to move it; larger and smaller, scrolled by finger or wheel. */
export const PictureView = (props: {
  readonly photo: Photo
  readonly picture: Blob
  readonly crosses: Crosses
}): ReactElement => {
  const { photo, crosses } = props
  const address = pictureAddress(props.picture)
  const { frame, widthPx } = useFrameWidth()
  const [zoom, setZoom] = useState(0)
  const [scrolledPx, setScrolled] = useState(0)
  const scale = (widthPx * (ZOOMS[zoom] ?? 1)) / photo.size.widthPx
  const onTap = (event: MouseEvent<HTMLDivElement>): void => {
    if (crosses.tapId === null || scale === 0) return
    const box = event.currentTarget.getBoundingClientRect()
    crosses.put(crosses.tapId, {
      xPx: (event.clientX - box.left) / scale,
      yPx: (event.clientY - box.top) / scale,
    })
  }
  const { held } = crosses
  const heldXPx = held === null ? 0 : held.at.xPx * scale - scrolledPx
  return (
    <div className="picture-view">
      <PictureBar photo={photo} crosses={crosses} zoom={zoom} onZoom={setZoom} />
      <div className="picture-place">
        <div
          className="picture-frame"
          ref={frame}
          tabIndex={0}
          role="group"
          aria-label="The picture"
          onScroll={({ currentTarget }) => setScrolled(currentTarget.scrollLeft)}
        >
          <div
            className="picture-stage"
            data-testid="picture-stage"
            data-scale={scale}
            style={{ width: photo.size.widthPx * scale, height: photo.size.heightPx * scale }}
            onClick={onTap}
          >
            <img src={address} alt={`Photo ${photo.name}`} draggable={false} />
            <PictureLines photo={photo} crosses={crosses} scale={scale} />
            <PutCrosses photo={photo} crosses={crosses} scale={scale} />
          </div>
        </div>
        {held === null ? null : (
          <CrossMagnifier
            address={address}
            size={photo.size}
            at={held.at}
            scale={scale}
            corner={heldXPx < widthPx / 2 ? 'right' : 'left'}
          />
        )}
      </div>
    </div>
  )
}
