import { memo, type ReactElement } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import type { MatrixRow, RuleSetMatrix } from '../../domain/layout/evaluate/ruleSetMatrix'
import { RULE_SET_GROUPS } from '../../domain/rules/rule'
import { MatrixVerdict } from './MatrixVerdict'
import { matrixRowKey, matrixRowMarks, matrixRowWords } from './matrixWords'

const GroupHeads = (props: { readonly matrix: RuleSetMatrix }): ReactElement => (
  <tr>
    <td />
    {RULE_SET_GROUPS.map((group) => ({
      group,
      count: props.matrix.sets.filter((set) => set.group === group).length,
    }))
      .filter(({ count }) => count > 0)
      .map(({ group, count }) => (
        <th key={group} scope="colgroup" colSpan={count} className="matrix-group">
          {group}
        </th>
      ))}
  </tr>
)

const Row = (props: {
  readonly row: MatrixRow
  readonly matrix: RuleSetMatrix
  readonly layout: Layout
}): ReactElement => {
  const { row, matrix, layout } = props
  const words = matrixRowWords(row, layout)
  return (
    <tr {...matrixRowMarks(row)}>
      <th scope="row">
        {words.name}
        <small>{words.part}</small>
        <small className="matrix-agreement">{words.agreement}</small>
      </th>
      {matrix.sets.map((set) => (
        <td key={set.id} data-chosen={set.id === layout.ruleSetId}>
          {row.entries
            .filter(({ setId }) => setId === set.id)
            .map((entry) => (
              <MatrixVerdict key={entry.rule.id} entry={entry} measured={row.measured} layout={layout} />
            ))}
        </td>
      ))}
    </tr>
  )
}

/** Rows: what is measured on which part; columns: rule sets by group; each cell the limit and whether it is kept. */
export const MatrixTable = memo(function MatrixTable(props: {
  readonly matrix: RuleSetMatrix
  readonly layout: Layout
}): ReactElement {
  const { matrix, layout } = props
  return (
    <div className="matrix-scroll" role="region" aria-label="Table of all rule sets" tabIndex={0}>
      <table className="matrix">
        <thead>
          <GroupHeads matrix={matrix} />
          <tr>
            <th scope="col" className="matrix-corner">
              Measured
            </th>
            {matrix.sets.map((set) => (
              <th key={set.id} scope="col" data-chosen={set.id === layout.ruleSetId}>
                {set.name}
                <small>{set.id === layout.ruleSetId ? `chosen; ${set.edition}` : set.edition}</small>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {matrix.rows.map((row) => (
            <Row key={matrixRowKey(row)} row={row} matrix={matrix} layout={layout} />
          ))}
        </tbody>
      </table>
    </div>
  )
})
