import type { ReactElement } from 'react'
import type { RuleFit } from '../../domain/layout/fit/whoFits'
import { quantityName } from '../../domain/layout/wording/quantities'
import { capitalised, levelWord } from '../../domain/layout/wording/words'
import { ruleOf } from '../../domain/layout/document/ruleSetOf'
import { useApp } from '../../state/react'

/** People who do not pass come first; of those who could not be checked more is not known. */
const mostFailing = (a: RuleFit, b: RuleFit): number => passingOf(a) - passingOf(b)

const passingOf = ({ tally }: RuleFit): number => tally.female.passing + tally.male.passing

const CountCells = (props: { readonly rule: RuleFit; readonly sex: 'female' | 'male' }): ReactElement => {
  const { passing, broken, unchecked } = props.rule.tally[props.sex]
  return (
    <td className="number" data-testid={`fit:${props.rule.ruleId}:${props.sex}`} data-value={passing}>
      {passing} of {passing + broken + unchecked}
    </td>
  )
}

/** Every rule with how many pass it, the one that most people fail first; choosing one shows who. */
export const FitRules = (props: {
  readonly rules: readonly RuleFit[]
  readonly chosenId: string | null
  readonly onChoose: (ruleId: string | null) => void
}): ReactElement => {
  const layout = useApp((state) => state.layout)
  return (
    <table className="numbers fit-rules">
      <caption>How many pass each rule</caption>
      <thead>
        <tr>
          <th scope="col">Rule</th>
          <th scope="col">Women</th>
          <th scope="col">Men</th>
        </tr>
      </thead>
      <tbody>
        {props.rules.toSorted(mostFailing).map((rule) => {
          const isChosen = rule.ruleId === props.chosenId
          return (
            <tr key={rule.ruleId}>
              <th scope="row">
                <button
                  type="button"
                  className="link"
                  aria-pressed={isChosen}
                  data-testid={`fit-rule:${rule.ruleId}`}
                  onClick={() => props.onChoose(isChosen ? null : rule.ruleId)}
                >
                  {capitalised(quantityName(rule.quantity))}, {levelWord(rule.level)}
                </button>
                <small>{ruleOf(layout, rule.ruleId)?.says}</small>
              </th>
              <CountCells rule={rule} sex="female" />
              <CountCells rule={rule} sex="male" />
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}
