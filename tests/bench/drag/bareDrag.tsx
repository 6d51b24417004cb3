import type { Context } from 'konva/lib/Context'
import 'konva/lib/shapes/Circle'
import { useState, type ReactElement } from 'react'
import { createRoot } from 'react-dom/client'
import { Circle, Layer, Shape, Stage } from 'react-konva/lib/ReactKonvaCore'
import example from '../../../public/examples/rock-buggy.layout.json'
import type { Elevation } from '../../../src/domain/geometry/plane'
import { elevationDrawing } from '../../../src/domain/layout/drawing/elevationDrawing'
import { parseLayout } from '../../../src/domain/layout/document/parseLayout'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { paintDrawing } from '../../../src/elevation/paint/paintDrawing'
import { paletteOf } from '../../../src/elevation/paint/palette'
import { fittedView, paneTransform, type PaneSizes } from '../../../src/elevation/viewTransform'
import '../../../src/panels/colours.css'

// What a drag costs when nothing is computed: the same drawing, made once, in the same two stages, and one Konva circle that is
// dragged over it, its place held in React state.

const SIZES = {
  side: { widthPx: 960, heightPx: 420 },
  top: { widthPx: 960, heightPx: 240 },
} satisfies PaneSizes

const parsed = parseLayout(example)
if (!parsed.ok) throw new Error('the example does not parse')
const evaluation = evaluateLayout(parsed.value)
const drawingOf = (elevation: Elevation) =>
  elevationDrawing(parsed.value, evaluation, elevation, {
    placeId: parsed.value.places[0]?.id ?? null,
    sittingId: null,
    ghosts: false,
    zones: 'all',
    focusedFindingId: null,
    dimensions: 'none',
    lengthUnit: parsed.value.units.length,
    angles: true,
    handles: true,
  })
const drawings = { side: drawingOf('side'), top: drawingOf('top') }
const view = fittedView({ side: drawings.side.bounds, top: drawings.top.bounds }, SIZES)
const palette = paletteOf(document.documentElement)

interface Place {
  readonly x: number
  readonly y: number
}

const Pane = (props: {
  readonly elevation: Elevation
  readonly at: Place
  readonly onMove: (at: Place) => void
}): ReactElement => {
  const size = SIZES[props.elevation]
  return (
    <Stage width={size.widthPx} height={size.heightPx}>
      <Layer>
        <Shape
          listening={false}
          perfectDrawEnabled={false}
          sceneFunc={(context: Context) =>
            paintDrawing(
              { canvas: context._context, view: paneTransform(view, props.elevation), palette },
              drawings[props.elevation],
              size,
            )
          }
        />
        <Circle
          {...props.at}
          radius={22}
          stroke="black"
          draggable
          onDragMove={(event) => props.onMove({ x: event.target.x(), y: event.target.y() })}
        />
      </Layer>
    </Stage>
  )
}

const Page = (): ReactElement => {
  const [at, setAt] = useState<Place>({ x: 480, y: 200 })
  return (
    <>
      <Pane elevation="top" at={{ x: at.x, y: 120 }} onMove={setAt} />
      <div data-testid="bare">
        <Pane elevation="side" at={at} onMove={setAt} />
      </div>
    </>
  )
}

const root = document.getElementById('page')
if (root !== null) createRoot(root).render(<Page />)
