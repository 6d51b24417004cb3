import type { ReactElement } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import type { MatrixEntry, MatrixRow } from '../../domain/layout/evaluate/ruleSetMatrix'
import { limitText } from '../../domain/layout/wording/amounts'
import { levelWord, verdictWord } from '../../domain/layout/wording/words'
import { MARKS } from '../verdicts'

/** One rule's limit, its level and whether it is kept: a mark and a word, never colour alone. */
export const MatrixVerdict = (props: {
  readonly entry: MatrixEntry
  readonly measured: MatrixRow['measured']
  readonly layout: Layout
}): ReactElement => {
  const { entry, measured, layout } = props
  const remembered = entry.rule.source.status === 'memory' ? ', from memory' : ''
  return (
    <span
      className="matrix-verdict"
      data-verdict={entry.verdict}
      data-testid={`matrix-rule:${entry.rule.id}`}
      title={entry.rule.says}
    >
      {limitText(measured, entry.limit, layout.units.length)}{' '}
      <strong>
        <span aria-hidden="true">{MARKS[entry.verdict]} </span>
        {verdictWord(entry.verdict)}
      </strong>
      <small>
        {levelWord(entry.rule.level)}
        {remembered}
      </small>
    </span>
  )
}
