import { useDeferredValue, useState, type ReactElement } from 'react'
import type { Layout } from '../domain/layout/document/layout'
import type { SittingEvaluation } from '../domain/layout/evaluate/evaluation'
import { problemText } from '../domain/layout/wording/problemText'
import { useActions, useApp } from '../state/react'
import { currentPlaceEvaluation, currentSitting } from '../state/selectors'
import { SwitchField } from './fields/ChoiceField'
import { NumberTable } from './numbers/NumberTable'
import { SittingsTable } from './numbers/SittingsTable'
import type { SittingOrder } from './numbers/sittingTable'
import { SlotOffer } from './SlotOffer'

const VIEWS = [
  { value: 'shown', words: 'The drawn sitting' },
  { value: 'all', words: 'Every sitting' },
] as const

const ORDERS = [
  { value: 'worst', words: 'Worst first' },
  { value: 'drawn', words: 'By occupant' },
] as const

const Problems = (props: {
  readonly shown: SittingEvaluation
  readonly layout: Layout
}): ReactElement | null =>
  props.shown.problems.length === 0 ? null : (
    <ul className="problems">
      {props.shown.problems.map((problem) => (
        <li key={`${problem.kind}-${problem.strap}`}>
          {problemText(problem, props.layout)} <SlotOffer problem={problem} />
        </li>
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
  const [order, setOrder] = useState<SittingOrder>('worst')
  return (
    <section className="panel" aria-label="Numbers">
      {place === undefined || shown === undefined ? (
        <p className="hint">
          There is nobody at this place, so nothing can be computed. Add a person under People.
        </p>
      ) : (
        <>
          <div className="numbers-tools">
            <SwitchField
              label="Numbers of"
              value={numbers}
              choices={VIEWS}
              onChange={(value) => setView({ numbers: value })}
            />
            {numbers === 'all' ? (
              <SwitchField label="Sittings in order" value={order} choices={ORDERS} onChange={setOrder} />
            ) : null}
          </div>
          <Problems shown={shown} layout={layout} />
          {numbers === 'all' ? (
            <SittingsTable place={place} shown={shown} layout={layout} order={order} />
          ) : (
            <NumberTable place={place} shown={shown} layout={layout} />
          )}
        </>
      )}
    </section>
  )
}
