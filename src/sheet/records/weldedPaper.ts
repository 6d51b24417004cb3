import type { MeasuredLayout } from '../../domain/layout/asWelded/measuredLayout'
import { measuredLayout } from '../../domain/layout/asWelded/measuredLayout'
import type { Layout } from '../../domain/layout/document/layout'
import type { AsWeldedRecord } from '../../domain/measure/asWeldedRecord'
import type { Finding } from '../../domain/rules/finding'
import { answerWelded } from '../../state/welded/answerWelded'
import { allFindings } from '../../state/welded/weldedCheck'

/** A record with everything that was worked out from it; what its page is made from. */
export interface WeldedPaper {
  readonly record: AsWeldedRecord
  readonly measured: MeasuredLayout
  /** Of the car as welded, room and all, without remedies. */
  readonly findings: readonly Finding[]
}

/** Every record of a layout, worked out here and now, however long that takes; for whoever needs all of them at once. */
export const weldedPapers = (layout: Layout): readonly WeldedPaper[] =>
  (layout.asWelded ?? []).map((record) => {
    const measured = measuredLayout(layout, record)
    const answer = answerWelded({ layout: measured.layout })
    return { record, measured, findings: answer.ok ? allFindings(answer.value) : [] }
  })
