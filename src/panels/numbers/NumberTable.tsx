import { memo, useMemo, useState, type ReactElement } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import type { ShownPlace, SittingEvaluation } from '../../domain/layout/evaluate/evaluation'
import { valueText } from '../../domain/layout/wording/amounts'
import { quantityMeaning, quantityName } from '../../domain/layout/wording/quantities'
import { capitalised, verdictWord } from '../../domain/layout/wording/words'
import type { QuantityId } from '../../domain/straps/quantity'
import { quantityRows, type QuantityRow } from '../quantityTable'
import { lineKey, QuantityLine } from './QuantityLine'

const Cells = (props: { readonly row: QuantityRow; readonly layout: Layout }): ReactElement => {
  const { row, layout } = props
  const text = (value: number): string => valueText(row.id, value, layout.units.length)
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

const grouped = (rows: readonly QuantityRow[]): ReadonlyMap<QuantityId, readonly QuantityRow[]> => {
  const groups = new Map<QuantityId, QuantityRow[]>()
  for (const row of rows) groups.set(row.id, [...(groups.get(row.id) ?? []), row])
  return groups
}

/** Every number of the shown sitting beside its spread over all sittings. */
export const NumberTable = memo(function NumberTable(props: {
  readonly place: ShownPlace
  readonly shown: SittingEvaluation
  readonly layout: Layout
}): ReactElement {
  const { place, shown, layout } = props
  const [openKey, setOpenKey] = useState<string | null>(null)
  const groups = useMemo(() => grouped(quantityRows(place, shown)), [place, shown])
  return (
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
            <QuantityLine
              key={row.subject}
              id={id}
              subject={row.subject}
              layout={layout}
              shown={shown}
              isOpen={openKey === lineKey(id, row.subject)}
              onOpen={setOpenKey}
              columns={4}
            >
              <Cells row={row} layout={layout} />
            </QuantityLine>
          ))}
        </tbody>
      ))}
    </table>
  )
})
