import { type AnchorDeviation, recordDeviations, toleranceOf } from '../domain/layout/asWelded/deviation'
import { type FindingChange, findingChanges } from '../domain/layout/asWelded/findingChanges'
import { measuredLayout } from '../domain/layout/asWelded/measuredLayout'
import type { Layout } from '../domain/layout/document/layout'
import { evaluateLayout } from '../domain/layout/evaluate/evaluateLayout'
import { problemOf } from '../domain/layout/wording/readingLines'
import type { AsWeldedRecord } from '../domain/measure/asWeldedRecord'
import type { ShownFinding } from '../domain/rules/finding'

const findingsOf = (layout: Layout) =>
  evaluateLayout(layout, { extent: 'what-moves' }).places.flatMap(({ findings }) => findings)

const reportedDeviation = (deviation: AnchorDeviation) => {
  const { reading, planned, position, planDeg, leanDeg, areAnglesUnmeasured, verdict } = deviation
  const { placeId, anchorId, strap } = reading.entry
  return {
    place: placeId,
    anchor: anchorId,
    strap,
    planned,
    measured: reading.position?.ok === true ? reading.position.value.point : null,
    problem: problemOf(reading, 'mm'),
    position,
    planDeg,
    leanDeg,
    areAnglesUnmeasured,
    verdict,
  }
}

const reportedSide = (finding: ShownFinding | null) =>
  finding === null ? null : { verdict: finding.verdict, value: finding.value, roomMm: finding.roomMm }

const reportedChange = ({ kind, planned, welded, assumed }: FindingChange) => {
  const finding = welded ?? planned
  return {
    kind,
    rule: finding?.ruleId ?? null,
    place: finding?.placeId ?? null,
    subject: finding?.subject ?? null,
    planned: reportedSide(planned),
    welded: reportedSide(welded),
    // Anchors that were not measured, or not their angles, and that the finding takes from the plan.
    assumed: assumed.map(({ anchor }) => anchor.id),
  }
}

const reportedRecord = (layout: Layout, planned: readonly ShownFinding[], record: AsWeldedRecord) => {
  const { layout: welded, anchors, gone } = measuredLayout(layout, record)
  return {
    id: record.id,
    name: record.name,
    date: record.date,
    signed: record.signed ?? null,
    tolerance: toleranceOf(layout, record) ?? null,
    anchors: recordDeviations(layout, record).map(reportedDeviation),
    takenAsPlanned: anchors.filter(({ standing }) => standing !== 'measured').map(({ anchor }) => anchor.id),
    gone: gone.map(({ anchorId }) => anchorId),
    changes: findingChanges(planned, findingsOf(welded), anchors).map(reportedChange),
  }
}

/** What `--as-welded` adds: for each record what was measured, how far off it is, and what that changes of the findings. */
export const weldedReport = (layout: Layout) => {
  const planned = findingsOf(layout)
  return (layout.asWelded ?? []).map((record) => reportedRecord(layout, planned, record))
}
