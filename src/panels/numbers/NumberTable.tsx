import { memo, useCallback, useMemo, type ReactElement } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import type { ShownPlace, SittingEvaluation } from '../../domain/layout/evaluate/evaluation'
import { valueText } from '../../domain/layout/wording/amounts'
import { verdictWord } from '../../domain/layout/wording/words'
import { quantityGroups, type QuantityRow } from './quantityRows'
import { QuantityTable } from './QuantityTable'

const Cells = (props: {
  readonly row: QuantityRow
  readonly unit: Layout['units']['length']
}): ReactElement => {
  const { row, unit } = props
  const text = (value: number): string => valueText(row.id, value, unit)
  return (
    <>
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
    </>
  )
}

const HEADS = (
  <>
    <th scope="col">This sitting</th>
    <th scope="col">All sittings</th>
    <th scope="col">Rules</th>
  </>
)

/** Every number of the shown sitting beside its spread over all sittings. */
export const NumberTable = memo(function NumberTable(props: {
  readonly place: ShownPlace
  readonly shown: SittingEvaluation
  readonly layout: Layout
}): ReactElement {
  const { place, shown, layout } = props
  const unit = layout.units.length
  const groups = useMemo(() => quantityGroups(place, shown), [place, shown])
  const cells = useCallback((row: QuantityRow) => <Cells row={row} unit={unit} />, [unit])
  return (
    <QuantityTable
      className="numbers"
      testId="numbers-table"
      heads={HEADS}
      columns={3}
      saysMeaning
      groups={groups}
      cells={cells}
      layout={layout}
      shown={shown}
    />
  )
})
