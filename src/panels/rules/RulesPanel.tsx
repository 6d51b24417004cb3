import type { ReactElement } from 'react'
import { TEXT_LENGTHS } from '../../domain/layout/document/limits'
import { ruleSetOf } from '../../domain/layout/document/ruleSetOf'
import { ruleSetText } from '../../domain/layout/document/ruleSetText'
import {
  withDocumentConfirmed,
  withoutRuleSet,
  withRuleSet,
  withRuleSetCopied,
} from '../../domain/layout/edit/changeRuleSets'
import { documentsToConfirm } from '../../domain/rules/confirmed'
import type { RuleSet } from '../../domain/rules/rule'
import { download } from '../../state/files'
import { useActions, useApp, useAppStore } from '../../state/react'
import { openRuleSetFile } from '../../state/ruleSetFiles'
import { ToggleField } from '../fields/ChoiceField'
import { TextField } from '../fields/TextField'
import { FileButton } from '../FileButton'
import { RuleSetSelect } from '../settings'
import { OwnRules } from './OwnRules'
import { RuleWords } from './RuleWords'
import './rules.css'

const fileName = (set: RuleSet): string =>
  `${
    set.name
      .replace(/[^A-Za-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .toLowerCase()
      .slice(0, 60) || 'rules'
  }.rules.json`

const SetButtons = (props: { readonly set: RuleSet; readonly isOwn: boolean }): ReactElement => {
  const { set, isOwn } = props
  const store = useAppStore()
  const { edit } = useActions()
  return (
    <div className="matrix-choices">
      <button
        type="button"
        onClick={() => edit(`Copy ${set.name}`, (layout) => withRuleSetCopied(layout, set.id))}
      >
        {isOwn ? 'Copy this set' : 'Copy this set to change it'}
      </button>
      <button type="button" onClick={() => download(ruleSetText({ ...set, group: 'Own' }), fileName(set))}>
        Save this set to a file
      </button>
      <FileButton
        words="Add a rule set from a file…"
        label="Rule set file to add"
        testId="rule-set-file"
        onPick={(file) => openRuleSetFile(store, file)}
      />
      {isOwn ? (
        <button
          type="button"
          onClick={() => edit(`Delete ${set.name}`, (layout) => withoutRuleSet(layout, set.id))}
        >
          Delete this set
        </button>
      ) : null}
    </div>
  )
}

const Documents = (props: { readonly set: RuleSet }): ReactElement | null => {
  const confirmed = useApp((state) => state.layout.confirmedDocuments)
  const { edit } = useActions()
  const names = documentsToConfirm(props.set)
  if (names.length === 0) return null
  return (
    <section>
      <h3>Documents you have</h3>
      <p className="hint">
        Figures known only from memory or second-hand count for less. Look them up; once you have the document
        in hand, they count at the level it gives them.
      </p>
      {names.map((name) => (
        <ToggleField
          key={name}
          label={name}
          checked={confirmed?.includes(name) ?? false}
          onChange={(checked) =>
            edit(checked ? `Confirm having ${name}` : `Take back having ${name}`, (layout) =>
              withDocumentConfirmed(layout, name, checked),
            )
          }
        />
      ))}
    </section>
  )
}

/** The chosen rule set: what it is, where it comes from, every rule of it, and the ways to make one's own. */
export const RulesPanel = (): ReactElement => {
  const layout = useApp((state) => state.layout)
  const { edit } = useActions()
  const set = ruleSetOf(layout)
  if (set === null) return <p className="hint">The rule set of this layout does not exist. Choose another.</p>
  // As stored, without the levels that confirmed documents give: those are not the set's to keep.
  const ownSet = layout.ownRuleSets?.find(({ id }) => id === set.id)
  const isOwn = ownSet !== undefined
  return (
    <section className="panel" aria-label="Rules">
      <RuleSetSelect />
      {isOwn ? (
        <TextField
          label="Name of this set"
          value={set.name}
          maxLength={TEXT_LENGTHS.name}
          onCommit={(name) =>
            edit(`Rename ${set.name}`, (old) => withRuleSet(old, set.id, (each) => ({ ...each, name })))
          }
        />
      ) : null}
      <p>
        {set.about} {set.edition === '' ? '' : `Edition: ${set.edition}.`}
      </p>
      <SetButtons set={ownSet ?? set} isOwn={isOwn} />
      <Documents set={set} />
      {ownSet !== undefined ? (
        <OwnRules set={ownSet} />
      ) : (
        <section>
          <h3>Rules of this set</h3>
          {set.rules.map((rule) => (
            <RuleWords key={rule.id} rule={rule} />
          ))}
        </section>
      )}
    </section>
  )
}
