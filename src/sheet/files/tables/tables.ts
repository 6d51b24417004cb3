import type { Layout } from '../../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../../domain/layout/evaluate/evaluation'
import type { CsvTable } from '../csv'
import { anchorsTable } from './anchorsTable'
import { findingsTable } from './findingsTable'
import { tapeChecksTable, tapePlacesTable, tapePointsTable } from './tapeTables'
import { tubesTable } from './tubesTable'
import { weldedTable } from './weldedTable'

/** What a table is made from. */
interface TableRequest {
  readonly layout: Layout
  readonly evaluation: CheckedEvaluation
}

/** One table that leaves the shop as a file. */
export interface TableKind {
  /** First part of its file's name. */
  readonly fileStem: string
  readonly words: string
  readonly table: (request: TableRequest) => CsvTable
  /** Why there is none, said in its place. */
  readonly whenEmpty: string
}

/** What the mount sheet says, for a spreadsheet. */
export const MOUNT_TABLES: readonly TableKind[] = [
  {
    fileStem: 'anchors',
    words: 'Every anchor: where it is, what it hangs on, how it is made, which way it is pulled',
    table: ({ layout, evaluation }) => anchorsTable(layout, evaluation),
    whenEmpty: 'The layout has no anchors.',
  },
  {
    fileStem: 'tubes',
    words: 'Every point of every tube’s centre line',
    table: ({ layout }) => tubesTable(layout),
    whenEmpty: 'The layout has no tubes.',
  },
  {
    fileStem: 'tape-points',
    words: 'Every tape point that was named',
    table: ({ layout }) => tapePointsTable(layout),
    whenEmpty: 'No tape point was named.',
  },
  {
    fileStem: 'tape-places',
    words: 'Every place that a tape is held to, with its letter',
    table: ({ layout }) => tapePlacesTable(layout),
    whenEmpty: 'No anchor has a place that a straight tape reaches: name tape points.',
  },
  {
    fileStem: 'tape-checks',
    words: 'Every straight distance to check with a tape',
    table: ({ layout }) => tapeChecksTable(layout),
    whenEmpty: 'There is no straight distance to check: name tape points.',
  },
  {
    fileStem: 'findings',
    words: 'Every finding under the chosen rule set, with value, limit and source',
    table: ({ layout, evaluation }) => findingsTable(layout, evaluation),
    whenEmpty: 'The chosen rule set says nothing about this layout.',
  },
]

/** What the as-welded records say, for a spreadsheet. */
export const WELDED_TABLES: readonly TableKind[] = [
  {
    fileStem: 'as-welded-anchors',
    words: 'Every anchor as it was measured, beside the plan',
    table: ({ layout }) => weldedTable(layout),
    whenEmpty: 'Nothing was measured on the car yet.',
  },
]
