import type { ReactElement } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import type { ShownEvaluation } from '../../domain/layout/evaluate/evaluation'
import type { PlainFinding, PlainGroup } from '../../domain/layout/wording/plainFinding'
import { PlainFigure } from './PlainFigure'

/** A mark with its words, so that nothing depends on colour. */
const MARKS: Readonly<Record<PlainGroup, { readonly mark: string; readonly words: string }>> = {
  outside: { mark: '✕', words: 'Outside what is asked for' },
  unchecked: { mark: '?', words: 'Not checked' },
  close: { mark: '!', words: 'Only just' },
  within: { mark: '✓', words: 'As asked for' },
}

export const GroupMark = (props: { readonly group: PlainGroup }): ReactElement => (
  <span className="plain-mark" data-group={props.group}>
    <span aria-hidden="true">{MARKS[props.group].mark} </span>
    {MARKS[props.group].words}
  </span>
)

/** Where a finding stands on the page, to be led to. */
export const findingAnchor = (id: string): string => `plain-${id}`

/** One thing in plain words: what is so, what it means, the number, what that cannot tell, and who asks. */
export const PlainFindingCard = (props: {
  readonly plain: PlainFinding
  readonly layout: Layout
  readonly evaluation: ShownEvaluation
}): ReactElement => {
  const { plain } = props
  return (
    <li className="plain-card" id={findingAnchor(plain.id)} tabIndex={-1} data-group={plain.group}>
      <h4>{plain.topic}</h4>
      <GroupMark group={plain.group} />
      <p>
        <b>{plain.fact}</b> {plain.means}
      </p>
      <ul className="plain-cases">
        {plain.cases.map(({ finding, who, measured }) => (
          <li key={finding.id}>
            {who}: {measured}
          </li>
        ))}
      </ul>
      <p className="hint">
        {plain.number} {plain.limit}
      </p>
      <p className="hint">{plain.asked}</p>
      <PlainFigure {...props} />
    </li>
  )
}
