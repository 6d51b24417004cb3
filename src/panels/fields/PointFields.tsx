import type { ReactElement } from 'react'
import type { PointMm } from '../../domain/geometry/point'
import type { NumberLimits } from '../../domain/layout/document/limits'
import { LengthField } from './LengthField'

const AXES = [
  { key: 'xMm', letter: 'x', words: 'rearward' },
  { key: 'yMm', letter: 'y', words: 'right' },
  { key: 'zMm', letter: 'z', words: 'up' },
] as const

/** The three coordinates of one point, each typed alone; `onCommit` gets only the one that was typed. */
export const PointFields = (props: {
  readonly legend: string
  readonly point: PointMm
  readonly limits: NumberLimits
  readonly onCommit: (change: Partial<PointMm>) => void
  readonly axes?: readonly ('x' | 'y' | 'z')[]
}): ReactElement => (
  <fieldset className="point-fields">
    <legend>{props.legend}</legend>
    <div className="field-row">
      {AXES.filter((axis) => props.axes?.includes(axis.letter) ?? true).map((axis) => (
        <LengthField
          key={axis.key}
          label={`${axis.letter} ${axis.words}`}
          value={props.point[axis.key]}
          limits={props.limits}
          onCommit={(mm) => props.onCommit({ [axis.key]: mm })}
        />
      ))}
    </div>
  </fieldset>
)
