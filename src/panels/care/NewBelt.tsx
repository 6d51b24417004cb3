import { useState, type ReactElement } from 'react'
import type { BeltRecord } from '../../domain/care/beltRecord'
import {
  entryProblems,
  factsFromTexts,
  type EntryProblem,
  type FactTexts,
} from '../../domain/care/entryProblems'
import type { Place } from '../../domain/layout/document/layout'
import { withBeltAdded, withBeltReplaced } from '../../domain/layout/edit/beltRecords'
import { useActions } from '../../state/react'
import { today } from '../../state/today'
import { uniqueId } from '../../state/uniqueId'
import { CareForm, SaidFields, useSaid } from './CareForm'
import { FactFields } from './FactFields'

/** The standard is left at "not readable" until somebody has read it: a guess would count years that nobody gave. */
const startingTexts = (name: string): FactTexts => ({
  name,
  standard: 'unreadable',
  serial: '',
  manufactured: '',
  labelYear: '',
  fitted: '',
})

const newId = (): string => `belt-${uniqueId()}`

/** Begins the record of one more belt at a place. */
export const AddBelt = (props: { readonly place: Place; readonly onDone: () => void }): ReactElement => {
  const { place } = props
  const { edit } = useActions()
  const [texts, setTexts] = useState(() => startingTexts(`${place.name} belt`.trim()))
  const submit = (): readonly EntryProblem[] => {
    const facts = factsFromTexts(texts)
    if (!facts.ok) return facts.error
    const id = newId()
    edit(`Begin a record of ${facts.value.name}`, (layout) =>
      withBeltAdded(layout, place.id, id, facts.value),
    )
    return []
  }
  return (
    <CareForm button="Begin this record" submit={submit} onDone={props.onDone}>
      <FactFields texts={texts} onChange={(change) => setTexts({ ...texts, ...change })} />
    </CareForm>
  )
}

/** Retires a belt and begins the record of the one in its place. */
export const ReplaceBelt = (props: {
  readonly belt: BeltRecord
  readonly onDone: () => void
}): ReactElement => {
  const { belt } = props
  const { edit } = useActions()
  const [said, setSaid] = useSaid()
  const [texts, setTexts] = useState(() => startingTexts(belt.name))
  const submit = (): readonly EntryProblem[] => {
    const facts = factsFromTexts(texts)
    const problems = [
      ...entryProblems(belt, { ...said, kind: 'retired' }, today()),
      ...(facts.ok ? [] : facts.error),
    ]
    if (problems.length > 0 || !facts.ok) return problems
    const successor = { id: newId(), facts: facts.value }
    edit(`Replace ${belt.name}`, (layout) => withBeltReplaced(layout, belt.id, successor, said))
    return []
  }
  return (
    <CareForm button="Retire the old one and begin the new record" submit={submit} onDone={props.onDone}>
      <SaidFields said={said} onChange={setSaid} noteLabel="About the old belt" />
      <h4>The new belt</h4>
      <FactFields texts={texts} onChange={(change) => setTexts({ ...texts, ...change })} />
    </CareForm>
  )
}
