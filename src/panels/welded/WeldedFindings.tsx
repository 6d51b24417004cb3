import type { ReactElement } from 'react'
import {
  CHANGE_KINDS,
  type ChangeKind,
  type FindingChange,
} from '../../domain/layout/asWelded/findingChanges'
import type { Layout } from '../../domain/layout/document/layout'
import { findingSentence } from '../../domain/layout/wording/findingSentence'
import {
  assumedText,
  changeHeading,
  changesSummaryText,
  plannedOnlyText,
  plannedValueText,
} from '../../domain/layout/wording/weldedWords'
import { levelWord, verdictWord } from '../../domain/layout/wording/words'
import { WorkAnswer, WorkStatus, type WorkWords } from '../WorkStatus'
import type { WeldedView } from './useWelded'

const WORDS: WorkWords = {
  doing: 'Working out the findings of the car as welded',
  nothingYet: 'The findings of the car as welded are not worked out yet.',
  done: 'Worked out with the positions as measured.',
  stale: 'A reading or the plan has changed since this was worked out.',
  start: 'Work out again',
  counted: 'Places worked out',
}

const Change = (props: { readonly change: FindingChange; readonly layout: Layout }): ReactElement | null => {
  const { change, layout } = props
  const finding = change.welded ?? change.planned
  if (finding === null) return null
  const { what, source } = findingSentence(finding, layout)
  const planned = plannedValueText(change, layout)
  const assumed = assumedText(change.assumed)
  return (
    <li className="finding" data-verdict={finding.verdict} data-testid={`welded-change:${finding.id}`}>
      <div className="finding-body">
        <span className="finding-tag">
          {verdictWord(finding.verdict)} · {levelWord(finding.level)}
        </span>
        <p>{what}</p>
        {planned === null ? null : <p>{planned}</p>}
        {assumed === null ? null : <p className="finding-caveat">{assumed}</p>}
        <p className="finding-source">{source}</p>
      </div>
    </li>
  )
}

const Changes = (props: {
  readonly kind: ChangeKind
  readonly changes: readonly FindingChange[]
  readonly layout: Layout
}): ReactElement | null => {
  const own = props.changes.filter(({ kind }) => kind === props.kind)
  if (own.length === 0) return null
  return (
    <section className="finding-group">
      <h4>
        {changeHeading(props.kind)} <span className="group-count">{own.length}</span>
      </h4>
      <ul>
        {own.map((change) => (
          <Change key={(change.welded ?? change.planned)?.id} change={change} layout={props.layout} />
        ))}
      </ul>
    </section>
  )
}

/** What the measured positions make of the findings of the plan. */
export const WeldedFindings = (props: { readonly view: WeldedView }): ReactElement => {
  const { layout, measured, changes, findings, work } = props.view
  const isMeasured = measured.anchors.some(({ standing }) => standing === 'measured')
  const planned = plannedOnlyText(measured.anchors, layout)
  return (
    <section aria-label="Findings of the car as welded">
      <h3>Findings of the car as welded</h3>
      {isMeasured ? (
        <WorkStatus view={work} words={WORDS} testId="welded-status" />
      ) : (
        <p className="hint">Once an anchor is measured, all findings are worked out again with it.</p>
      )}
      {planned === null || !isMeasured ? null : <p className="caution">{planned}</p>}
      {changes === null ? null : (
        <WorkAnswer view={work}>
          <p data-testid="welded-changes">{changesSummaryText(changes, findings, measured.anchors)}</p>
          <>
            {CHANGE_KINDS.map((kind) => (
              <Changes key={kind} kind={kind} changes={changes} layout={layout} />
            ))}
          </>
        </WorkAnswer>
      )}
    </section>
  )
}
