import { memo, type ReactElement } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import type { MatrixRow, RuleSetMatrix } from '../../domain/layout/evaluate/ruleSetMatrix'
import { sourceText } from '../../domain/layout/wording/ruleSentence'
import { MatrixVerdict } from './MatrixVerdict'
import { matrixRowKey, matrixRowMarks, matrixRowWords } from './matrixWords'

const RowCard = (props: {
  readonly row: MatrixRow
  readonly matrix: RuleSetMatrix
  readonly layout: Layout
}): ReactElement => {
  const { row, matrix, layout } = props
  const words = matrixRowWords(row, layout)
  return (
    <section className="matrix-card" {...matrixRowMarks(row)}>
      <h3>
        {words.name}, {words.part}
      </h3>
      <p className="matrix-agreement">{words.agreement}</p>
      <ul>
        {row.entries.map((entry) => (
          <li key={`${entry.setId}/${entry.rule.id}`} data-chosen={entry.setId === layout.ruleSetId}>
            <span className="matrix-set">
              {matrix.sets.find(({ id }) => id === entry.setId)?.name}
              {entry.setId === layout.ruleSetId ? ' (chosen)' : ''}
            </span>
            <MatrixVerdict entry={entry} measured={row.measured} layout={layout} />
            <small className="finding-source">{sourceText(entry.rule.source)}</small>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** The same as the table, one card for each row: for narrow screens. */
export const MatrixList = memo(function MatrixList(props: {
  readonly matrix: RuleSetMatrix
  readonly layout: Layout
}): ReactElement {
  const { matrix, layout } = props
  return (
    <>
      {matrix.rows.map((row) => (
        <RowCard key={matrixRowKey(row)} row={row} matrix={matrix} layout={layout} />
      ))}
    </>
  )
})
