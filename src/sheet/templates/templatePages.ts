import type { Layout } from '../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../domain/layout/evaluate/evaluation'
import { flowed, type PlacedRow } from '../page/flow'
import { footLine } from '../page/footLine'
import type { Box } from '../page/item'
import { COLUMN_GAP_MM, columnFrames } from '../page/pageColumns'
import { PAPERS, type PaperName } from '../page/paper'
import type { SheetPage } from '../page/sheetPage'
import { typography, type Typography } from '../page/typography'
import { type FigurePage, figurePages } from './figurePages'
import { type ListedTemplate, listRows } from './listPage'
import { pageFrame } from './pageFrame'
import type { TemplateSet } from './template'
import { templateSet } from './templateSet'

/** The list is read at arm's length on the bench. Our judgement. */
const LIST_FACTOR = 1.2

/**
 * Every template of a layout in true size: a list with how to check the print, then the figures. No pages when there is neither a
 * template nor an anchor to say something of.
 */
export const templatePages = (
  layout: Layout,
  evaluation: CheckedEvaluation | null,
  paperName: PaperName,
): readonly SheetPage[] => {
  const set = templateSet(layout, evaluation)
  if (set.templates.length === 0 && set.without.length === 0) return []
  const paper = PAPERS[paperName]
  const type = typography(1)
  const frame = pageFrame(layout, paper, type)
  const figures = figurePages(set.templates, frame.room, type)
  const list = placedList(set, figures, frame.room, typography(LIST_FACTOR))
  const listCount = 1 + Math.max(0, ...list.map(({ pageIndex }) => pageIndex))
  const count = listCount + figures.length
  return Array.from({ length: count }, (_, index): SheetPage => {
    const figure = figures[index - listCount]
    const own =
      figure === undefined
        ? list.filter(({ pageIndex }) => pageIndex === index).flatMap(({ row, at }) => row.draw(at))
        : figure.items
    return {
      number: index + 1,
      of: count,
      widthMm: paper.widthMm,
      heightMm: paper.heightMm,
      title: pageTitle(figure, index + 1, count),
      items: [...frame.items, ...own, ...footLine(paper, index + 1, count)],
    }
  })
}

const pageTitle = (figure: FigurePage | undefined, number: number, count: number): string => {
  const names =
    figure?.templates.map((template) => template.figure.title).join('; ') ?? 'list and how to check'
  const part = figure?.part == null ? '' : `, ${figure.part}`
  return `Full-size templates, page ${number} of ${count}: ${names}${part}`
}

/** The list in its columns. Its page numbers depend on how many pages it needs itself, which they do not change. */
const placedList = (
  set: TemplateSet,
  figures: readonly FigurePage[],
  room: Box,
  type: Typography,
): readonly PlacedRow[] => {
  const columnMm = (room.rightMm - room.leftMm - COLUMN_GAP_MM) / 2
  const placed = (listCount: number): readonly PlacedRow[] =>
    flowed(listRows(set, listedOn(set, figures, listCount), columnMm, type), columnFrames([], room, columnMm))
      .placed
  return placed(1 + Math.max(0, ...placed(1).map(({ pageIndex }) => pageIndex)))
}

const listedOn = (
  set: TemplateSet,
  figures: readonly FigurePage[],
  listCount: number,
): readonly ListedTemplate[] =>
  set.templates.map((template) => ({
    template,
    pages: figures.flatMap(({ templates }, index) =>
      templates.includes(template) ? [listCount + index + 1] : [],
    ),
  }))
