import { useEffect, useMemo, useState } from 'react'
import { useApp, useKept } from '../../state/react'
import { pageWelded } from '../../state/welded/pageWelded'
import { allFindings, measuredOf, shownRecord, weldedStanding } from '../../state/welded/weldedCheck'
import { weldedPaper, type WeldedPaper } from './weldedPaper'

/** The record that is looked at, as its page needs it. */
export interface WeldedPapers {
  /** None without a record; null while its findings are worked out. */
  readonly papers: readonly WeldedPaper[] | null
  /** Why the findings will not come by themselves; null where they will. */
  readonly failure: string | null
  readonly tryAgain: () => void
  /** Works them out on the page itself, which stands still meanwhile. */
  readonly workOutHere: () => void
}

/** What is printed of the record that is looked at, worked out beside the page; only while it is wanted. */
export const useWeldedPapers = (isWanted: boolean): WeldedPapers => {
  const layout = useApp((state) => state.layout)
  const { recordId } = useKept(pageWelded.view)
  const task = useKept(pageWelded.state)
  const [here, setHere] = useState<WeldedPaper | null>(null)
  const record = shownRecord(layout, recordId)
  const measured = record === null ? null : measuredOf(layout, record)
  const question = useMemo(() => (measured === null ? null : { layout: measured.layout }), [measured])
  const isMeasured = measured?.anchors.some(({ standing }) => standing === 'measured') === true
  const standing = useMemo(
    () => (question === null ? null : weldedStanding(question, task)),
    [question, task],
  )
  const mustStart = isWanted && isMeasured && standing?.isWanted === true
  useEffect(() => {
    if (mustStart && question !== null) pageWelded.start(question)
  }, [mustStart, question])
  const papers = useMemo((): readonly WeldedPaper[] | null => {
    if (record === null || measured === null || standing === null) return []
    if (!isMeasured) return [{ record, measured, findings: [] }]
    if (here !== null && here.measured === measured) return [here]
    return standing.isFresh && standing.findings !== null
      ? [{ record, measured, findings: allFindings(standing.findings) }]
      : null
  }, [record, measured, standing, isMeasured, here])
  const ended = standing?.ended ?? null
  return {
    papers,
    failure: ended === null ? null : ended.kind === 'failed' ? ended.message : 'it was cancelled',
    tryAgain: () => {
      if (question !== null) pageWelded.start(question)
    },
    workOutHere: () => {
      if (record !== null && measured !== null) setHere(weldedPaper(record, measured))
    },
  }
}
