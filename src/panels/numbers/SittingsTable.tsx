import { memo, useCallback, useMemo, type ReactElement } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import type { ShownPlace, SittingEvaluation } from '../../domain/layout/evaluate/evaluation'
import { valueText } from '../../domain/layout/wording/amounts'
import { sittingName } from '../../domain/layout/wording/names'
import { verdictWord } from '../../domain/layout/wording/words'
import type { ShownFinding } from '../../domain/rules/finding'
import type { QuantityId } from '../../domain/straps/quantity'
import { useActions } from '../../state/react'
import {
  sittingTable,
  type SittingCell,
  type SittingColumn,
  type SittingOrder,
  type SittingRow,
  type SittingTable,
} from './sittingTable'
import { useMediaQuery } from '../useMediaQuery'
import { MARKS } from '../verdicts'
import { QuantityTable } from './QuantityTable'
import { SittingChooser } from './SittingChooser'

/** One column at a time from here down: two would not fit beside the names. Kept equal to the query in shell.css. */
const ONE_COLUMN = '(max-width: 640px)'

/** "worst: broken" in the sitting that decides a finding, "worst: clear" where even that one keeps the rule. */
const worstWords = ({ verdict }: ShownFinding): string => `worst: ${verdictWord(verdict)}`

const Cell = memo(function Cell(props: {
  readonly cell: SittingCell
  readonly id: QuantityId
  readonly unit: Layout['units']['length']
  readonly isShown: boolean
}): ReactElement {
  const { cell, id, unit, isShown } = props
  const worst = cell.worstOf[0]
  return (
    <td
      className="number"
      data-value={cell.value ?? undefined}
      data-verdict={worst?.verdict}
      data-shown={isShown ? 'true' : undefined}
    >
      {cell.value === null ? 'none' : valueText(id, cell.value, unit)}
      {worst === undefined ? null : (
        <span className="worst-mark">
          <span aria-hidden="true">{MARKS[worst.verdict]} </span>
          {worstWords(worst)}
        </span>
      )}
    </td>
  )
})

const ColumnHead = (props: {
  readonly column: SittingColumn
  readonly layout: Layout
  readonly isShown: boolean
}): ReactElement => {
  const { column, layout, isShown } = props
  const { selectSitting, pointAtSitting } = useActions()
  const { id } = column.sitting
  return (
    <th scope="col" data-shown={isShown ? 'true' : undefined}>
      <button
        type="button"
        aria-pressed={isShown}
        data-testid={`sitting-column:${id}`}
        onClick={() => selectSitting(id)}
        onPointerEnter={() => pointAtSitting(id)}
        onPointerLeave={() => pointAtSitting(null)}
        onFocus={() => pointAtSitting(id)}
        onBlur={() => pointAtSitting(null)}
      >
        {sittingName(column.sitting, layout)}
        <small>
          {isShown ? 'drawn' : ''}
          {isShown && column.counts.broken > 0 ? ', ' : ''}
          {column.counts.broken > 0 ? `worst of ${column.counts.broken} broken` : ''}
        </small>
      </button>
    </th>
  )
}

/** The table with one column left. */
const withOneColumn = ({ columns, groups }: SittingTable, sittingId: string): SittingTable => {
  const index = columns.findIndex(({ sitting }) => sitting.id === sittingId)
  const only = <Value,>(list: readonly Value[]): readonly Value[] =>
    index < 0 ? list.slice(0, 1) : list.slice(index, index + 1)
  return {
    columns: only(columns),
    groups: groups.map((group) => ({
      ...group,
      rows: group.rows.map((row) => ({ ...row, cells: only(row.cells) })),
    })),
  }
}

/** Every number in every sitting of the place, what is worst marked; a column's head draws that sitting. */
export const SittingsTable = memo(function SittingsTable(props: {
  readonly place: ShownPlace
  readonly shown: SittingEvaluation
  readonly layout: Layout
  readonly order: SittingOrder
}): ReactElement {
  const { place, shown, layout, order } = props
  const isOneColumn = useMediaQuery(ONE_COLUMN)
  const whole = useMemo(() => sittingTable(place, order), [place, order])
  const shownId = shown.sitting.id
  const table = useMemo(
    () => (isOneColumn ? withOneColumn(whole, shownId) : whole),
    [whole, isOneColumn, shownId],
  )
  const { columns } = table
  const unit = layout.units.length
  const cells = useCallback(
    (row: SittingRow) =>
      row.cells.map((cell, index) => {
        const id = columns[index]?.sitting.id
        return <Cell key={id ?? index} cell={cell} id={row.id} unit={unit} isShown={id === shownId} />
      }),
    [columns, unit, shownId],
  )
  return (
    <>
      {isOneColumn ? <SittingChooser columns={whole.columns} shownId={shownId} layout={layout} /> : null}
      <div className="sittings-scroll" role="region" aria-label="Numbers of every sitting" tabIndex={0}>
        <QuantityTable
          className="sittings"
          testId="sittings-table"
          heads={table.columns.map((column) => (
            <ColumnHead
              key={column.sitting.id}
              column={column}
              layout={layout}
              isShown={column.sitting.id === shownId}
            />
          ))}
          columns={table.columns.length}
          saysMeaning={false}
          groups={table.groups}
          cells={cells}
          layout={layout}
          shown={shown}
        />
      </div>
    </>
  )
})
