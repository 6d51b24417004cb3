import type { ReactElement } from 'react'
import type { VariantLayout } from '../../domain/layout/edit/changeVariants'
import type { CompareCell, CompareGroup } from '../../domain/layout/wording/compareRows'
import { MARKS } from '../verdicts'

const Cell = (props: { readonly cell: CompareCell; readonly name: string }): ReactElement => {
  const { cell, name } = props
  return (
    <td
      role="cell"
      data-variant={name}
      data-verdict={cell.verdict}
      data-other={cell.isOther ? 'true' : undefined}
    >
      <span className="compare-value">
        {cell.verdict === undefined ? null : (
          <span className="compare-mark" aria-hidden="true">
            {MARKS[cell.verdict]}{' '}
          </span>
        )}
        {cell.text}
      </span>
      {cell.notes.map((note) => (
        <small key={note} className="compare-note">
          {note}
        </small>
      ))}
    </td>
  )
}

const Group = (props: {
  readonly group: CompareGroup
  readonly variants: readonly VariantLayout[]
}): ReactElement => {
  const { group, variants } = props
  return (
    <tbody role="rowgroup">
      {group.title === '' ? null : (
        <tr role="row" className="compare-group">
          <th role="rowheader" scope="rowgroup" colSpan={variants.length + 1}>
            {group.title}
          </th>
        </tr>
      )}
      {group.rows.map((row) => (
        <tr role="row" key={row.key} data-testid={`compare:${row.key}`}>
          <th role="rowheader" scope="row">
            {row.title}
          </th>
          {row.cells.map((cell, index) => (
            <Cell
              // A cell belongs to its variant's column.
              key={variants[index]?.id}
              cell={cell}
              name={variants[index]?.name ?? ''}
            />
          ))}
        </tr>
      ))}
    </tbody>
  )
}

/** Rows of things with a column for each variant; on a phone each row is a card. Roles are said because the cards lose the table's own. */
export const CompareTable = (props: {
  readonly label: string
  readonly about: string
  readonly groups: readonly CompareGroup[]
  readonly variants: readonly VariantLayout[]
  readonly drawn: number
}): ReactElement => (
  <table role="table" className="compare-table" aria-label={props.label}>
    <thead role="rowgroup">
      <tr role="row">
        <th role="columnheader" scope="col">
          {props.about}
        </th>
        {props.variants.map(({ id, name }, index) => (
          <th role="columnheader" scope="col" key={id}>
            {name}
            {index === props.drawn ? ' (drawn)' : ''}
          </th>
        ))}
      </tr>
    </thead>
    {props.groups.map((group) => (
      <Group key={group.key} group={group} variants={props.variants} />
    ))}
  </table>
)
