import type { ReactElement } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import type { ShownEvaluation } from '../../domain/layout/evaluate/evaluation'
import { PLAIN_GROUPS, type PlainFinding, type PlainGroup } from '../../domain/layout/wording/plainFinding'
import type { PlainQuestion } from '../../domain/layout/wording/plainQuestions'
import { PlainFindingCard } from './PlainFindingCard'

interface FindingsProps {
  readonly plain: readonly PlainFinding[]
  readonly layout: Layout
  readonly evaluation: ShownEvaluation
}

const HEADINGS: Readonly<Record<PlainGroup, string>> = {
  outside: 'Outside what is asked for',
  unchecked: 'Could not be checked',
  close: 'As asked for, but only just',
  within: 'As asked for',
}

const countWords = (count: number, one: string, many: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${many}`

/** How much there is of each, as one sentence. */
const summary = (plain: readonly PlainFinding[]): string => {
  const of = (group: PlainGroup): readonly PlainFinding[] => plain.filter((each) => each.group === group)
  const ordered = of('outside').filter(({ level }) => level === 'must').length
  const outside = countWords(of('outside').length, 'thing is', 'things are')
  const order = ordered === 0 ? '' : `, ${ordered} of them ordered by a rule book`
  return `${outside} outside what is asked for${order}; ${of('unchecked').length} could not be checked; ${of('close').length} only just as asked for; ${of('within').length} as asked for.`
}

const Group = (props: FindingsProps & { readonly group: PlainGroup }): ReactElement | null => {
  const own = props.plain.filter(({ group }) => group === props.group)
  if (own.length === 0) return null
  const list = (
    <ul className="plain-list">
      {own.map((plain) => (
        <PlainFindingCard key={plain.id} plain={plain} layout={props.layout} evaluation={props.evaluation} />
      ))}
    </ul>
  )
  const heading = `${HEADINGS[props.group]} (${own.length})`
  // What is as asked for is most of it and the least worth reading.
  if (props.group === 'within')
    return (
      <details className="plain-group">
        <summary>{heading}</summary>
        {list}
      </details>
    )
  return (
    <section className="plain-group" aria-label={heading}>
      <h3>{heading}</h3>
      {list}
    </section>
  )
}

/** Everything that was looked at, the heaviest first. */
export const PlainFindings = (props: FindingsProps): ReactElement => (
  <>
    <p>{summary(props.plain)}</p>
    {PLAIN_GROUPS.map((group) => (
      <Group key={group} group={group} {...props} />
    ))}
  </>
)

/** What no drawing can show, to be asked about. */
export const PlainQuestions = (props: { readonly questions: readonly PlainQuestion[] }): ReactElement => (
  <ul className="plain-list">
    {props.questions.map(({ ask, means, rules }) => (
      <li key={ask} className="plain-card">
        <h4>{ask}</h4>
        <p>{means}</p>
        <details>
          <summary>What the rules say</summary>
          <ul className="plain-cases">
            {rules.map(({ ruleId, says, asked }) => (
              <li key={ruleId}>
                “{says}” <span className="hint">{asked}</span>
              </li>
            ))}
          </ul>
        </details>
      </li>
    ))}
  </ul>
)
