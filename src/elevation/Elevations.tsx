import './elevations.css'
import {
  type ReactElement,
  type RefObject,
  useCallback,
  useEffect,
  useImperativeHandle,
  useMemo,
  useRef,
  useState,
} from 'react'
import { useStrictMode as setStrictMode } from 'react-konva/lib/ReactKonvaCore'
import { type Elevation, projected } from '../domain/geometry/plane'
import type { Handle } from '../domain/layout/edit/handle'
import { useApp } from '../state/react'
import { lengthUnitOf } from '../state/selectors'
import type { Crowd } from './CrowdChooser'
import { ElevationPane, type PaneProps } from './ElevationPane'
import { freeHands } from './hands'
import { coordinateText } from './handles/liveText'
import { handleAt } from './handles/handleHit'
import type { FitTarget } from './heldView'
import { handleSpots, usePaneHandles } from './paneHandles'
import { paneSizes } from './paneSizes'
import { useDrawing, useFitBounds } from './useDrawings'
import { useGhostPointer } from './useGhostPointer'
import { useElementSize } from './useElementSize'
import { usePalette } from './usePalette'
import { useView } from './useView'
import { ViewBar } from './ViewBar'
import { paneTransform, type SizePx, toMm, visibleBox, zoomedAbout } from './viewTransform'

// The store is the only truth: what is on the canvas always follows the properties, whatever Konva itself may have changed.
setStrictMode(true)

/** What the buttons beside the drawing can do with its view. */
interface BoardHandle {
  readonly zoom: (factor: number) => void
  readonly fit: (target: FitTarget) => void
}

interface BoardProps {
  readonly room: SizePx
  readonly ghosts: boolean
  readonly board: RefObject<BoardHandle | null>
  readonly onHover: (text: string) => void
  readonly onRefused: (text: string) => void
}

const DrawnPane = (
  props: Omit<PaneProps, 'drawing' | 'handles' | 'crowd' | 'onCrowd' | 'onHover'> & {
    readonly ghosts: boolean
    readonly onHover: (text: string) => void
  },
): ReactElement => {
  const { elevation, control, size, unit } = props
  const [crowd, setCrowd] = useState<Crowd | null>(null)
  // Labels keep inside a fitted drawing; once it is zoomed or panned they stay on the car, or they would jump about under the hand.
  const within = useMemo(
    () => (control.isFitted ? visibleBox(paneTransform(control.view, elevation), size) : null),
    [control, elevation, size],
  )
  const drawing = useDrawing(elevation, control.view.pxPerMm, within, props.ghosts)
  const handles = usePaneHandles(elevation)
  const pointAt = useGhostPointer(drawing, elevation, control)
  const named = useRef<Handle['id'] | null>(null)
  const write = props.onHover
  const nameIt = useCallback(
    ({ name, point }: Handle) =>
      write(`${name}: ${coordinateText(elevation, projected(point, elevation), unit)}`),
    [write, elevation, unit],
  )
  // What is named stays named when a finger is lifted: its place follows the move that was still being drawn, an undo, a typed value.
  useEffect(() => {
    const under = handles.find(({ id }) => id === named.current)
    if (under !== undefined) nameIt(under)
  }, [handles, nameIt])
  const onHover: PaneProps['onHover'] = (_, at, kind) => {
    pointAt(at)
    named.current = null
    if (at === null) return write('')
    const view = paneTransform(control.latest(), elevation)
    const spot = handleAt(handleSpots(handles, elevation, view), at, null, kind)
    const under = handles.find(({ id }) => id === spot?.id)
    if (under === undefined) return write(coordinateText(elevation, toMm(view, at), unit))
    named.current = under.id
    nameIt(under)
  }
  return (
    <ElevationPane
      {...props}
      crowd={crowd}
      onCrowd={setCrowd}
      onHover={onHover}
      drawing={drawing}
      handles={handles}
    />
  )
}

/** The top elevation above the side elevation (third angle) on one x axis. */
const ORDER: readonly Elevation[] = ['top', 'side']

/** The elevations in a room of known size. */
const Board = ({ room, ghosts, board, onHover, onRefused }: BoardProps): ReactElement => {
  const unit = useApp(lengthUnitOf)
  const shown = useApp((state) => state.view.elevations)
  const bounds = useFitBounds()
  const palette = usePalette()
  const sizes = useMemo(() => paneSizes(room, shown, bounds.car), [room, shown, bounds.car])
  const control = useView(bounds, sizes)
  useImperativeHandle(
    board,
    () => ({
      fit: control.fit,
      zoom: (factor) => {
        const elevation = sizes.side === undefined ? 'top' : 'side'
        const size = sizes[elevation] ?? room
        const at = { xPx: size.widthPx / 2, yPx: size.heightPx / 2 }
        control.set(zoomedAbout(control.latest(), { elevation, at, factor }, sizes))
      },
    }),
    [control, sizes, room],
  )
  const [hands] = useState(freeHands)
  const common = { hands, sizes, unit, palette, control, ghosts, onHover, onRefused }
  return (
    <>
      {ORDER.map((elevation) => {
        const size = sizes[elevation]
        return size === undefined ? null : (
          <DrawnPane key={elevation} elevation={elevation} size={size} {...common} />
        )
      })}
    </>
  )
}

/** Both elevations with their view buttons: the drawing that the whole page is about. */
export const Elevations = (): ReactElement => {
  const roomElement = useRef<HTMLDivElement>(null)
  const room = useElementSize(roomElement)
  const board = useRef<BoardHandle>(null)
  const readout = useRef<HTMLOutputElement>(null)
  const [ghosts, setGhosts] = useState(true)
  const [note, setNote] = useState('')
  const onReadout = useCallback((element: HTMLOutputElement | null) => {
    readout.current = element
  }, [])
  const onHover = useCallback((text: string) => {
    if (readout.current !== null) readout.current.textContent = text
  }, [])
  return (
    <div className="elevations">
      <div className="elevation-room" ref={roomElement}>
        {room === null ? null : (
          <Board room={room} ghosts={ghosts} board={board} onHover={onHover} onRefused={setNote} />
        )}
      </div>
      <ViewBar
        onZoom={(factor) => board.current?.zoom(factor)}
        onFit={(target) => board.current?.fit(target)}
        ghosts={ghosts}
        onGhosts={setGhosts}
        note={note}
        onReadout={onReadout}
      />
    </div>
  )
}
