import { useState, type ReactElement } from 'react'
import { type BeltEvent, type BeltRecord, RELEASERS, type Releaser } from '../../domain/care/beltRecord'
import { type BeltCondition, beltCondition } from '../../domain/care/condition'
import { entryProblems, type EntryProblem } from '../../domain/care/entryProblems'
import { AFTER_CRASH } from '../../domain/care/inspection'
import { withEntryAdded } from '../../domain/layout/edit/beltRecords'
import { releaserWord } from '../../domain/layout/wording/careWords'
import { capitalised } from '../../domain/layout/wording/words'
import { useActions } from '../../state/react'
import { today } from '../../state/today'
import { ChoiceField } from '../fields/ChoiceField'
import { CareForm, SaidFields, useSaid } from './CareForm'

type Kind = 'cleaning' | 'note' | 'crash' | 'released' | 'retired'

const KINDS: readonly { readonly value: Kind; readonly words: string }[] = [
  { value: 'cleaning', words: 'Cleaned' },
  { value: 'note', words: 'Note' },
  { value: 'crash', words: 'Crash, roll-over or hard landing' },
  { value: 'released', words: 'Looked at and put back into use' },
  { value: 'retired', words: 'Retired for good' },
]

const RELEASER_CHOICES = RELEASERS.map((value) => ({ value, words: capitalised(releaserWord(value)) }))

const eventOf = (kind: Kind, lookedAtBy: Releaser): Exclude<BeltEvent, { kind: 'corrected' }> =>
  kind === 'released' ? { kind, lookedAtBy } : { kind }

/** What can happen to a belt in its condition: only what is out of use can be put back. */
const kindsFor = (condition: BeltCondition): typeof KINDS =>
  KINDS.filter(
    ({ value }) =>
      (value !== 'released' || condition.kind === 'out-of-use') &&
      (value !== 'retired' || condition.kind !== 'retired'),
  )

/** Enters what happened to a belt other than an inspection. */
export const EventForm = (props: {
  readonly belt: BeltRecord
  readonly onDone: () => void
}): ReactElement => {
  const { belt } = props
  const { edit } = useActions()
  const [said, setSaid] = useSaid()
  const [kind, setKind] = useState<Kind>('cleaning')
  const [lookedAtBy, setLookedAtBy] = useState<Releaser>('licensed-person')
  const submit = (): readonly EntryProblem[] => {
    const entry = { ...said, ...eventOf(kind, lookedAtBy) }
    const problems = entryProblems(belt, entry, today())
    if (problems.length > 0) return problems
    edit(`Enter for ${belt.name}: ${wordsOf(kind)}`, (layout) => withEntryAdded(layout, belt.id, entry))
    return []
  }
  return (
    <CareForm button="Enter this" submit={submit} onDone={props.onDone}>
      <ChoiceField
        label="What happened"
        value={kind}
        choices={kindsFor(beltCondition(belt))}
        onChange={setKind}
      />
      {kind === 'released' ? (
        <ChoiceField
          label="Who looked at it"
          value={lookedAtBy}
          choices={RELEASER_CHOICES}
          onChange={setLookedAtBy}
        />
      ) : null}
      {kind === 'crash' || kind === 'released' ? <p className="caution">{AFTER_CRASH.says}</p> : null}
      <SaidFields said={said} onChange={setSaid} noteLabel="In words" />
    </CareForm>
  )
}

const wordsOf = (kind: Kind): string => KINDS.find(({ value }) => value === kind)?.words ?? kind
