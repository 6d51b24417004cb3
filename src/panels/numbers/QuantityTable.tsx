import { memo, useState, type ReactElement, type ReactNode } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import type { SittingEvaluation } from '../../domain/layout/evaluate/evaluation'
import { quantityMeaning, quantityName } from '../../domain/layout/wording/quantities'
import { capitalised } from '../../domain/layout/wording/words'
import type { QuantityId, Subject } from '../../domain/straps/quantity'
import { lineKey, QuantityLine } from './QuantityLine'

/** The numbers of one quantity, one row for each strap, pair or head that has it. */
export interface QuantityGroup<Row> {
  readonly id: QuantityId
  readonly rows: readonly Row[]
}

interface Shared<Row> {
  /** The cells of a row after its name; the same function as long as they are the same cells. */
  readonly cells: (row: Row) => ReactNode
  /** How many those are. */
  readonly columns: number
  /** Whether each quantity says what it is, where there is width for a sentence. */
  readonly saysMeaning: boolean
  readonly layout: Layout
  /** The sitting that a line opens to. */
  readonly shown: SittingEvaluation
}

type GroupProps<Row> = Shared<Row> & {
  readonly group: QuantityGroup<Row>
  readonly openKey: string | null
  readonly onOpen: (key: string | null) => void
}

const GroupBody = <Row extends { readonly subject: Subject }>(props: GroupProps<Row>): ReactElement => {
  const { group, cells, columns, saysMeaning, layout, shown, openKey, onOpen } = props
  const { id, rows } = group
  return (
    <tbody>
      <tr className="quantity-name">
        <th scope="rowgroup" colSpan={saysMeaning ? columns + 1 : 1}>
          {capitalised(quantityName(id))}
          {saysMeaning ? <small>{quantityMeaning(id)}</small> : null}
        </th>
        {saysMeaning ? null : <td colSpan={columns} />}
      </tr>
      {rows.map((row) => (
        <QuantityLine
          key={row.subject}
          id={id}
          subject={row.subject}
          layout={layout}
          shown={shown}
          isOpen={openKey === lineKey(id, row.subject)}
          onOpen={onOpen}
          columns={columns + 1}
        >
          {cells(row)}
        </QuantityLine>
      ))}
    </tbody>
  )
}

/** Groups that nothing changed in are not made again: every sitting of a place may be a thousand cells. */
const Group = memo(GroupBody) as typeof GroupBody

/** A table of quantities, each line of which opens to what it is measured between. */
export const QuantityTable = <Row extends { readonly subject: Subject }>(
  props: Shared<Row> & {
    readonly groups: readonly QuantityGroup<Row>[]
    readonly heads: ReactNode
    readonly className: string
    readonly testId: string
  },
): ReactElement => {
  const { groups, heads, className, testId, ...shared } = props
  const [openKey, setOpenKey] = useState<string | null>(null)
  return (
    <table className={className} data-testid={testId}>
      <thead>
        <tr>
          <th scope="col">Of</th>
          {heads}
        </tr>
      </thead>
      {groups.map((group) => (
        <Group
          key={group.id}
          {...shared}
          group={group}
          openKey={group.rows.some(({ subject }) => lineKey(group.id, subject) === openKey) ? openKey : null}
          onOpen={setOpenKey}
        />
      ))}
    </table>
  )
}
