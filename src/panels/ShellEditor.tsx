import type { ReactElement } from 'react'
import type { Elevation } from '../domain/geometry/plane'
import type { PointMm } from '../domain/geometry/point'
import type { Place } from '../domain/layout/document/layout'
import { COUNTS, LIMITS, type NumberLimits } from '../domain/layout/document/limits'
import { handleId } from '../domain/layout/edit/handles'
import {
  backLengthLimits,
  isShellAsMade,
  rimBelowTopLimits,
  SHELL_LIMITS,
  type ShellSizes,
  shellSizes,
  withShellSizes,
} from '../domain/layout/edit/seatShell'
import {
  addShellPoint,
  removeShellPoint,
  shellPoints,
  withShellPoint,
} from '../domain/layout/edit/shellPoints'
import { useActions, useApp } from '../state/react'
import { ToggleField } from './fields/ChoiceField'
import { AngleField, LengthField } from './fields/LengthField'
import { PointFields } from './fields/PointFields'
import { Term } from './help/Term'

interface SizeField {
  readonly key: keyof ShellSizes
  readonly label: string
}

const GROUPS: readonly { readonly legend: string; readonly fields: readonly SizeField[] }[] = [
  {
    legend: 'Back',
    fields: [
      { key: 'backLengthMm', label: 'Cushion corner to top' },
      { key: 'hipToBackMm', label: 'Front, behind hip point' },
      { key: 'thicknessMm', label: 'Thickness of shell' },
    ],
  },
  {
    legend: 'Cushion',
    fields: [
      { key: 'cushionLengthMm', label: 'Back corner to front edge' },
      { key: 'backToCushionDeg', label: 'Angle to the back' },
    ],
  },
  {
    legend: 'Width of the shell',
    fields: [
      { key: 'hipWidthMm', label: 'At the hips' },
      { key: 'shoulderWidthMm', label: 'At the shoulders' },
    ],
  },
  {
    legend: 'Rim that straps pass over',
    fields: [
      { key: 'rimBelowTopMm', label: 'Below the top of the back' },
      { key: 'rimBehindFrontMm', label: 'Behind the front of the back' },
    ],
  },
]

const limitsOf = (key: keyof ShellSizes, sizes: ShellSizes): NumberLimits => {
  if (key === 'rimBelowTopMm') return rimBelowTopLimits(sizes)
  return key === 'backLengthMm' ? backLengthLimits(sizes) : SHELL_LIMITS[key]
}

const ShellSizeFields = (props: { readonly place: Place }): ReactElement => {
  const { place } = props
  const { edit } = useActions()
  const sizes = shellSizes(place.seat)
  return (
    <>
      <p className="hint" data-testid="shell-origin">
        {isShellAsMade(place.seat)
          ? 'Measure on the seat; the outlines and the rim follow. Cushion below the hip point is the field above.'
          : 'These sizes are read from outline points that were set one by one. Typing a size makes both outlines anew from all of them; undo brings the points back.'}
      </p>
      {GROUPS.map(({ legend, fields }) => (
        <fieldset key={legend}>
          <legend>{legend}</legend>
          <div className="field-row">
            {fields.map(({ key, label }) => {
              const Field = key === 'backToCushionDeg' ? AngleField : LengthField
              return (
                <Field
                  key={key}
                  label={label}
                  value={sizes[key]}
                  limits={limitsOf(key, sizes)}
                  testId={`shell-size:${key}`}
                  onCommit={(value) =>
                    edit(`Change the shell: ${label.toLowerCase()}`, (layout) =>
                      withShellSizes(layout, place.id, { [key]: value }),
                    )
                  }
                />
              )
            })}
          </div>
        </fieldset>
      ))}
    </>
  )
}

const AXES = { side: ['x', 'z'], top: ['x', 'y'] } as const

const PointRow = (props: {
  readonly place: Place
  readonly elevation: Elevation
  readonly index: number
  readonly point: PointMm
  readonly count: number
}): ReactElement => {
  const { place, elevation, index, point, count } = props
  const { edit, selectHandle } = useActions()
  const id = handleId({ kind: 'shell-point', placeId: place.id, elevation, index })
  const isSelected = useApp((state) => state.selectedHandleId === id)
  const name = `point ${index + 1} of the ${elevation} outline`
  return (
    <li className="shell-point" data-selected={isSelected ? 'true' : undefined}>
      <PointFields
        legend={`Point ${index + 1}`}
        point={point}
        limits={LIMITS.seatCoordinateMm}
        axes={AXES[elevation]}
        onCommit={(to) =>
          edit(`Move ${name}`, (layout) => withShellPoint(layout, place.id, { elevation, index }, to))
        }
      />
      <div className="button-row">
        <button
          type="button"
          disabled={count >= COUNTS.outlinePoints.max}
          title={
            count >= COUNTS.outlinePoints.max
              ? `An outline holds at most ${COUNTS.outlinePoints.max} points`
              : undefined
          }
          aria-label={`Add a point after ${name}`}
          onClick={() => {
            selectHandle(null)
            edit(`Add a point after ${name}`, (layout) => addShellPoint(layout, place.id, elevation, index))
          }}
        >
          Add after
        </button>
        <button
          type="button"
          disabled={count <= COUNTS.outlinePoints.min}
          title={
            count <= COUNTS.outlinePoints.min
              ? `An outline has at least ${COUNTS.outlinePoints.min} points`
              : undefined
          }
          aria-label={`Remove ${name}`}
          onClick={() => {
            selectHandle(null)
            edit(`Remove ${name}`, (layout) => removeShellPoint(layout, place.id, elevation, index))
          }}
        >
          Remove
        </button>
      </div>
    </li>
  )
}

const PointList = (props: { readonly place: Place; readonly elevation: Elevation }): ReactElement => {
  const { place, elevation } = props
  const points = shellPoints(place.seat, elevation)
  return (
    <details className="editor">
      <summary>
        {elevation === 'side' ? 'Side outline' : 'Top outline'}: {points.length} points
      </summary>
      <p className="hint">
        {elevation === 'side'
          ? 'From the hip point: x behind it, square to the torso line; z up the torso line.'
          : 'From the hip point with the seat upright: x rearward, y to the right. A point alike on both sides takes its mirror image along.'}
      </p>
      <ol className="shell-points">
        {points.map((point, index) => (
          <PointRow
            // Outline points have no identity of their own but their order.
            // oxlint-disable-next-line react/no-array-index-key
            key={index}
            place={place}
            elevation={elevation}
            index={index}
            point={point}
            count={points.length}
          />
        ))}
      </ol>
    </details>
  )
}

/** The seat's shell: sizes that make its outlines and rim, and the outline points one by one. */
export const ShellEditor = (props: { readonly place: Place }): ReactElement => {
  const { place } = props
  const shell = useApp((state) => state.view.shell)
  const { setView, selectHandle } = useActions()
  return (
    <section aria-label="Shell">
      <div className="term-heading">
        <h3>Shell</h3>
        <Term id="shell" />
      </div>
      <ShellSizeFields place={place} />
      <ToggleField
        label="Shape the shell"
        hint="The drawing then offers the points of the outlines to drag instead of its other handles. The rim stays where it is."
        checked={shell === 'shaped'}
        onChange={(isShaped) => {
          selectHandle(null)
          setView({ shell: isShaped ? 'shaped' : 'fixed' })
        }}
      />
      <PointList place={place} elevation="side" />
      <PointList place={place} elevation="top" />
    </section>
  )
}
