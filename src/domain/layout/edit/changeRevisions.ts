import type { Layout, Revision } from '../document/layout'
import { COUNTS } from '../document/limits'
import { withJob } from './change'

/*
 * The revision history is written by people: the program never adds a line by itself, and never changes one that is there.
 */

const revisionsOf = ({ job }: Layout): readonly Revision[] => job.revisions ?? []

/** One more line, begun with the revision, date and name that the job has now. Unchanged when there are as many as a layout may hold. */
export const withRevisionAdded = (layout: Layout): Layout => {
  const { revision, date, preparedBy } = layout.job
  const revisions = revisionsOf(layout)
  if (revisions.length >= COUNTS.revisions.max) return layout
  return withJob(layout, { revisions: [...revisions, { revision, date, by: preparedBy, change: '' }] })
}

/** A line with some of it changed; unchanged where there is no such line. */
export const withRevision = (layout: Layout, index: number, patch: Partial<Revision>): Layout => {
  const revisions = revisionsOf(layout)
  if (revisions[index] === undefined) return layout
  return withJob(layout, {
    revisions: revisions.map((revision, at) => (at === index ? { ...revision, ...patch } : revision)),
  })
}

/** Without a line; the field goes with the last one. */
export const withoutRevision = (layout: Layout, index: number): Layout => {
  const revisions = revisionsOf(layout)
  if (revisions[index] === undefined) return layout
  const left = revisions.filter((_, at) => at !== index)
  if (left.length > 0) return withJob(layout, { revisions: left })
  const { revisions: _none, ...job } = layout.job
  return { ...layout, job }
}
