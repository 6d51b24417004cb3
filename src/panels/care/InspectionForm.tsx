import { useState, type ReactElement } from 'react'
import { type BeltRecord, INSPECTION_RESULTS, type InspectionResult } from '../../domain/care/beltRecord'
import { entryProblems, type EntryProblem } from '../../domain/care/entryProblems'
import {
  AFTER_FAULT,
  INSPECTION_ITEM_IDS,
  INSPECTION_ITEMS,
  INSPECTION_LIMIT,
  type InspectionItem,
  type InspectionItemId,
} from '../../domain/care/inspection'
import { withEntryAdded } from '../../domain/layout/edit/beltRecords'
import { resultWord } from '../../domain/layout/wording/careWords'
import { sourceText } from '../../domain/layout/wording/ruleSentence'
import { capitalised } from '../../domain/layout/wording/words'
import { useActions } from '../../state/react'
import { today } from '../../state/today'
import { SwitchField } from '../fields/ChoiceField'
import { CareForm, FormSection, SaidFields, useSaid } from './CareForm'

const RESULTS = INSPECTION_RESULTS.map((value) => ({ value, words: capitalised(resultWord(value)) }))

type Results = Readonly<Record<InspectionItemId, InspectionResult>>

/** Nothing is sound before somebody has looked at it. */
const NOT_LOOKED_AT = Object.fromEntries(
  INSPECTION_ITEM_IDS.map((id) => [id, 'not-looked-at']),
) as unknown as Results

const isSourceless = ({ sources }: InspectionItem): boolean =>
  sources.every(({ status }) => status === 'common-practice')

const ListSources = (): ReactElement => (
  <>
    <p className="hint">
      None of these documents is about belts of off-road cars; the belt maker’s instructions come first.
    </p>
    <ul>
      {INSPECTION_ITEMS.map((item) => (
        <li key={item.id} className="care-rule">
          <p>{item.name}</p>
          <p className="finding-source">{item.sources.map(sourceText).join(' · ')}</p>
        </li>
      ))}
    </ul>
  </>
)

/** The list to go through with the belt in hand. */
export const InspectionForm = (props: {
  readonly belt: BeltRecord
  readonly onDone: () => void
}): ReactElement => {
  const { belt } = props
  const { edit } = useActions()
  const [said, setSaid] = useSaid()
  const [results, setResults] = useState(NOT_LOOKED_AT)
  const hasFault = Object.values(results).includes('fault')
  const submit = (): readonly EntryProblem[] => {
    const entry = { ...said, kind: 'inspection' as const, results }
    const problems = entryProblems(belt, entry, today())
    if (problems.length > 0) return problems
    edit(`Inspect ${belt.name}`, (layout) => withEntryAdded(layout, belt.id, entry))
    return []
  }
  return (
    <CareForm button="Enter this inspection" submit={submit} onDone={props.onDone}>
      <p className="caution">{INSPECTION_LIMIT.says}</p>
      <p className="finding-source">{sourceText(INSPECTION_LIMIT.source)}</p>
      {INSPECTION_ITEMS.map((item) => (
        <div key={item.id} className="care-item" data-testid={`inspect:${item.id}`}>
          <SwitchField
            label={item.name}
            value={results[item.id]}
            choices={RESULTS}
            onChange={(result) => setResults({ ...results, [item.id]: result })}
          />
          <p className="hint">
            {item.lookFor} {isSourceless(item) ? '(Common practice, no source.)' : ''}
          </p>
        </div>
      ))}
      {hasFault ? (
        <p className="caution" role="status">
          {AFTER_FAULT.says}
        </p>
      ) : null}
      <FormSection words="Where this list comes from">{() => <ListSources />}</FormSection>
      <SaidFields said={said} onChange={setSaid} noteLabel="What was seen, and where on the belt" />
    </CareForm>
  )
}
