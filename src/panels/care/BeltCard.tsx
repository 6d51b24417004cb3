import type { ReactElement } from 'react'
import { BELT_FACTS, type BeltRecord, factText } from '../../domain/care/beltRecord'
import { type BeltCondition, beltCondition } from '../../domain/care/condition'
import { type AgeVerdict, type BeltAge, beltAge } from '../../domain/care/expiry'
import { labelProblems } from '../../domain/care/labelProblems'
import { nextInspection } from '../../domain/care/reminders'
import { LIMITS } from '../../domain/layout/document/limits'
import { chosenRuleSet } from '../../domain/layout/document/ruleSetOf'
import { withInspectionInterval } from '../../domain/layout/edit/beltRecords'
import { ageSentence, orientationText, silentSetText } from '../../domain/layout/wording/beltAgeText'
import { conditionText } from '../../domain/layout/wording/beltHistoryText'
import {
  factName,
  factValue,
  labelProblemText,
  manufacturedText,
} from '../../domain/layout/wording/careWords'
import { capitalised } from '../../domain/layout/wording/words'
import type { ShownVerdict } from '../../domain/rules/finding'
import { useActions, useApp } from '../../state/react'
import { today } from '../../state/today'
import { MARKS } from '../verdicts'
import { PlainField } from '../rules/PlainField'
import { AgeTable } from './AgeTable'
import { FormSection } from './CareForm'
import { CorrectFact } from './CorrectFact'
import { EventForm } from './EventForm'
import { HistoryList } from './HistoryList'
import { InspectionForm } from './InspectionForm'
import { ReplaceBelt } from './NewBelt'

const AGE_VERDICTS: Readonly<Record<AgeVerdict, ShownVerdict>> = {
  expired: 'broken',
  'not-known': 'unchecked',
  soon: 'tight',
  fine: 'clear',
  'no-rule': 'unchecked',
}

/** A mark, a word and a sentence; colour only repeats them. */
const StateLine = (props: {
  readonly verdict: ShownVerdict
  readonly words: string
  readonly testId: string
}): ReactElement => (
  <p className="care-state" data-verdict={props.verdict} data-testid={props.testId}>
    <span aria-hidden="true" className="finding-mark">
      {MARKS[props.verdict]}
    </span>
    <span>{props.words}</span>
  </p>
)

const conditionVerdict = (condition: BeltCondition): ShownVerdict =>
  condition.kind === 'in-use' ? 'clear' : 'broken'

const BeltState = (props: {
  readonly belt: BeltRecord
  readonly age: BeltAge
  readonly condition: BeltCondition
}): ReactElement => {
  const { belt, age, condition } = props
  const layout = useApp((state) => state.layout)
  const ruleSet = chosenRuleSet(layout)
  const beside = [
    silentSetText(age, belt, ruleSet),
    age.chosen.length === 0 ? orientationText(age, today()) : null,
  ].filter((words) => words !== null)
  return (
    <>
      {condition.kind === 'retired' ? null : (
        <StateLine
          verdict={AGE_VERDICTS[age.verdict]}
          words={ageSentence(age, belt, ruleSet)}
          testId={`age:${belt.id}`}
        />
      )}
      {condition.kind === 'retired' || beside.length === 0 ? null : (
        <p className="hint">{beside.join(' ')}</p>
      )}
      <StateLine
        verdict={conditionVerdict(condition)}
        words={conditionText(condition)}
        testId={`condition:${belt.id}`}
      />
      {labelProblems(belt, today()).map((problem) => (
        <p key={problem.kind} className="problems">
          {labelProblemText(problem)}
        </p>
      ))}
    </>
  )
}

const FactList = ({ belt }: { readonly belt: BeltRecord }): ReactElement => (
  <dl className="care-facts">
    {BELT_FACTS.filter((fact) => fact !== 'name').map((fact) => (
      <div key={fact}>
        <dt>{capitalised(factName(fact))}</dt>
        <dd>
          {fact === 'manufactured'
            ? manufacturedText(belt.manufactured)
            : factValue(fact, factText(belt, fact))}
        </dd>
      </div>
    ))}
  </dl>
)

const InspectionInterval = ({ belt }: { readonly belt: BeltRecord }): ReactElement => {
  const { edit } = useActions()
  const next = nextInspection(belt, today())
  const set = (months: number | null): void =>
    edit(`Change how often ${belt.name} is inspected`, (layout) =>
      withInspectionInterval(layout, belt.id, months),
    )
  const hint =
    next === null
      ? 'Your own choice; no source says how often. Empty: no reminder.'
      : next.wasDue === null
        ? `Your own choice; no source says how often. Next: ${next.date}.`
        : `Your own choice; no source says how often. Overdue since ${next.wasDue}.`
  return (
    <PlainField
      label="Inspect every … months"
      value={belt.inspectEveryMonths ?? null}
      limits={LIMITS.inspectEveryMonths}
      placeholder="no reminder"
      hint={hint}
      testId={`interval:${belt.id}`}
      onCommit={(months) => set(Math.round(months))}
      onClear={() => set(null)}
    />
  )
}

/** One belt: how it stands, its label, what can be entered, and everything that was. */
export const BeltCard = ({ belt }: { readonly belt: BeltRecord }): ReactElement => {
  const layout = useApp((state) => state.layout)
  const age = beltAge(belt, chosenRuleSet(layout), today())
  const condition = beltCondition(belt)
  return (
    <section className="editor care-belt" aria-label={belt.name} data-testid={`belt:${belt.id}`}>
      <h3>{belt.name}</h3>
      <BeltState belt={belt} age={age} condition={condition} />
      <FactList belt={belt} />
      {condition.kind === 'retired' ? null : (
        <>
          <FormSection words="Inspect today">
            {(close) => <InspectionForm belt={belt} onDone={close} />}
          </FormSection>
          <InspectionInterval belt={belt} />
        </>
      )}
      <FormSection words="Enter something else">
        {(close) => <EventForm belt={belt} onDone={close} />}
      </FormSection>
      <FormSection words="Correct the label or the fitting">
        {(close) => <CorrectFact belt={belt} onDone={close} />}
      </FormSection>
      {condition.kind === 'retired' ? null : (
        <FormSection words="Replace this belt">
          {(close) => <ReplaceBelt belt={belt} onDone={close} />}
        </FormSection>
      )}
      <FormSection words="Every age rule for such a belt">
        {() => <AgeTable age={age} facts={belt} />}
      </FormSection>
      <h4>History</h4>
      <HistoryList belt={belt} />
    </section>
  )
}
