import type { Context } from 'konva/lib/Context'
import type { Layer as KonvaLayer } from 'konva/lib/Layer'
import { memo, type ReactElement, useCallback, useLayoutEffect, useRef } from 'react'
import { Layer, Shape, Stage } from 'react-konva/lib/ReactKonvaCore'
import 'konva/lib/Shape'
import type { LengthUnit } from '../domain/layout/document/layout'
import type { Drawing } from '../domain/layout/drawing/primitive'
import type { Source } from './magnifier/paintMagnifier'
import type { Palette } from './paint/palette'
import { paintDrawing } from './paint/paintDrawing'
import { paintGrid } from './paint/paintGrid'
import { type PaintedHandle, paintHandles, paintLiveText } from './paint/paintHandles'
import { paintTitle } from './paint/paintTitle'
import { type PaintedPhoto, paintPhoto } from './photo/paintPhoto'
import type { PointPx, SizePx, ViewTransform } from './viewTransform'

interface PaperProps {
  readonly view: ViewTransform
  readonly size: SizePx
  readonly palette: Palette
  /** A photo lies below the drawing. */
  readonly isOverPhoto?: boolean
}

/** Line widths and lettering are constant on the screen, so the shapes paint themselves in px instead of being scaled by Konva. */
const Painted = (props: { readonly paint: (canvas: CanvasRenderingContext2D) => void }): ReactElement => (
  <Shape
    listening={false}
    perfectDrawEnabled={false}
    sceneFunc={(context: Context) => props.paint(context._context)}
  />
)

interface DrawingProps extends PaperProps {
  readonly drawing: Drawing
  readonly unit: LengthUnit
}

const DrawingShape = memo(({ drawing, unit, view, size, palette, isOverPhoto = false }: DrawingProps) => (
  <Painted
    paint={(canvas) => {
      const brush = { canvas, view, palette, isOverPhoto }
      paintGrid(brush, unit, size)
      paintDrawing(brush, drawing, size)
      paintTitle(brush, drawing.elevation, size)
    }}
  />
))

interface HandlesProps extends PaperProps {
  readonly handles: readonly PaintedHandle[]
  readonly live: { readonly at: PointPx; readonly lines: readonly string[] } | null
}

const HandlesShape = memo(({ handles, live, view, size, palette, isOverPhoto = false }: HandlesProps) => (
  <Painted
    paint={(canvas) => {
      const brush = { canvas, view, palette, isOverPhoto }
      paintHandles(brush, handles)
      if (live !== null) paintLiveText(brush, live.at, live.lines, size.widthPx)
    }}
  />
))

const PhotosShape = memo(({ photos, view }: PaperProps & { readonly photos: readonly PaintedPhoto[] }) => (
  <Painted
    paint={(canvas) => {
      for (const photo of photos) paintPhoto(canvas, view, photo)
    }}
  />
))

/** A layer's canvas, to copy from. */
const sourceOf = (layer: KonvaLayer): Source => {
  const canvas = layer.getCanvas()
  return { canvas: canvas._canvas, ratio: canvas.getPixelRatio() }
}

/** Says after every frame what has been painted below the handles. The same function for the life of the stage. */
const usePainted = (onPainted: (sources: readonly Source[]) => void) => {
  const latest = useRef(onPainted)
  useLayoutEffect(() => {
    latest.current = onPainted
  })
  return useCallback(({ node }: { readonly node: KonvaLayer }) => {
    const layers = node.getStage()?.getLayers() ?? []
    latest.current(layers.slice(0, -1).map(sourceOf))
  }, [])
}

/**
 * One elevation on canvas: the drawing below, what can be taken hold of above. Nothing listens: pointers are read by the pane
 * around it, so no hidden hit canvas has to be painted for every frame.
 */
export const StageView = (
  props: DrawingProps &
    HandlesProps & {
      readonly photos: readonly PaintedPhoto[]
      readonly onPainted: (sources: readonly Source[]) => void
    },
): ReactElement => {
  const onDraw = usePainted(props.onPainted)
  const isOverPhoto = props.photos.length > 0
  return (
    <Stage width={props.size.widthPx} height={props.size.heightPx} listening={false}>
      {props.photos.length === 0 ? null : (
        <Layer listening={false}>
          <PhotosShape photos={props.photos} view={props.view} size={props.size} palette={props.palette} />
        </Layer>
      )}
      <Layer listening={false}>
        <DrawingShape
          drawing={props.drawing}
          unit={props.unit}
          view={props.view}
          size={props.size}
          palette={props.palette}
          isOverPhoto={isOverPhoto}
        />
      </Layer>
      <Layer listening={false} onDraw={onDraw}>
        <HandlesShape
          handles={props.handles}
          live={props.live}
          view={props.view}
          size={props.size}
          palette={props.palette}
          isOverPhoto={isOverPhoto}
        />
      </Layer>
    </Stage>
  )
}
