import type { FlowRow } from './flow'
import { CELL_SIDE_MM, tableRow, type CellText, type Column, type TextStyle } from './table'
import type { Typography } from './typography'
import { wrappedLines } from './textWidth'

export type BareRow = Omit<FlowRow, 'continuation'>

/** A text as one cell; lines beyond `mostLines` are left out and marked by …. */
export const cell = (text: string, style: TextStyle, mostLines = 3): CellText => ({ text, style, mostLines })

/** Space between a heading's rule and the text under it. */
const BELOW_RULE_MM = 0.7

/** A heading over a heavy rule; never the last strip of a frame. */
export const headingRow = (text: string, section: string, widthMm: number, type: Typography): FlowRow => {
  const row = tableRow([{ widthMm, align: 'left' }], [[cell(text, type.heading, 8)]], {
    section,
    rule: 'heavy',
    keepWithNext: true,
  })
  return { ...row, heightMm: row.heightMm + BELOW_RULE_MM, continuation: [] }
}

/** A titled list of strips; each strip brings the title along, marked as continued, when it opens a new frame. */
export const sectionRows = (
  title: string,
  widthMm: number,
  type: Typography,
  rows: readonly BareRow[],
): readonly FlowRow[] => {
  const titleRow = (text: string): FlowRow => headingRow(text, title, widthMm, type)
  const continued = [titleRow(`${title} (continued)`)]
  return rows.length === 0
    ? []
    : [titleRow(title), ...rows.map((row) => ({ ...row, continuation: continued }))]
}

/** A text of any length as one strip for each line, so that a frame's end can fall between any two lines. */
export const textRows = (
  text: string,
  widthMm: number,
  style: TextStyle,
  section: string,
): readonly BareRow[] => {
  const columns: readonly Column[] = [{ widthMm, align: 'left' }]
  return wrappedLines(text, widthMm - 2 * CELL_SIDE_MM, style.sizeMm, style.weight).map((line) => ({
    ...tableRow(columns, [[cell(line, style, 1)]], { section, rule: 'none', padding: 'none' }),
  }))
}

/** Empty strip that sets two sections apart. */
export const gapRow = (heightMm: number, section: string): FlowRow => ({
  heightMm,
  keepWithNext: false,
  section,
  continuation: [],
  draw: () => [],
})

/**
 * Strips of one entry of a list, closed by a thin rule. A frame may end between two lines of it, but not after the first line nor
 * before the rule.
 */
export const entryRows = (
  lines: readonly BareRow[],
  widthMm: number,
  section: string,
): readonly BareRow[] => [
  ...lines.map((row, index) =>
    index === 0 || index === lines.length - 1 ? { ...row, keepWithNext: true } : row,
  ),
  tableRow([{ widthMm, align: 'left' }], [[]], { section, rule: 'thin' }),
]

/** Higher than this a text is parted after all: it must fit a column below its heading. Our judgement. */
const MOST_TOGETHER_MM = 150

/** Strips that stay in one frame as far as one can hold them. */
export const keptTogether = (rows: readonly BareRow[]): readonly BareRow[] => {
  const heightMm = rows.reduce((sumMm, row) => sumMm + row.heightMm, 0)
  return heightMm > MOST_TOGETHER_MM
    ? rows
    : rows.map((row, index) => (index + 1 < rows.length ? { ...row, keepWithNext: true } : row))
}
