import type { Layout } from '../../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../../domain/layout/evaluate/evaluation'
import { outsideText } from '../../../domain/layout/wording/amounts'
import { amountName } from '../../../domain/layout/wording/findingSentence'
import { placeName, subjectName } from '../../../domain/layout/wording/names'
import { chanceText, toleranceText } from '../../../domain/layout/wording/toleranceText'
import type { Finding } from '../../../domain/rules/finding'

const isKept = ({ verdict }: Finding): boolean => verdict === 'clear' || verdict === 'tight'

const leavingText = (finding: Finding, layout: Layout): string => {
  const { quantity, limit, withinTolerance: found } = finding
  const place = layout.places.length > 1 ? `${placeName(finding.placeId, layout)}, ` : ''
  const worst =
    found?.worstValue == null
      ? 'no path at worst'
      : `${outsideText(quantity, found.worstValue, limit, layout.units.length)} at worst`
  const chance = found?.chance == null ? '' : `, ${chanceText(found.chance)} of cars`
  return `${place}${subjectName(finding.subject, layout)}, ${amountName(quantity)} (${worst}${chance})`
}

/**
 * One sentence for the weld shop: what the typed weld and measuring error is, and every limit that is kept as drawn and could be left
 * within it. Null where no error is typed.
 */
export const toleranceLine = (layout: Layout, evaluation: CheckedEvaluation): string | null => {
  if (layout.tolerance === undefined) return null
  const leaving = evaluation.places.flatMap(({ findings }) =>
    findings.filter((finding) => isKept(finding) && finding.withinTolerance?.canLeave === true),
  )
  const given = toleranceText(layout.tolerance, layout.units.length)
  if (leaving.length === 0)
    return `Weld and measuring error ${given}: no limit that is kept as drawn could be left.`
  const named = leaving.map((finding) => leavingText(finding, layout)).join('; ')
  return `Weld and measuring error ${given}: could leave the limits: ${named}.`
}
