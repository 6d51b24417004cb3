import type { FlowRow } from './flow'
import { lineItem, textItem, type Ink, type PagePoint, type SheetItem } from './item'
import { cappedLines, textWidthMm, type TextWeight } from './textWidth'

export interface TextStyle {
  readonly sizeMm: number
  readonly weight: TextWeight
  readonly ink: Ink
}

export interface CellText {
  readonly text: string
  readonly style: TextStyle
  /** Lines it may take before it ends in …; the cell grows with them. */
  readonly mostLines: number
}

export interface Column {
  readonly widthMm: number
  readonly align: 'left' | 'right' | 'centre'
}

/** Distance of base lines as a share of the size. Our judgement: set as tight as stays readable at arm's length. */
const LINE_SPACING = 1.17
/** Share of the line above the base line, so that capitals stand in the middle of their line. */
const BASE_LINE = 0.92

const lineHeightMm = (style: TextStyle): number => style.sizeMm * LINE_SPACING
const baseLineMm = (style: TextStyle): number => style.sizeMm * BASE_LINE

export const CELL_SIDE_MM = 0.9
const CELL_TOP_MM = 0.45

/** The least column width at which no line wraps, or at which no single line is cut and the others wrap between words only. */
export const neededWidthMm = (texts: readonly CellText[], unbroken: 'whole-lines' | 'words'): number =>
  texts.reduce((widestMm, { text, style, mostLines }) => {
    const pieces = mostLines === 1 || unbroken === 'whole-lines' ? [text] : text.split(' ')
    const wordMm = Math.max(0, ...pieces.map((piece) => textWidthMm(piece, style.sizeMm, style.weight)))
    return Math.max(widestMm, wordMm + 2 * CELL_SIDE_MM + ROUNDING_MM)
  }, 0)

/** A text exactly as wide as its column must not be cut for the last bit of a sum. */
const ROUNDING_MM = 0.001

interface RowOptions {
  readonly section: string
  readonly rule: 'none' | 'thin' | 'heavy'
  readonly keepWithNext?: boolean
  readonly shaded?: boolean
  /** `none`: lines of one text that follow one another. */
  readonly padding?: 'none' | 'usual'
}

/** One row of a table: its height follows from the text in it, and every line of every cell stays inside its column. */
export const tableRow = (
  columns: readonly Column[],
  cells: readonly (readonly CellText[])[],
  options: RowOptions,
): Omit<FlowRow, 'continuation'> => {
  const lines = columns.map((column, index) =>
    cellLines(cells[index] ?? [], column.widthMm - 2 * CELL_SIDE_MM),
  )
  const topMm = options.padding === 'none' ? 0 : CELL_TOP_MM
  const heightMm =
    2 * topMm +
    Math.max(0, ...lines.map((cell) => cell.reduce((sumMm, line) => sumMm + lineHeightMm(line.style), 0)))
  const widthMm = columns.reduce((sumMm, column) => sumMm + column.widthMm, 0)
  return {
    heightMm,
    keepWithNext: options.keepWithNext ?? false,
    section: options.section,
    draw: (at) => [
      ...(options.shaded === true ? [shade(at, widthMm, heightMm)] : []),
      ...columns.flatMap((column, index) =>
        cellItems(lines[index] ?? [], column, cellLeft(columns, index, at), topMm),
      ),
      ...rowRule(options.rule, at, widthMm, heightMm),
    ],
  }
}

interface SetLine {
  readonly text: string
  readonly style: TextStyle
}

const cellLines = (texts: readonly CellText[], widthMm: number): readonly SetLine[] =>
  texts.flatMap(({ text, style, mostLines }) =>
    text === ''
      ? []
      : cappedLines(text, widthMm, style.sizeMm, style.weight, mostLines).map((line) => ({
          text: line,
          style,
        })),
  )

const cellLeft = (columns: readonly Column[], index: number, at: PagePoint): PagePoint => ({
  xMm: at.xMm + columns.slice(0, index).reduce((sumMm, column) => sumMm + column.widthMm, 0),
  yMm: at.yMm,
})

const cellItems = (
  lines: readonly SetLine[],
  column: Column,
  at: PagePoint,
  padMm: number,
): readonly SheetItem[] => {
  const xMm =
    column.align === 'left'
      ? at.xMm + CELL_SIDE_MM
      : column.align === 'right'
        ? at.xMm + column.widthMm - CELL_SIDE_MM
        : at.xMm + column.widthMm / 2
  let topMm = at.yMm + padMm
  return lines.map(({ text, style }) => {
    const item = textItem({ xMm, yMm: topMm + baseLineMm(style) }, text, style.sizeMm, {
      weight: style.weight,
      ink: style.ink,
      align: column.align,
    })
    topMm += lineHeightMm(style)
    return item
  })
}

const shade = (at: PagePoint, widthMm: number, heightMm: number): SheetItem =>
  lineItem(
    [
      at,
      { xMm: at.xMm + widthMm, yMm: at.yMm },
      { xMm: at.xMm + widthMm, yMm: at.yMm + heightMm },
      { xMm: at.xMm, yMm: at.yMm + heightMm },
    ],
    { closed: true, fill: 'light', ink: 'none', widthMm: 0 },
  )

const rowRule = (
  rule: RowOptions['rule'],
  at: PagePoint,
  widthMm: number,
  heightMm: number,
): readonly SheetItem[] => {
  if (rule === 'none') return []
  const yMm = at.yMm + heightMm
  const ends = [
    { xMm: at.xMm, yMm },
    { xMm: at.xMm + widthMm, yMm },
  ]
  return [lineItem(ends, rule === 'heavy' ? { widthMm: 0.35 } : { widthMm: 0.12, ink: 'mid' })]
}
