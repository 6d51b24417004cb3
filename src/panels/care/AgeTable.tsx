import type { ReactElement } from 'react'
import type { BeltFacts } from '../../domain/care/beltRecord'
import type { BeltAge } from '../../domain/care/expiry'
import { AGE_CAVEAT, type AgeRow, ageRow, labelRow } from '../../domain/layout/wording/beltAgeText'

const Row = ({ row }: { readonly row: AgeRow }): ReactElement => (
  <li className="care-rule">
    <p>
      <strong>{row.lastDay}</strong> {row.says} ({row.level})
    </p>
    <p className="hint">{row.counting}</p>
    <p className="finding-source">{row.source}</p>
  </li>
)

/** Last days of a belt under every age rule that speaks of one like it: those that count here first. */
export const AgeTable = (props: { readonly age: BeltAge; readonly facts: BeltFacts }): ReactElement => {
  const { age, facts } = props
  const label = labelRow(age, facts)
  const counting = [
    ...age.chosen.map((reading) => ageRow(reading, facts)),
    ...(label === null ? [] : [label]),
  ]
  const others = age.others.map((reading) => ageRow(reading, facts))
  return (
    <>
      <p className="caution">{AGE_CAVEAT}</p>
      {counting.length === 0 ? null : <h4>What counts here</h4>}
      <ul>{rows(counting)}</ul>
      {others.length === 0 ? null : <h4>Other rules, for orientation</h4>}
      <ul>{rows(others)}</ul>
    </>
  )
}

const rows = (list: readonly AgeRow[]): readonly ReactElement[] =>
  list.map((row, index) => (
    // One rule may speak twice, of belts of different standards.
    <Row key={index} row={row} />
  ))
