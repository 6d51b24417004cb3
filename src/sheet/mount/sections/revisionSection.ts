import type { Revision } from '../../../domain/layout/document/layout'
import type { FlowRow } from '../../page/flow'
import { cell, sectionRows, textRows, type BareRow } from '../../page/section'
import { tableRow, type Column } from '../../page/table'
import { agreementRows } from './agreementRows'
import type { Setting } from './partSections'

const SECTION = 'Revisions and agreement'

/** Shares of the width: letter, date, by, what was changed. */
const SHARES = [0.12, 0.2, 0.24, 0.44] as const

/**
 * What was changed from one revision to the next, and whether the customer agreed; without a history the revision that this sheet is,
 * and that no history is kept.
 */
export const revisionSection = (setting: Setting): readonly FlowRow[] => {
  const { layout, widthMm, type } = setting
  const { revisions, revision, date, preparedBy } = layout.job
  if (revisions !== undefined && revisions.length > 0)
    return sectionRows(SECTION, widthMm, type, [
      headRow(setting),
      ...revisions.map((each) => row(each, setting)),
      ...agreementRows(setting, SECTION),
    ])
  const now = [revision === '' ? 'no revision letter' : `Revision ${revision}`, date, preparedBy]
    .filter((word) => word !== '')
    .join(', ')
  const text = `${now}. No history of changes has been typed.`
  return sectionRows(SECTION, widthMm, type, [
    ...textRows(text, widthMm, type.body, SECTION),
    ...agreementRows(setting, SECTION),
  ])
}

const columnsOf = (widthMm: number): readonly Column[] =>
  SHARES.map((share) => ({ widthMm: share * widthMm, align: 'left' }))

const headRow = ({ widthMm, type }: Setting): BareRow =>
  tableRow(
    columnsOf(widthMm),
    ['Rev.', 'Date', 'By', 'Changed'].map((word) => [cell(word, type.small, 1)]),
    { section: SECTION, rule: 'thin', keepWithNext: true },
  )

const row = ({ revision, date, by, change }: Revision, { widthMm, type }: Setting): BareRow =>
  tableRow(
    columnsOf(widthMm),
    [
      [cell(revision, type.strong, 4)],
      [cell(date, type.body, 2)],
      [cell(by, type.body, 8)],
      [cell(change === '' ? '–' : change, type.body, 24)],
    ],
    { section: SECTION, rule: 'thin' },
  )
