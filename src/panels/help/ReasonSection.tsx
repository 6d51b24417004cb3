import { type ReactElement, useId, useMemo, useState } from 'react'
import { reasonFigure, reasonTrial, type Trial } from '../../domain/layout/drawing/terms/reasonFigures'
import { type ReasonId, reasonOf } from '../../domain/layout/wording/reasons'
import { angleText } from '../../domain/units/angle'
import { lengthWithUnit } from '../../domain/units/length'
import { useApp } from '../../state/react'
import { FigureSvg } from '../figure/FigureSvg'

const TrialSlider = (props: {
  readonly trial: Trial
  readonly value: number
  readonly tries: string
  readonly onChange: (value: number) => void
}): ReactElement => {
  const { trial, value, tries } = props
  const id = useId()
  const unit = useApp((state) => state.layout.units.length)
  const shown = trial.unit === 'mm' ? lengthWithUnit(value, unit) : angleText(value)
  return (
    <div className="reason-trial no-print">
      <label htmlFor={id}>
        {trial.words}: <output>{shown}</output>
      </label>
      <input
        id={id}
        type="range"
        min={trial.min}
        max={trial.max}
        step={trial.step}
        value={value}
        aria-valuetext={shown}
        onChange={(event) => props.onChange(Number(event.target.value))}
      />
      <p className="hint">{tries} It is the guide’s own car; yours stays as it is.</p>
    </div>
  )
}

/** One reason of the trade with a drawing that is computed as everything else is, and moves where something can be tried. */
export const ReasonSection = (props: { readonly id: ReasonId }): ReactElement => {
  const { id } = props
  const reason = reasonOf(id)
  const trial = reasonTrial(id)
  const unit = useApp((state) => state.layout.units.length)
  const [value, setValue] = useState(trial?.start ?? 0)
  const figure = useMemo(() => reasonFigure(id, value, unit), [id, value, unit])
  return (
    <article className="reason" aria-labelledby={`reason-${id}`} data-testid={`reason:${id}`}>
      <h4 id={`reason-${id}`}>{reason.title}</h4>
      <div className="reason-figure">
        <FigureSvg figure={figure.picture} description={figure.picture.description} />
        {trial === null || reason.tries === undefined ? null : (
          <TrialSlider trial={trial} value={value} tries={reason.tries} onChange={setValue} />
        )}
        <ul className="reason-readings" aria-live="polite">
          {figure.readings.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </div>
      <div className="reason-words">
        {reason.says.map((paragraph) => (
          <p key={paragraph}>{paragraph}</p>
        ))}
        <ul className="reason-sources">
          {reason.sources.map((source) => (
            <li key={source} className="hint">
              {source}
            </li>
          ))}
        </ul>
      </div>
    </article>
  )
}
