import { memo, useDeferredValue, useMemo, type ReactElement } from 'react'
import type { Layout } from '../domain/layout/document/layout'
import type { PlaceEvaluation, SittingEvaluation } from '../domain/layout/evaluate/evaluation'
import { valueText } from '../domain/layout/wording/amounts'
import { subjectName } from '../domain/layout/wording/names'
import { problemText } from '../domain/layout/wording/problemText'
import { quantityMeaning, quantityName } from '../domain/layout/wording/quantities'
import { capitalised, verdictWord } from '../domain/layout/wording/words'
import type { QuantityId } from '../domain/straps/quantity'
import { useApp } from '../state/react'
import { currentPlaceEvaluation, currentSitting } from '../state/selectors'
import { quantityRows, type QuantityRow } from './quantityTable'

const Row = (props: { readonly row: QuantityRow; readonly layout: Layout }): ReactElement => {
  const { row, layout } = props
  const text = (value: number): string => valueText(row.id, value, layout.units.length)
  return (
    <tr>
      <th scope="row">{capitalised(subjectName(row.subject, layout))}</th>
      <td
        className="number"
        data-testid={`quantity:${row.id}:${row.subject}`}
        data-value={row.value ?? undefined}
      >
        {row.value === null ? 'none' : text(row.value)}
      </td>
      <td className="number">
        {text(row.lowest) === text(row.highest) ? 'same' : `${text(row.lowest)} to ${text(row.highest)}`}
      </td>
      <td data-verdict={row.worst?.verdict}>
        {row.worst === null ? 'no rule' : verdictWord(row.worst.verdict)}
      </td>
    </tr>
  )
}

const grouped = (rows: readonly QuantityRow[]): ReadonlyMap<QuantityId, readonly QuantityRow[]> => {
  const groups = new Map<QuantityId, QuantityRow[]>()
  for (const row of rows) groups.set(row.id, [...(groups.get(row.id) ?? []), row])
  return groups
}

const NumberTable = memo(function NumberTable(props: {
  readonly place: PlaceEvaluation
  readonly shown: SittingEvaluation
  readonly layout: Layout
}): ReactElement {
  const { place, shown, layout } = props
  const groups = useMemo(() => grouped(quantityRows(place, shown)), [place, shown])
  return (
    <>
      {shown.problems.length === 0 ? null : (
        <ul className="problems">
          {shown.problems.map((problem) => (
            <li key={`${problem.kind}-${problem.strap}`}>{problemText(problem, layout.units.length)}</li>
          ))}
        </ul>
      )}
      <table className="numbers">
        <thead>
          <tr>
            <th scope="col">Of</th>
            <th scope="col">This sitting</th>
            <th scope="col">All sittings</th>
            <th scope="col">Rules</th>
          </tr>
        </thead>
        {[...groups].map(([id, rows]) => (
          <tbody key={id}>
            <tr className="quantity-name">
              <th scope="rowgroup" colSpan={4}>
                {capitalised(quantityName(id))}
                <small>{quantityMeaning(id)}</small>
              </th>
            </tr>
            {rows.map((row) => (
              <Row key={row.subject} row={row} layout={layout} />
            ))}
          </tbody>
        ))}
      </table>
    </>
  )
})

/** Every computed number of the shown sitting, beside its spread over all sittings. */
export const NumbersPanel = (): ReactElement => {
  const place = useDeferredValue(useApp(currentPlaceEvaluation))
  const shown = useDeferredValue(useApp(currentSitting))
  const layout = useDeferredValue(useApp((state) => state.layout))
  return (
    <section className="panel" aria-label="Numbers">
      {place === undefined || shown === undefined ? (
        <p className="hint">
          There is nobody at this place, so nothing can be computed. Add a person under People.
        </p>
      ) : (
        <NumberTable place={place} shown={shown} layout={layout} />
      )}
    </section>
  )
}
