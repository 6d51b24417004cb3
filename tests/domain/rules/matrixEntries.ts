import type { Place } from '../../../src/domain/layout/document/layout'
import { type MatrixEntry, ruleSetMatrix } from '../../../src/domain/layout/evaluate/ruleSetMatrix'
import { flatLayout } from '../../support/flatLayout'

/** What every rule set says about a place, by rule and part; throws for what no set says. */
export const matrixEntries = (place: Place): ((ruleId: string, subject: string) => MatrixEntry) => {
  const { rows } = ruleSetMatrix(flatLayout([place]), place)
  return (ruleId, subject) => {
    const entry = rows
      .filter((row) => row.subject === subject)
      .flatMap(({ entries }) => entries)
      .find(({ rule }) => rule.id === ruleId)
    if (entry === undefined) throw new Error(`nothing says ${ruleId} of ${subject}`)
    return entry
  }
}
