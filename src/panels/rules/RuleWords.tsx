import type { ReactElement } from 'react'
import { ruleSentence } from '../../domain/layout/wording/ruleSentence'
import { capitalised, levelWord } from '../../domain/layout/wording/words'
import type { Rule } from '../../domain/rules/rule'

/** A rule as it is printed: its level, what it says, why, where sources disagree, and where it comes from. */
export const RuleWords = (props: { readonly rule: Rule }): ReactElement => {
  const { rule } = props
  const words = ruleSentence(rule)
  return (
    <details className="editor" data-testid={`rule:${rule.id}`}>
      <summary>
        {words.says}{' '}
        <span className="summary-figure">
          {capitalised(levelWord(rule.level))}
          {rule.kind === 'stated' ? ', stated only' : ''}
        </span>
      </summary>
      <p>{words.why}</p>
      {words.caveat === null ? null : <p className="finding-caveat">{words.caveat}</p>}
      <p className="finding-source">{words.source}</p>
    </details>
  )
}
