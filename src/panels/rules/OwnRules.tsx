import { useState, type ReactElement } from 'react'
import { LIMITS, TEXT_LENGTHS } from '../../domain/layout/document/limits'
import { withoutRule, withRuleAdded, withRuleReplaced } from '../../domain/layout/edit/changeRuleSets'
import { limitText } from '../../domain/layout/wording/amounts'
import {
  canBeMust,
  checkedName,
  limitOfRule,
  newOwnRule,
  withOwnLimits,
} from '../../domain/layout/wording/ownRuleText'
import { quantityName } from '../../domain/layout/wording/quantities'
import { sourceText } from '../../domain/layout/wording/ruleSentence'
import { capitalised, levelWord } from '../../domain/layout/wording/words'
import type { Rule, RuleLevel, RuleSet } from '../../domain/rules/rule'
import { QUANTITY_IDS, type QuantityId, quantityUnit } from '../../domain/straps/quantity'
import { useActions, useApp } from '../../state/react'
import { ChoiceField } from '../fields/ChoiceField'
import { AngleField, LengthField } from '../fields/LengthField'
import type { NumberFieldProps } from '../fields/NumberField'
import { TextField } from '../fields/TextField'
import { RuleWords } from './RuleWords'
import { PlainField } from './PlainField'

type CheckedRule = Exclude<Rule, { kind: 'stated' }>

type Counted = 'mm' | 'deg' | 'plain'

const LENGTH_PROPERTIES: ReadonlySet<string> = new Set([
  'webbing-width',
  'wrap-bar-diameter',
  'tab-thickness',
  'bar-diameter',
  'bar-wall',
  'slot-spare',
  'tab-to-tube',
  'sub-to-lap',
])

/** What a rule's limits are counted in. */
const countedIn = (rule: CheckedRule): Counted => {
  if (rule.kind === 'property') return LENGTH_PROPERTIES.has(rule.property) ? 'mm' : 'plain'
  const unit = quantityUnit(rule.quantity)
  return unit === 'ratio' ? 'plain' : unit
}

const LimitField = ({
  counted,
  ...field
}: Omit<NumberFieldProps, 'format'> & { readonly counted: Counted }): ReactElement => {
  switch (counted) {
    case 'mm':
      return <LengthField {...field} />
    case 'deg':
      return <AngleField {...field} />
    case 'plain':
      return <PlainField {...field} />
  }
}

const LimitFields = (props: {
  readonly rule: CheckedRule
  readonly onChange: (rule: Rule) => void
}): ReactElement | null => {
  const { rule, onChange } = props
  if (rule.kind === 'property' && rule.wanted !== null) return null
  const counted = countedIn(rule)
  const most = rule.max ?? LIMITS.ruleLimit.max
  const least = rule.min ?? LIMITS.ruleLimit.min
  return (
    <div className="field-row">
      <LimitField
        counted={counted}
        label="Least"
        value={rule.min}
        limits={{ ...LIMITS.ruleLimit, max: most }}
        placeholder="no limit"
        onCommit={(min) => onChange(withOwnLimits(rule, { min }))}
        onClear={rule.max === null ? undefined : () => onChange(withOwnLimits(rule, { min: null }))}
        testId={`least:${rule.id}`}
      />
      <LimitField
        counted={counted}
        label="Most"
        value={rule.max}
        limits={{ ...LIMITS.ruleLimit, min: least }}
        placeholder="no limit"
        onCommit={(max) => onChange(withOwnLimits(rule, { max }))}
        onClear={rule.min === null ? undefined : () => onChange(withOwnLimits(rule, { max: null }))}
        testId={`most:${rule.id}`}
      />
    </div>
  )
}

const LEVELS: readonly { readonly value: RuleLevel; readonly words: string }[] = (
  ['must', 'should', 'advice'] as const
).map((value) => ({ value, words: capitalised(levelWord(value)) }))

const RuleEditor = (props: { readonly rule: CheckedRule; readonly setId: string }): ReactElement => {
  const { rule, setId } = props
  const { edit } = useActions()
  const unit = useApp((state) => state.layout.units.length)
  const name = checkedName(rule)
  const id = rule.kind === 'quantity' ? rule.quantity : rule.property
  const replace = (changed: Rule): void =>
    edit(`Change the rule on ${name}`, (layout) => withRuleReplaced(layout, setId, changed))
  return (
    <details className="editor" data-testid={`own-rule:${rule.id}`}>
      <summary>
        {capitalised(name)}{' '}
        <span className="summary-figure">
          {limitText(id, limitOfRule(rule), unit)}, {levelWord(rule.level)}
        </span>
      </summary>
      <LimitFields rule={rule} onChange={replace} />
      <ChoiceField
        label="Level"
        value={rule.level}
        choices={canBeMust(rule) ? LEVELS : LEVELS.filter(({ value }) => value !== 'must')}
        onChange={(level) => {
          const { confirmedLevel: _confirmed, ...plain } = rule
          replace({ ...plain, level })
        }}
      />
      {rule.source.status === 'own' ? (
        <TextField
          label="Source"
          value={rule.source.document}
          maxLength={TEXT_LENGTHS.name}
          onCommit={(document) => replace({ ...rule, source: { ...rule.source, document } })}
        />
      ) : null}
      <p className="finding-source">{sourceText(rule.source)}</p>
      <button
        type="button"
        onClick={() => edit(`Remove the rule on ${name}`, (layout) => withoutRule(layout, setId, rule.id))}
      >
        Remove this rule
      </button>
    </details>
  )
}

const QUANTITIES = QUANTITY_IDS.map((value) => ({ value, words: capitalised(quantityName(value)) }))

const AddRule = (props: { readonly setId: string }): ReactElement => {
  const [quantity, setQuantity] = useState<QuantityId>('lap-angle')
  const { edit } = useActions()
  return (
    <div className="matrix-choices">
      <ChoiceField label="New rule on" value={quantity} choices={QUANTITIES} onChange={setQuantity} />
      <button
        type="button"
        onClick={() =>
          edit(`Add a rule on ${quantityName(quantity)}`, (layout) =>
            withRuleAdded(layout, props.setId, newOwnRule(quantity, 'Own limit')),
          )
        }
      >
        Add this rule
      </button>
    </div>
  )
}

/** The rules of an own set: limits, levels and sources to change, rules to remove and to add. */
export const OwnRules = (props: { readonly set: RuleSet }): ReactElement => {
  const { set } = props
  return (
    <section>
      <h3>Rules of this set</h3>
      {set.rules.length === 0 ? (
        <p className="hint">No rules yet: nothing is checked. Add the first one.</p>
      ) : null}
      {set.rules.map((rule) =>
        rule.kind === 'stated' ? (
          <RuleWords key={rule.id} rule={rule} />
        ) : (
          <RuleEditor key={rule.id} rule={rule} setId={set.id} />
        ),
      )}
      <AddRule setId={set.id} />
      <p className="hint">
        A new rule starts with “at least 0”; type the limit you want. A changed limit is your own from then
        on.
      </p>
    </section>
  )
}
