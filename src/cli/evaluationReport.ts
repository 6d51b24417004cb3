import type { Layout } from '../domain/layout/document/layout'
import { variantsOf } from '../domain/layout/edit/changeVariants'
import { evaluateLayout } from '../domain/layout/evaluate/evaluateLayout'
import type { PlaceEvaluation } from '../domain/layout/evaluate/evaluation'
import { CAUTIONS } from '../domain/layout/wording/cautions'
import type { Finding } from '../domain/rules/finding'
import { quantityUnit } from '../domain/straps/quantity'

/** What is printed for one file. Numbers are unrounded: the same ones that screen and sheet round for reading. */
export type EvaluationReport = ReturnType<typeof evaluationReport>

export const evaluationReport = (file: string, layout: Layout) => {
  const { ruleSet, places } = evaluateLayout(layout)
  return {
    file,
    // Which of several ways to build the car the numbers are of; not there where there is only one.
    ...(layout.variants === undefined
      ? {}
      : {
          variant: layout.variants.drawn.name,
          variants: variantsOf(layout).map(({ name }) => name),
        }),
    ruleSet: ruleSet.id,
    ruleSetName: ruleSet.name,
    ruleSetEdition: ruleSet.edition,
    sittings: places.flatMap(reportedSittings),
    quantities: places.flatMap(reportedQuantities),
    findings: places.flatMap((place) => place.findings.map(reportedFinding)),
    cautions: CAUTIONS,
  }
}

const reportedSittings = (place: PlaceEvaluation) =>
  place.sittings.map(({ sitting, problems }) => ({
    id: sitting.id,
    place: sitting.placeId,
    occupant: sitting.occupantId,
    slideMm: sitting.slideMm,
    reclineDeg: sitting.reclineDeg,
    problems,
  }))

const reportedQuantities = (place: PlaceEvaluation) =>
  place.sittings.flatMap(({ sitting, quantities }) =>
    quantities.map(({ id, subject, value }) => ({
      id,
      place: sitting.placeId,
      subject,
      sitting: sitting.id,
      value,
      unit: quantityUnit(id),
    })),
  )

const reportedFinding = (finding: Finding) => ({
  rule: finding.ruleId,
  quantity: finding.quantity,
  place: finding.placeId,
  subject: finding.subject,
  worstSitting: finding.worstSitting,
  value: finding.value,
  limit: finding.limit,
  level: finding.level,
  verdict: finding.verdict,
  roomMm: finding.roomMm,
  // In the elevation where the rule does not live, if a position there decides it.
  ...(finding.otherRoom === undefined ? {} : { otherRoom: finding.otherRoom }),
  source: finding.source,
  // Only where the layout says what its welding and measuring may be off by.
  ...(finding.withinTolerance === undefined ? {} : { withinTolerance: finding.withinTolerance }),
})

/** Whether a rule that its document orders is broken: the one thing besides an unusable file that the exit code tells. */
export const isMustBroken = (report: EvaluationReport): boolean =>
  report.findings.some((finding) => finding.level === 'must' && finding.verdict === 'broken')

/** How many findings could not be checked; silence about them could be taken for approval. */
export const uncheckedCount = (report: EvaluationReport): number =>
  report.findings.filter((finding) => finding.verdict === 'unchecked').length
