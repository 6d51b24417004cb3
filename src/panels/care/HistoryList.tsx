import type { ReactElement } from 'react'
import type { BeltEntry, BeltRecord } from '../../domain/care/beltRecord'
import { entriesByDate, strikeOf } from '../../domain/care/condition'
import { entryProblems, type EntryProblem } from '../../domain/care/entryProblems'
import { withEntryAdded } from '../../domain/layout/edit/beltRecords'
import { historyLine } from '../../domain/layout/wording/beltHistoryText'
import { useActions } from '../../state/react'
import { today } from '../../state/today'
import { CareForm, FormSection, SaidFields, useSaid } from './CareForm'

const StrikeForm = (props: {
  readonly belt: BeltRecord
  readonly entry: BeltEntry
  readonly onDone: () => void
}): ReactElement => {
  const { belt, entry } = props
  const { edit } = useActions()
  const [said, setSaid] = useSaid()
  const submit = (): readonly EntryProblem[] => {
    const strike = { ...said, kind: 'struck' as const, entryId: entry.id }
    const problems = entryProblems(belt, strike, today())
    if (problems.length > 0) return problems
    edit(`Strike an entry of ${belt.name}`, (layout) => withEntryAdded(layout, belt.id, strike))
    return []
  }
  return (
    <CareForm button="Strike it" submit={submit} onDone={props.onDone}>
      <p className="hint">It stays readable, struck through, with the reason beside it.</p>
      <SaidFields said={said} onChange={setSaid} noteLabel="Why it is wrong" />
    </CareForm>
  )
}

const canBeStruck = (belt: BeltRecord, entry: BeltEntry): boolean =>
  entry.kind !== 'struck' && entry.kind !== 'corrected' && strikeOf(belt, entry.id) === null

const HistoryItem = (props: { readonly belt: BeltRecord; readonly entry: BeltEntry }): ReactElement => {
  const { belt, entry } = props
  const line = historyLine(belt, entry)
  const words = (
    <>
      <strong>
        {line.date} · {line.by}
      </strong>
      <br />
      {line.what} {line.note}
    </>
  )
  return (
    <li className="care-entry" data-testid={`entry:${line.id}`} data-struck={line.struck !== null}>
      <p>{line.struck === null ? words : <s>{words}</s>}</p>
      {line.struck === null ? null : <p>{line.struck}</p>}
      {canBeStruck(belt, entry) ? (
        <FormSection words={`Strike the entry of ${line.date}`}>
          {(close) => <StrikeForm belt={belt} entry={entry} onDone={close} />}
        </FormSection>
      ) : null}
    </li>
  )
}

/** Everything that happened to a belt, the latest first. */
export const HistoryList = ({ belt }: { readonly belt: BeltRecord }): ReactElement =>
  belt.entries.length === 0 ? (
    <p className="hint">Nothing is entered yet.</p>
  ) : (
    <ol className="care-history" reversed>
      {entriesByDate(belt)
        .toReversed()
        .map((entry) => (
          <HistoryItem key={entry.id} belt={belt} entry={entry} />
        ))}
    </ol>
  )
