import type { Layout } from '../domain/layout/document/layout'
import type { CheckedEvaluation } from '../domain/layout/evaluate/evaluation'
import type { FlatFigure } from '../domain/shop/flat/flatFigure'
import type { View } from '../state/appState'
import { comparisonPages } from './comparison/comparisonPages'
import { type GeneralDrawing, generalDrawing } from './files/generalDrawing'
import { MOUNT_TABLES, type TableKind, WELDED_TABLES } from './files/tables/tables'
import { sheetPages } from './mount/sheetPages'
import type { PaperName } from './page/paper'
import type { SheetPage } from './page/sheetPage'
import { asWeldedPages } from './records/asWeldedPages'
import { beltRecordPages } from './records/beltRecordPages'
import { isNothingMeasured, measuringFormPages } from './records/measuringForm'
import { weldedPapers, type WeldedPaper } from './records/weldedPaper'
import { templatePages } from './templates/templatePages'
import { templateFigures } from './templates/templateSet'

/** What a paper is made from. */
export interface PaperRequest {
  readonly layout: Layout
  readonly evaluation: CheckedEvaluation
  readonly paperName: PaperName
  /** ISO 8601 calendar date on which the paper is looked at. */
  readonly today: string
  /** Whether the mount sheet shows the harness bar from behind; it does unless this says otherwise. */
  readonly hasRearView?: boolean
  /** Records of what was welded, worked out already; left out: all of the layout, worked out when their pages are made. */
  readonly welded?: readonly WeldedPaper[]
}

/** One kind of paper that leaves the shop. */
export interface PaperKind {
  readonly id: View['paperKind']
  readonly words: string
  /** First part of the names of its files. */
  readonly fileStem: string
  /** Every page that there is; none when the layout has nothing for it. */
  readonly pages: (request: PaperRequest) => readonly SheetPage[]
  /** What of it is cut or drawn in true size, for files that a machine reads; left out where it is paper only. */
  readonly figures?: (request: PaperRequest) => readonly FlatFigure[]
  /** The same in true size for a general drawing program, where there is one. */
  readonly drawing?: (request: PaperRequest) => GeneralDrawing
  /** What it says as tables for a spreadsheet; left out where it holds none. */
  readonly tables?: readonly TableKind[]
  /** What to do so that there is something to print; shown while there are no pages. */
  readonly whenEmpty: string
  /** Nobody misses it where there is nothing for it: the hand-over folder does not say that it is not there. */
  readonly isOptional?: true
}

/** In the order of the job: from drawing to steel and back. */
export const PAPER_KINDS: readonly PaperKind[] = [
  {
    id: 'mount-sheet',
    words: 'Mount sheet',
    fileStem: 'mount-sheet',
    pages: ({ layout, evaluation, paperName, hasRearView = true }) =>
      sheetPages(layout, evaluation, paperName, { hasRearView }),
    drawing: ({ layout, evaluation }) => generalDrawing(layout, evaluation),
    tables: MOUNT_TABLES,
    whenEmpty: '',
  },
  {
    id: 'templates',
    words: 'Templates',
    fileStem: 'templates',
    pages: ({ layout, evaluation, paperName }) => templatePages(layout, evaluation, paperName),
    figures: ({ layout, evaluation }) => templateFigures(layout, evaluation),
    whenEmpty: 'There is nothing to cut or to mark yet. Add anchors under “Anchors” beside the drawing.',
  },
  {
    id: 'as-welded',
    words: 'As-welded record',
    fileStem: 'as-welded',
    pages: ({ layout, evaluation, welded, paperName }) =>
      isNothingMeasured(layout)
        ? measuringFormPages(layout, paperName)
        : asWeldedPages(layout, evaluation, welded ?? weldedPapers(layout), paperName),
    tables: WELDED_TABLES,
    whenEmpty: 'There is no anchor to measure yet. Add anchors beside the drawing.',
  },
  {
    id: 'belts',
    words: 'Belt record',
    fileStem: 'belt-record',
    pages: ({ layout, today, paperName }) => beltRecordPages(layout, today, paperName),
    whenEmpty: '',
  },
  {
    id: 'comparison',
    words: 'Comparison',
    fileStem: 'comparison',
    pages: ({ layout, today, paperName }) => comparisonPages(layout, today, paperName),
    whenEmpty: 'This car has only one variant. Make another on the screen “Compare”.',
    isOptional: true,
  },
]
