import type { CsvTable } from '../csv'
import type { PaperRequest } from '../../paperKinds'
import { anchorsTable } from './anchorsTable'
import { findingsTable } from './findingsTable'
import { tubesTable } from './tubesTable'

/** One table that leaves the shop as a file. */
export interface TableKind {
  /** First part of its file's name. */
  readonly fileStem: string
  readonly words: string
  readonly table: (request: PaperRequest) => CsvTable
  /** Why there is none, said in its place. */
  readonly whenEmpty: string
}

export const TABLE_KINDS: readonly TableKind[] = [
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
    fileStem: 'findings',
    words: 'Every finding under the chosen rule set, with value, limit and source',
    table: ({ layout, evaluation }) => findingsTable(layout, evaluation),
    whenEmpty: 'The chosen rule set says nothing about this layout.',
  },
]
