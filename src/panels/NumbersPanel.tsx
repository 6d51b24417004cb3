import { useDeferredValue, type ReactElement } from 'react'
import type { LengthUnit } from '../domain/layout/document/layout'
import type { SittingEvaluation } from '../domain/layout/evaluate/evaluation'
import { problemText } from '../domain/layout/wording/problemText'
import { useActions, useApp } from '../state/react'
import { currentPlaceEvaluation, currentSitting } from '../state/selectors'
import { SwitchField } from './fields/ChoiceField'
import { NumberTable } from './numbers/NumberTable'
import { SittingsTable } from './numbers/SittingsTable'

const VIEWS = [
  { value: 'shown', words: 'The drawn sitting' },
  { value: 'all', words: 'Every sitting' },
] as const

const Problems = (props: {
  readonly shown: SittingEvaluation
  readonly unit: LengthUnit
}): ReactElement | null =>
  props.shown.problems.length === 0 ? null : (
    <ul className="problems">
      {props.shown.problems.map((problem) => (
        <li key={`${problem.kind}-${problem.strap}`}>{problemText(problem, props.unit)}</li>
      ))}
    </ul>
  )

/** Every computed number: of the shown sitting beside its spread, or of all sittings beside each other. */
export const NumbersPanel = (): ReactElement => {
  const place = useDeferredValue(useApp(currentPlaceEvaluation))
  const shown = useDeferredValue(useApp(currentSitting))
  const layout = useDeferredValue(useApp((state) => state.layout))
  const numbers = useApp((state) => state.view.numbers)
  const { setView } = useActions()
  const Table = numbers === 'all' ? SittingsTable : NumberTable
  return (
    <section className="panel" aria-label="Numbers">
      {place === undefined || shown === undefined ? (
        <p className="hint">
          There is nobody at this place, so nothing can be computed. Add a person under People.
        </p>
      ) : (
        <>
          <SwitchField
            label="Numbers of"
            value={numbers}
            choices={VIEWS}
            onChange={(value) => setView({ numbers: value })}
          />
          <Problems shown={shown} unit={layout.units.length} />
          <Table place={place} shown={shown} layout={layout} />
        </>
      )}
    </section>
  )
}
