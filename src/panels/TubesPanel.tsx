import type { ReactElement } from 'react'
import { pointBetween, type PointMm } from '../domain/geometry/point'
import type { Tube, TubeRole } from '../domain/geometry/tube'
import { COUNTS, LIMITS, TEXT_LENGTHS } from '../domain/layout/document/limits'
import { addTube, removeTube, withTube } from '../domain/layout/edit/changeTubes'
import { movedHandle } from '../domain/layout/edit/move'
import { tubeName } from '../domain/layout/wording/names'
import { lengthWithUnit } from '../domain/units/length'
import { useActions, useApp } from '../state/react'
import { ChoiceField, type Choice } from './fields/ChoiceField'
import { LengthField } from './fields/LengthField'
import { PointFields } from './fields/PointFields'
import { TextField } from './fields/TextField'
import { TapePoints } from './TapePoints'

const ROLES: readonly Choice<TubeRole>[] = [
  { value: 'harness-bar', words: 'Harness bar' },
  { value: 'cage', words: 'Cage' },
  { value: 'floor', words: 'Floor' },
]

/** One point more: halfway along the last piece, so that the tube keeps its shape until the new point is moved. */
const withPointAdded = (points: readonly PointMm[]): readonly PointMm[] => {
  const last = points.at(-1)
  const before = points.at(-2)
  if (last === undefined || before === undefined) return points
  return [...points.slice(0, -1), pointBetween(before, last, 0.5), last]
}

const TubePoints = (props: { readonly tube: Tube }): ReactElement => {
  const { tube } = props
  const { edit } = useActions()
  const changePoints = (words: string, points: readonly PointMm[]): void =>
    edit(words, (layout) => withTube(layout, tube.id, { points }))
  return (
    <>
      {tube.points.map((point, index) => (
        // A tube's points have no identity of their own but their order.
        // oxlint-disable-next-line react/no-array-index-key
        <div key={index} className="tube-point">
          <PointFields
            legend={`Point ${index + 1} of the centre line`}
            point={point}
            limits={LIMITS.coordinateMm}
            onCommit={(to) =>
              edit(`Move point ${index + 1} of ${tube.name}`, (layout) =>
                movedHandle(layout, { kind: 'tube-point', tubeId: tube.id, index }, to),
              )
            }
          />
          {tube.points.length > COUNTS.tubePoints.min ? (
            <button
              type="button"
              onClick={() =>
                changePoints(
                  `Remove point ${index + 1} of ${tube.name}`,
                  tube.points.filter((_, other) => other !== index),
                )
              }
            >
              Remove this point
            </button>
          ) : null}
        </div>
      ))}
      <button
        type="button"
        disabled={tube.points.length >= COUNTS.tubePoints.max}
        onClick={() => changePoints(`Add a bend to ${tube.name}`, withPointAdded(tube.points))}
      >
        Add a bend
      </button>
    </>
  )
}

const SectionFields = (props: { readonly tube: Tube }): ReactElement => {
  const { tube } = props
  const { edit } = useActions()
  return (
    <div className="field-row">
      <LengthField
        label="Outside diameter"
        value={tube.outsideDiameterMm}
        limits={LIMITS.outsideDiameterMm}
        onCommit={(outsideDiameterMm) =>
          edit(`Change the diameter of ${tube.name}`, (layout) =>
            withTube(layout, tube.id, { outsideDiameterMm }),
          )
        }
      />
      <LengthField
        label="Wall"
        value={tube.wallMm}
        limits={{ ...LIMITS.wallMm, max: Math.min(LIMITS.wallMm.max, tube.outsideDiameterMm / 2) }}
        onCommit={(wallMm) =>
          edit(`Change the wall of ${tube.name}`, (layout) => withTube(layout, tube.id, { wallMm }))
        }
      />
    </div>
  )
}

const TubeEditor = (props: { readonly tube: Tube }): ReactElement => {
  const { tube } = props
  const { edit } = useActions()
  const layout = useApp((state) => state.layout)
  const unit = layout.units.length
  const name = tubeName(tube.id, layout)
  return (
    <details className="editor">
      <summary>
        {name}
        <span className="summary-figure">
          {' '}
          ⌀{lengthWithUnit(tube.outsideDiameterMm, unit)} × {lengthWithUnit(tube.wallMm, unit)}
        </span>
      </summary>
      <TextField
        label="Name"
        value={tube.name}
        maxLength={TEXT_LENGTHS.name}
        onCommit={(value) => edit(`Rename ${name}`, (old) => withTube(old, tube.id, { name: value }))}
      />
      <ChoiceField
        label="Used as"
        value={tube.role}
        choices={ROLES}
        onChange={(role) => edit(`Change the use of ${name}`, (old) => withTube(old, tube.id, { role }))}
      />
      <SectionFields tube={tube} />
      <TubePoints tube={tube} />
      <button type="button" onClick={() => edit(`Remove ${name}`, (old) => removeTube(old, tube.id))}>
        Remove this tube
      </button>
    </details>
  )
}

/** The round tubes of the chassis, as far as the mounting needs them. */
export const TubesPanel = (): ReactElement => {
  const tubes = useApp((state) => state.layout.tubes)
  const { edit } = useActions()
  return (
    <section className="panel" aria-label="Tubes">
      {tubes.length === 0 ? (
        <p className="hint">
          No tubes yet. Add the harness bar first: shoulder straps are wrapped round it or held by tabs on it.
        </p>
      ) : null}
      {tubes.map((tube) => (
        <TubeEditor key={tube.id} tube={tube} />
      ))}
      <div className="button-row">
        {ROLES.map((role) => (
          <button
            key={role.value}
            type="button"
            onClick={() =>
              edit(`Add a ${role.words.toLowerCase()} tube`, (layout) => addTube(layout, role.value))
            }
          >
            Add: {role.words.toLowerCase()}
          </button>
        ))}
      </div>
      <TapePoints />
    </section>
  )
}
