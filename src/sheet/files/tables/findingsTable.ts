import type { Layout, LengthUnit } from '../../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../../domain/layout/evaluate/evaluation'
import { limitText, outsideText, valueText } from '../../../domain/layout/wording/amounts'
import { amountName, findingSentence } from '../../../domain/layout/wording/findingSentence'
import { placeName, subjectName } from '../../../domain/layout/wording/names'
import { levelWord, verdictWord } from '../../../domain/layout/wording/words'
import type { Finding } from '../../../domain/rules/finding'
import type { CsvTable } from '../csv'
import { column, lengthColumns, tableOf } from './columns'

/** Every finding under the chosen rule set, the clear ones too, with value, limit, sentence and source. */
export const findingsTable = (layout: Layout, evaluation: CheckedEvaluation): CsvTable => {
  const unit = layout.units.length
  const { ruleSet } = evaluation
  return tableOf<Finding>(
    [
      ...column<Finding>('verdict', ({ verdict }) => verdictWord(verdict)),
      ...column<Finding>('level', ({ level }) => levelWord(level)),
      ...column<Finding>('place', ({ placeId }) => placeName(placeId, layout)),
      ...column<Finding>('about', ({ subject }) => subjectName(subject, layout)),
      ...column<Finding>('what', ({ quantity }) => amountName(quantity)),
      ...column<Finding>('value', (finding) => shownValue(finding, unit)),
      ...column<Finding>('limit', ({ quantity, limit }) => limitText(quantity, limit, unit)),
      ...lengthColumns<Finding>('room to the limit', ({ roomMm }) => roomMm),
      ...column<Finding>('in words', (finding) => findingSentence(finding, layout).what),
      ...column<Finding>('why', (finding) => findingSentence(finding, layout).why),
      ...column<Finding>('remedy', (finding) => findingSentence(finding, layout).remedy),
      ...column<Finding>('source', (finding) => findingSentence(finding, layout).source),
      ...column<Finding>('rule set', () => `${ruleSet.name}, ${ruleSet.edition}`),
    ],
    evaluation.places.flatMap(({ findings }) => findings),
  )
}

/** With as many decimals as it takes to see that a limit is broken. */
const shownValue = ({ quantity, value, limit, verdict }: Finding, unit: LengthUnit): string | null => {
  if (value === null) return null
  return verdict === 'broken' ? outsideText(quantity, value, limit, unit) : valueText(quantity, value, unit)
}
