import { useMemo, type ReactElement } from 'react'
import type { Layout, Place } from '../domain/layout/document/layout'
import type { ShownFinding } from '../domain/rules/finding'
import type { Rule, RuleSet } from '../domain/rules/rule'
import { RuleWords } from './rules/RuleWords'
import { silentRules } from './silentRules'

const RuleGroup = (props: {
  readonly words: string
  readonly rules: readonly Rule[]
}): ReactElement | null =>
  props.rules.length === 0 ? null : (
    <section className="finding-group">
      <h3>
        {props.words} <span className="group-count">{props.rules.length}</span>
      </h3>
      {props.rules.map((rule) => (
        <RuleWords key={rule.id} rule={rule} />
      ))}
    </section>
  )

/** What of the rule set is not among the findings, and why: silence is no approval. Closed until somebody asks. */
export const SilentRules = (props: {
  readonly ruleSet: RuleSet
  readonly findings: readonly ShownFinding[]
  readonly layout: Layout
  readonly place: Place
}): ReactElement | null => {
  const { ruleSet, findings, layout, place } = props
  const silent = useMemo(
    () => silentRules(ruleSet, findings, layout, place),
    [ruleSet, findings, layout, place],
  )
  const count = silent.withoutPart.length + silent.otherCase.length
  const stated = silent.statedOnly.length
  return (
    <>
      {count === 0 ? null : (
        <details className="editor silent-rules" data-testid="silent-rules" data-count={count}>
          <summary>
            Rules that found nothing to speak about <span className="group-count">{count}</span>
          </summary>
          <p className="hint">
            These rules of the set were held against nothing at this place: they are neither kept nor broken.
            Once the part is there, or the case is theirs, they stand among the findings.
          </p>
          <RuleGroup words="Not here, or not typed" rules={silent.withoutPart} />
          <RuleGroup words="For another belt, mount, seat or use" rules={silent.otherCase} />
        </details>
      )}
      {stated === 0 ? null : (
        <details className="editor silent-rules" data-testid="stated-rules" data-count={stated}>
          <summary>
            Rules that nobody checks here <span className="group-count">{stated}</span>
          </summary>
          <p className="hint">
            These rules of the set are about what is not drawn. Whether they are kept has to be seen at the
            car.
          </p>
          <RuleGroup words="To be seen at the car" rules={silent.statedOnly} />
        </details>
      )}
    </>
  )
}
