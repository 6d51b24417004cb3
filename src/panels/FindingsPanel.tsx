import { memo, useDeferredValue, type ReactElement } from 'react'
import type { Layout } from '../domain/layout/document/layout'
import { appliedRemedy } from '../domain/layout/edit/remedy'
import { findingSentence } from '../domain/layout/wording/findingSentence'
import { levelWord, verdictWord } from '../domain/layout/wording/words'
import type { ShownFinding } from '../domain/rules/finding'
import { useActions, useApp } from '../state/react'
import { completionOf, currentEvaluation, currentPlace, currentPlaceEvaluation } from '../state/selectors'
import { FindingExplain } from './explain/FindingExplain'
import { RemedyStatus } from './RemedyStatus'
import { SilentRules } from './SilentRules'
import { SlotOffer } from './SlotOffer'
import { MARKS, VERDICT_ORDER } from './verdicts'

const RemedyLine = (props: { readonly finding: ShownFinding; readonly words: string }): ReactElement => {
  const { edit } = useActions()
  const { finding } = props
  // While its room is pending a finding has no remedy yet.
  const canApply = finding.roomMm !== 'pending' && finding.remedy !== null && finding.remedy.kind !== 'none'
  return (
    <div className="finding-remedy">
      <p>{props.words}</p>
      {canApply ? (
        <button
          type="button"
          data-testid={`remedy:${finding.id}`}
          onClick={({ currentTarget }) => {
            // The button goes with what it mends: the keyboard goes on from the top of the findings.
            currentTarget.closest<HTMLElement>('section.panel')?.focus()
            edit(`Make the change: ${props.words.replace(/\.$/, '')}`, (layout) =>
              appliedRemedy(layout, finding),
            )
          }}
        >
          Make this change
        </button>
      ) : null}
    </div>
  )
}

const FindingItem = memo(function FindingItem(props: {
  readonly finding: ShownFinding
  readonly layout: Layout
  readonly isFocused: boolean
  readonly isWorking: boolean
}): ReactElement {
  const { finding, layout, isFocused, isWorking } = props
  const { focusFinding } = useActions()
  const words = findingSentence(finding, layout)
  const canLeave = finding.withinTolerance?.canLeave === true
  const isOpen = isFocused || (finding.verdict !== 'clear' && finding.verdict !== 'kept') || canLeave
  return (
    <li
      className="finding"
      data-testid={`finding:${finding.id}`}
      data-verdict={finding.verdict}
      data-value={finding.value ?? undefined}
      data-room={finding.roomMm ?? undefined}
      data-focused={isFocused ? 'true' : undefined}
    >
      <button
        type="button"
        className="finding-head"
        aria-pressed={isFocused}
        onClick={() => focusFinding(isFocused ? null : finding.id)}
      >
        <span className="finding-mark" aria-hidden="true">
          {MARKS[finding.verdict]}
        </span>
        <span className="finding-what">
          <span className="finding-tag">
            {verdictWord(finding.verdict)}, {levelWord(finding.level)}
          </span>
          {words.what}
        </span>
      </button>
      {isOpen ? (
        <div className="finding-body">
          <p>{words.why}</p>
          {words.withinTolerance === null ? null : (
            <p className="finding-tolerance" data-testid={`tolerance:${finding.id}`}>
              {words.withinTolerance}
            </p>
          )}
          {words.remedy === null ? null : <RemedyLine finding={finding} words={words.remedy} />}
          <SlotOffer problem={finding.problem} />
          {isWorking && finding.verdict === 'broken' && words.remedy === null ? (
            <p className="finding-working" aria-hidden="true">
              Working out a remedy…
            </p>
          ) : null}
          {words.rooms === null || !isFocused ? null : <p className="finding-rooms">{words.rooms}</p>}
          {words.caveat === null || !isFocused ? null : <p className="finding-caveat">{words.caveat}</p>}
          <p className="finding-source">{words.source}</p>
          <FindingExplain finding={finding} />
        </div>
      ) : null}
    </li>
  )
})

const FindingList = memo(function FindingList(props: {
  readonly findings: readonly ShownFinding[]
  readonly layout: Layout
  readonly focusedId: string | null
  readonly isWorking: boolean
}): ReactElement {
  if (props.findings.length === 0)
    return (
      <p className="hint">
        No rule of this rule set speaks about this place yet. Add anchors, or pick another rule set.
      </p>
    )
  return (
    <>
      {VERDICT_ORDER.map((verdict) => ({
        verdict,
        findings: props.findings.filter((finding) => finding.verdict === verdict),
      }))
        .filter(({ findings }) => findings.length > 0)
        .map(({ verdict, findings }) => (
          <section key={verdict} className="finding-group" data-verdict={verdict}>
            <h3>
              {verdictWord(verdict)} <span className="group-count">{findings.length}</span>
            </h3>
            <ul>
              {findings.map((finding) => (
                <FindingItem
                  key={finding.id}
                  finding={finding}
                  layout={props.layout}
                  isFocused={finding.id === props.focusedId}
                  isWorking={props.isWorking}
                />
              ))}
            </ul>
          </section>
        ))}
    </>
  )
})

const NO_FINDINGS: readonly ShownFinding[] = []

/**
 * Every rule of the set held against the current place, what needs a person first. Follows a drag a moment behind the drawing;
 * remedies follow when they are worked out.
 */
export const FindingsPanel = (): ReactElement => {
  const findings = useDeferredValue(useApp((state) => currentPlaceEvaluation(state)?.findings)) ?? NO_FINDINGS
  const ruleSet = useDeferredValue(useApp((state) => currentEvaluation(state).ruleSet))
  const place = useDeferredValue(useApp(currentPlace))
  const layout = useDeferredValue(useApp((state) => state.layout))
  const completion = useDeferredValue(useApp(completionOf))
  const focusedId = useApp((state) => state.focusedFindingId)
  return (
    <section className="panel" aria-label="Findings" tabIndex={-1} data-completion={completion}>
      <RemedyStatus />
      <FindingList
        findings={findings}
        layout={layout}
        focusedId={focusedId}
        isWorking={completion === 'working'}
      />
      {place === undefined ? null : (
        <SilentRules ruleSet={ruleSet} findings={findings} layout={layout} place={place} />
      )}
    </section>
  )
}
