import { measuredLayout, type MeasuredLayout } from '../../domain/layout/asWelded/measuredLayout'
import type { Layout } from '../../domain/layout/document/layout'
import type { AsWeldedRecord } from '../../domain/measure/asWeldedRecord'
import type { Finding } from '../../domain/rules/finding'
import { answerWelded } from '../../state/welded/answerWelded'
import { allFindings } from '../../state/welded/weldedCheck'

/** A record with everything that was worked out from it; what its page is made from. */
export interface WeldedPaper {
  readonly record: AsWeldedRecord
  readonly measured: MeasuredLayout
  /** Of the car as welded, room and all, without remedies; none while no anchor is measured. */
  readonly findings: readonly Finding[]
}

/** One record, its findings worked out here and now, however long that takes. */
export const weldedPaper = (record: AsWeldedRecord, measured: MeasuredLayout): WeldedPaper => {
  const isMeasured = measured.anchors.some(({ standing }) => standing === 'measured')
  const answer = isMeasured ? answerWelded({ layout: measured.layout }) : null
  return { record, measured, findings: answer?.ok === true ? allFindings(answer.value) : [] }
}

/** Every record of a layout, for whoever needs all of them at once. */
export const weldedPapers = (layout: Layout): readonly WeldedPaper[] =>
  (layout.asWelded ?? []).map((record) => weldedPaper(record, measuredLayout(layout, record)))
