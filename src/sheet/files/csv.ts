import { printable } from '../page/textWidth'

/** A number is written bare, a text quoted, null as an empty cell. */
export type CsvCell = string | number | null

export interface CsvTable {
  /** Names with their unit, in the first row. */
  readonly columns: readonly string[]
  /** As long as `columns`. */
  readonly rows: readonly (readonly CsvCell[])[]
}

/**
 * Tells spreadsheets that the file is UTF-8; without it the common ones take it for the machine's old code page and spoil every accent.
 * RFC 4180 is silent about it.
 */
const BYTE_ORDER_MARK = '\uFEFF'

/** Finer than anything is measured: 0.1 µm, and as many digits for inches and degrees. */
const DECIMALS = 6

/**
 * A table as a file of comma-separated values. Source: RFC 4180 (rows end with CRLF, the first is the header, every row has as many
 * fields, quotes are doubled). Every text is quoted; a line break inside one becomes a space, so that a row is a line.
 */
export const csvText = ({ columns, rows }: CsvTable): string => {
  const line = (cells: readonly CsvCell[]): string => {
    if (cells.length !== columns.length)
      throw new Error(`a row of ${cells.length} cells in a table of ${columns.length} columns`)
    return `${cells.map(cellText).join(',')}\r\n`
  }
  return BYTE_ORDER_MARK + [columns, ...rows].map(line).join('')
}

const cellText = (cell: CsvCell): string => {
  if (cell === null) return ''
  if (typeof cell === 'number') return numberText(cell)
  return `"${harmless(cell).replaceAll('"', '""')}"`
}

/** A point for the decimal sign, an ASCII minus, no exponent, never a minus zero. */
const numberText = (value: number): string => {
  if (!Number.isFinite(value)) throw new Error(`a table cannot hold ${value}`)
  const text = value.toFixed(DECIMALS).replace(/\.?0+$/, '')
  return text === '-0' ? '0' : text
}

/**
 * Where a formula could begin: at the start of a cell, or behind what a spreadsheet set to another separator takes for the end of one;
 * blanks, quotes and letters that are not seen may stand before it. Full-width signs are taken for plain ones by some.
 * Source: OWASP, "CSV Injection" (=, +, -, @, tab, carriage return, line feed and full-width signs; separators and quotes inside a
 * text; the remedy is a single quote before it, and quoting).
 */
const FORMULA_START = /(^|[,;|])([\s\p{Cf}"'`]*)(?=[=+\-@＝＋－＠])/gu

/**
 * A text that no spreadsheet takes for a formula: a single quote stands before every sign that could open one. Typed negative numbers
 * are text too and get it; computed ones are numbers and stay numbers, for a bare -12.5 can be nothing else.
 */
export const harmless = (text: string): string =>
  printable(text)
    .replaceAll(/[\n\u0085\u2028\u2029]+/g, ' ')
    .replaceAll(FORMULA_START, "$1$2'")
