import type { ReactElement } from 'react'
import { LIMITS } from '../domain/layout/document/limits'
import { withTolerance, withToleranceGiven } from '../domain/layout/edit/changeTolerance'
import { SPREAD_WORDS } from '../domain/layout/wording/toleranceText'
import { STARTING_TOLERANCE, type WeldTolerance } from '../domain/rules/tolerance'
import { useActions, useApp } from '../state/react'
import { ChoiceField, ToggleField } from './fields/ChoiceField'
import { AngleField, LengthField } from './fields/LengthField'

const AXES = [
  { key: 'xMm', words: '± along x (fore and aft)' },
  { key: 'yMm', words: '± along y (across)' },
  { key: 'zMm', words: '± along z (height)' },
] as const

const ANGLES = [
  { key: 'tabDeg', words: '± tab angle' },
  { key: 'reclineDeg', words: '± recline reading' },
] as const

const SPREADS = [
  { value: 'worst-case', words: 'The worst case only' },
  { value: 'even', words: 'And the chance, any error as likely' },
  { value: 'mostly-small', words: 'And the chance, small errors likelier' },
] as const

const Fields = (props: { readonly tolerance: WeldTolerance }): ReactElement => {
  const { tolerance } = props
  const { edit } = useActions()
  const change = (words: string, patch: Partial<WeldTolerance>): void =>
    edit(`Change the weld error: ${words}`, (layout) => withTolerance(layout, patch))
  return (
    <>
      <div className="field-row">
        {AXES.map(({ key, words }) => (
          <LengthField
            key={key}
            label={words}
            value={tolerance[key]}
            limits={LIMITS.weldErrorMm}
            testId={`tolerance:${key}`}
            onCommit={(value) => change(words, { [key]: value })}
          />
        ))}
      </div>
      <div className="field-row">
        {ANGLES.map(({ key, words }) => (
          <AngleField
            key={key}
            label={words}
            value={tolerance[key]}
            limits={LIMITS.angleErrorDeg}
            testId={`tolerance:${key}`}
            onCommit={(value) => change(words, { [key]: value })}
          />
        ))}
      </div>
      <ChoiceField
        label="Say of each finding"
        value={tolerance.spread}
        choices={SPREADS}
        testId="tolerance:spread"
        onChange={(spread) => change('what is said', { spread })}
      />
      <p className="hint">{SPREAD_WORDS[tolerance.spread]}</p>
    </>
  )
}

/** What the shop's welding and measuring may be off by: the findings then say what that can make of them. */
export const ToleranceFields = (): ReactElement => {
  const tolerance = useApp((state) => state.layout.tolerance)
  const { edit } = useActions()
  return (
    <fieldset>
      <legend>Weld and measuring error</legend>
      <ToggleField
        label="Count with an error"
        checked={tolerance !== undefined}
        hint="Each finding then also says whether it could leave its limits. The values it starts with are our judgement: put in what your shop really holds."
        onChange={(checked) =>
          edit(checked ? 'Count with a weld error' : 'Count without a weld error', (layout) =>
            withToleranceGiven(layout, checked ? STARTING_TOLERANCE : null),
          )
        }
      />
      {tolerance === undefined ? null : <Fields tolerance={tolerance} />}
    </fieldset>
  )
}
