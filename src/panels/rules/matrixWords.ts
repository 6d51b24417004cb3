import type { Layout } from '../../domain/layout/document/layout'
import type { MatrixRow } from '../../domain/layout/evaluate/ruleSetMatrix'
import { valueText } from '../../domain/layout/wording/amounts'
import { subjectName } from '../../domain/layout/wording/names'
import { propertyName, quantityName } from '../../domain/layout/wording/quantities'
import { PROPERTY_IDS, type PropertyId } from '../../domain/rules/rule'

const isProperty = (measured: MatrixRow['measured']): measured is PropertyId =>
  PROPERTY_IDS.some((id) => id === measured)

/** What is measured, as a lower-case name. */
export const measuredName = (measured: MatrixRow['measured']): string =>
  isProperty(measured) ? propertyName(measured) : quantityName(measured)

export const partName = (subject: MatrixRow['subject'], layout: Layout): string =>
  subjectName(subject, layout)

/** The values that the rules were held against: one, or the ends of several (rules may speak of different sittings). */
export const valueSpread = ({ measured, entries }: MatrixRow, layout: Layout): string => {
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
