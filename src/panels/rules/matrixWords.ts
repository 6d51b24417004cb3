import type { Layout } from '../../domain/layout/document/layout'
import type { MatrixRow } from '../../domain/layout/evaluate/ruleSetMatrix'
import { valueText } from '../../domain/layout/wording/amounts'
import { agreementText, isDisagreement } from '../../domain/layout/wording/matrixText'
import { subjectName } from '../../domain/layout/wording/names'
import { propertyName } from '../../domain/layout/wording/propertyNames'
import { quantityName } from '../../domain/layout/wording/quantities'
import { capitalised } from '../../domain/layout/wording/words'
import { PROPERTY_IDS, type PropertyId } from '../../domain/rules/rule'

const isProperty = (measured: MatrixRow['measured']): measured is PropertyId =>
  PROPERTY_IDS.some((id) => id === measured)

/** The values that the rules were held against: one, or the ends of several (rules may speak of different sittings). */
const valueSpread = ({ measured, entries }: MatrixRow, layout: Layout): string => {
  const unit = layout.units.length
  const values = entries.map(({ value }) => value).filter((value) => value !== null)
  const [first] = values
  if (first === undefined) return 'no number'
  const numbers = values.filter((value) => typeof value === 'number')
  const text = (value: number | string): string => valueText(measured, value, unit)
  if (numbers.length === 0) return text(first)
  const low = text(Math.min(...numbers))
  const high = text(Math.max(...numbers))
  return low === high ? low : `${low} to ${high}`
}

/** What stands at the head of a row, whether the matrix is a table or a list. */
interface MatrixRowWords {
  /** What is measured. */
  readonly name: string
  /** On which part, and with which values. */
  readonly part: string
  /** Whether the sets agree; a sign goes before it where they do not. */
  readonly agreement: string
}

export const matrixRowWords = (row: MatrixRow, layout: Layout): MatrixRowWords => {
  const { measured, subject, agreement } = row
  return {
    name: capitalised(isProperty(measured) ? propertyName(measured) : quantityName(measured)),
    part: `${subjectName(subject, layout)}: ${valueSpread(row, layout)}`,
    agreement: `${isDisagreement(agreement) ? '≠ ' : ''}${agreementText(row)}`,
  }
}

export const matrixRowKey = ({ measured, subject }: MatrixRow): string => `${measured}/${subject}`

/** By what a row is found and styled. */
export const matrixRowMarks = ({ measured, subject, agreement }: MatrixRow) => ({
  'data-testid': `matrix:${measured}:${subject}`,
  'data-agreement': agreement,
  'data-disagree': isDisagreement(agreement),
})
