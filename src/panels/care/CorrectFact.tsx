import { useState, type ReactElement } from 'react'
import { BELT_FACTS, type BeltFact, type BeltRecord, factText } from '../../domain/care/beltRecord'
import { entryProblems, type EntryProblem } from '../../domain/care/entryProblems'
import { withFactCorrected } from '../../domain/layout/edit/beltRecords'
import { factName } from '../../domain/layout/wording/careWords'
import { capitalised } from '../../domain/layout/wording/words'
import { useActions } from '../../state/react'
import { today } from '../../state/today'
import { ChoiceField } from '../fields/ChoiceField'
import { CareForm, SaidFields, useSaid } from './CareForm'
import { FactField } from './FactFields'

const FACTS = BELT_FACTS.map((value) => ({ value, words: capitalised(factName(value)) }))

/** Changes one fact of a belt; what stood there before stays in the history. */
export const CorrectFact = (props: {
  readonly belt: BeltRecord
  readonly onDone: () => void
}): ReactElement => {
  const { belt } = props
  const { edit } = useActions()
  const [said, setSaid] = useSaid()
  const [fact, setFact] = useState<BeltFact>('manufactured')
  const [to, setTo] = useState(() => factText(belt, 'manufactured'))
  const submit = (): readonly EntryProblem[] => {
    const correction = { fact, to: to.trim() }
    const from = factText(belt, fact)
    const problems = entryProblems(belt, { ...said, kind: 'corrected', from, ...correction }, today())
    if (problems.length > 0) return problems
    edit(`Correct the ${factName(fact)} of ${belt.name}`, (layout) =>
      withFactCorrected(layout, belt.id, correction, said),
    )
    return []
  }
  return (
    <CareForm button="Enter the correction" submit={submit} onDone={props.onDone}>
      <ChoiceField
        label="What is wrong or missing"
        value={fact}
        choices={FACTS}
        onChange={(chosen) => {
          setFact(chosen)
          setTo(factText(belt, chosen))
        }}
      />
      <FactField key={fact} fact={fact} value={to} onChange={setTo} />
      <SaidFields said={said} onChange={setSaid} noteLabel="Why" />
    </CareForm>
  )
}
