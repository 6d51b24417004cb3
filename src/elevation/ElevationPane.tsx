import { type ReactElement, type RefObject, useCallback, useId, useRef } from 'react'
import type { Elevation } from '../domain/geometry/plane'
import type { LengthUnit } from '../domain/layout/document/layout'
import type { Drawing } from '../domain/layout/drawing/primitive'
import type { Handle } from '../domain/layout/edit/handle'
import { useAppStore } from '../state/react'
import { type Crowd, CrowdChooser } from './CrowdChooser'
import type { Hands } from './hands'
import type { PointerKind } from './handles/handleHit'
import type { Source } from './magnifier/paintMagnifier'
import { Magnifier, type MagnifierHandle } from './magnifier/Magnifier'
import type { PointPx, PaneSizes, SizePx } from './viewTransform'
import type { Palette } from './paint/palette'
import { INSTRUCTIONS, onPartKey, onViewKey } from './paneKeys'
import { usePaintedPhotos } from './photo/usePaintedPhotos'
import { StageView } from './StageView'
import { TraceOverlay } from './trace/TraceOverlay'
import { paneTransform } from './viewTransform'
import { type HandleDrag, useHandleDrag } from './useHandleDrag'
import { useLivePaint } from './useLivePaint'
import { useNudgeKeys } from './useNudgeKeys'
import { usePointerEvents, useWheelZoom } from './usePaneEvents'
import type { ViewControl } from './useView'

export interface PaneProps {
  readonly elevation: Elevation
  readonly size: SizePx
  readonly sizes: PaneSizes
  readonly drawing: Drawing
  readonly unit: LengthUnit
  readonly palette: Palette
  readonly control: ViewControl
  readonly handles: readonly Handle[]
  readonly hands: Hands
  /** The handles under the last tap while it is not said which is meant; null otherwise. */
  readonly crowd: Crowd | null
  readonly onCrowd: (crowd: Crowd | null) => void
  readonly onHover: (elevation: Elevation, at: PointPx | null, kind: PointerKind) => void
  readonly onRefused: (text: string) => void
}

/** What a finger or pen covers while it drags, beside it; the numbers stand there too. A mouse covers nothing. */
const usePaint = (props: PaneProps, drag: HandleDrag) => {
  const paint = useLivePaint(props, drag.draggedId)
  const isMagnified = drag.draggedBy === 'touch' || drag.draggedBy === 'pen'
  return { ...paint, live: isMagnified ? null : paint.live, magnified: isMagnified ? paint.live : null }
}

/** What the stage paints, kept for the inset that copies it. */
const useInset = () => {
  const magnifier = useRef<MagnifierHandle>(null)
  const sources = useRef<readonly Source[]>([])
  const onPainted = useCallback((painted: readonly Source[]) => {
    sources.current = painted
    magnifier.current?.repaint(painted)
  }, [])
  return { magnifier, sources, onPainted }
}

/** What lies beside the canvas within its frame: the enlarged drawing while a finger drags, the parts under the last tap. */
const Overlays = (
  props: PaneProps & {
    readonly magnified: ReturnType<typeof usePaint>['magnified']
    readonly inset: ReturnType<typeof useInset>
    readonly frame: RefObject<HTMLDivElement | null>
  },
): ReactElement => {
  const { crowd, magnified, size } = props
  return (
    <>
      {magnified === null ? null : (
        <Magnifier
          {...magnified}
          pane={size}
          palette={props.palette}
          sources={props.inset.sources}
          handle={props.inset.magnifier}
        />
      )}
      {crowd === null ? null : (
        <CrowdChooser
          crowd={crowd}
          elevation={props.elevation}
          handles={props.handles}
          pane={size}
          onClose={() => {
            props.onCrowd(null)
            props.frame.current?.focus({ preventScroll: true })
          }}
        />
      )}
    </>
  )
}

/** One elevation with everything that a pointer or the keyboard can do on it. */
export const ElevationPane = (props: PaneProps): ReactElement => {
  const { elevation, size, drawing, unit, palette, control } = props
  const store = useAppStore()
  const frame = useWheelZoom(props)
  const drag = useHandleDrag(elevation)
  const pointerEvents = usePointerEvents(props, drag)
  const nudge = useNudgeKeys(elevation, props.onRefused)
  const inset = useInset()
  const helpId = useId()
  const view = paneTransform(control.view, elevation)
  const paint = usePaint(props, drag)
  const photos = usePaintedPhotos(elevation)
  return (
    <div className="elevation-frame">
      <div
        ref={frame}
        className="elevation-pane"
        role="application"
        aria-label={elevation === 'side' ? 'Side elevation' : 'Top elevation'}
        aria-describedby={helpId}
        tabIndex={0}
        style={{ height: size.heightPx }}
        data-testid={`elevation-${elevation}`}
        data-scale={view.pxPerMm}
        data-origin-x={view.originXPx}
        data-origin-y={view.originYPx}
        data-dragging={drag.draggedId === null ? 'false' : 'true'}
        {...pointerEvents}
        onKeyDown={(event) => {
          if (nudge.onKeyDown(event) || onPartKey(store, props, event) || onViewKey(props, event))
            event.preventDefault()
        }}
        onKeyUp={nudge.onKeyUp}
        onBlur={nudge.onBlur}
      >
        <p id={helpId} className="elevation-help">
          {INSTRUCTIONS}
        </p>
        <StageView
          drawing={drawing}
          unit={unit}
          view={paint.view}
          size={size}
          palette={palette}
          handles={paint.handles}
          live={paint.live}
          photos={photos}
          onPainted={inset.onPainted}
        />
      </div>
      <TraceOverlay {...props} />
      <Overlays {...props} magnified={paint.magnified} inset={inset} frame={frame} />
    </div>
  )
}
