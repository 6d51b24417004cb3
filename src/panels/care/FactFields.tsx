import type { ReactElement } from 'react'
import { BELT_FACTS, BELT_STANDARDS, type BeltFact } from '../../domain/care/beltRecord'
import type { FactTexts } from '../../domain/care/entryProblems'
import { TEXT_LENGTHS } from '../../domain/layout/document/limits'
import { factHelp, factName, standardName } from '../../domain/layout/wording/careWords'
import { capitalised } from '../../domain/layout/wording/words'
import { ChoiceField } from '../fields/ChoiceField'
import { TextField } from '../fields/TextField'

const STANDARDS = BELT_STANDARDS.map((value) => ({ value, words: capitalised(standardName(value)) }))

/** One fact of a belt to type or choose, with where on the belt it is found. */
export const FactField = (props: {
  readonly fact: BeltFact
  readonly value: string
  readonly onChange: (text: string) => void
}): ReactElement => {
  const { fact, value, onChange } = props
  const label = capitalised(factName(fact))
  if (fact === 'standard') {
    const chosen = BELT_STANDARDS.find((standard) => standard === value) ?? 'unreadable'
    return (
      <div>
        <ChoiceField label={label} value={chosen} choices={STANDARDS} onChange={onChange} />
        <small className="hint">{factHelp(fact)}</small>
      </div>
    )
  }
  return (
    <TextField
      label={label}
      value={value}
      maxLength={TEXT_LENGTHS.name}
      hint={factHelp(fact)}
      onCommit={onChange}
    />
  )
}

/** All facts of a belt that is not in the record yet. */
export const FactFields = (props: {
  readonly texts: FactTexts
  readonly onChange: (change: Partial<FactTexts>) => void
}): ReactElement => (
  <>
    {BELT_FACTS.map((fact) => (
      <FactField
        key={fact}
        fact={fact}
        value={props.texts[fact]}
        onChange={(text) => props.onChange({ [fact]: text })}
      />
    ))}
  </>
)
