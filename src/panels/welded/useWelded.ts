import { useEffect, useMemo } from 'react'
import { recordDeviations, type AnchorDeviation } from '../../domain/layout/asWelded/deviation'
import { type FindingChange, findingChanges } from '../../domain/layout/asWelded/findingChanges'
import type { MeasuredLayout } from '../../domain/layout/asWelded/measuredLayout'
import type { Layout } from '../../domain/layout/document/layout'
import type { AsWeldedRecord } from '../../domain/measure/asWeldedRecord'
import type { Finding } from '../../domain/rules/finding'
import { pageWelded } from '../../state/welded/pageWelded'
import { allFindings, measuredOf, shownRecord, weldedStanding } from '../../state/welded/weldedCheck'
import { useApp, useKept } from '../../state/react'
import { currentEvaluation } from '../../state/selectors'
import { failureClause, type WorkView } from '../WorkStatus'

/** How long a record must have stayed the same before its findings are worked out by themselves. Our judgement. */
const IDLE_MS = 600

/** A record with everything worked out from it. */
export interface WeldedView {
  readonly layout: Layout
  readonly record: AsWeldedRecord
  readonly measured: MeasuredLayout
  readonly deviations: readonly AnchorDeviation[]
  /** What the measured positions change; null while nothing was worked out yet. It may be stale. */
  readonly changes: readonly FindingChange[] | null
  /** All findings of the car that the changes are among. */
  readonly findings: readonly Finding[]
  readonly work: WorkView
}

/** Says that records are in view, so that the drawing marks what was measured. */
export const useWeldedInView = (): void =>
  useEffect(() => {
    pageWelded.view.setState({ isInView: true })
    return () => pageWelded.view.setState({ isInView: false, anchorId: null })
  }, [])

/** The record that is looked at; null when there is none. */
export const useShownRecord = (): AsWeldedRecord | null => {
  const { recordId } = useKept(pageWelded.view)
  const layout = useApp((state) => state.layout)
  return shownRecord(layout, recordId)
}

/** A record, its deviations, and the findings of the car as it has it: begun by itself once the record was left alone for a moment. */
export const useWelded = (record: AsWeldedRecord): WeldedView => {
  const layout = useApp((state) => state.layout)
  const isMoving = useApp((state) => state.gesture !== null)
  const planned = useApp(currentEvaluation)
  const task = useKept(pageWelded.state)
  const measured = measuredOf(layout, record)
  const question = useMemo(() => ({ layout: measured.layout }), [measured])
  const deviations = useMemo(() => recordDeviations(layout, record), [layout, record])
  const standing = useMemo(() => weldedStanding(question, task), [question, task])
  const isMeasured = measured.anchors.some(({ standing: each }) => each === 'measured')
  const isWanted = standing.isWanted && isMeasured && !isMoving
  useEffect(() => {
    if (!isWanted) return undefined
    const timer = setTimeout(() => pageWelded.start(question), IDLE_MS)
    return () => clearTimeout(timer)
  }, [isWanted, question])
  const { findings, isFresh, ended } = standing
  const all = useMemo(() => (findings === null ? [] : allFindings(findings)), [findings])
  const changes = useMemo(
    () =>
      findings === null || !isMeasured
        ? null
        : findingChanges(
            planned.places.flatMap((place) => place.findings),
            all,
            measured.anchors,
          ),
    [findings, all, isMeasured, planned, measured],
  )
  return {
    layout,
    record,
    measured,
    deviations,
    changes,
    findings: all,
    work: {
      running: standing.isRunning ? task.running : null,
      answer: changes === null ? 'none' : isFresh ? 'fresh' : 'stale',
      ended: ended === null ? null : { words: endedWords(ended), didFail: ended.kind === 'failed' },
      start: () => pageWelded.start(question),
      cancel: pageWelded.cancel,
    },
  }
}

const endedWords = (ended: NonNullable<ReturnType<typeof weldedStanding>['ended']>): string =>
  ended.kind === 'failed'
    ? `The findings of the car came to no end: ${failureClause(ended.message)}.`
    : 'Working out the findings of the car was cancelled.'
