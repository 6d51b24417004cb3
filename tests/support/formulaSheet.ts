import { HyperFormula, type RawCellContent } from 'hyperformula'

/** One named column of a table; `formula` may use {other} for the same row, [input] for a fixed cell. */
interface Column {
  readonly name: string
  readonly content: (row: number) => RawCellContent
}

const INPUTS = 'Inputs'
const ROWS = 'Rows'

const columnLetters = (index: number): string => {
  const letter = String.fromCharCode(65 + (index % 26))
  return index < 26 ? letter : columnLetters(Math.floor(index / 26) - 1) + letter
}

/**
 * A table in a general-purpose spreadsheet engine: fixed inputs on one sheet, and on another one row for each case with the same
 * named formulas in every row.
 */
export class FormulaSheet {
  readonly #inputs = new Map<string, number>()
  readonly #columns = new Map<string, Column>()
  #engine: HyperFormula | null = null

  input(name: string, value: number): void {
    if (!this.#inputs.has(name)) this.#inputs.set(name, value)
  }

  /** A column of given numbers, one for each row. */
  given(name: string, values: readonly number[]): void {
    this.#add({ name, content: (row) => values[row] ?? 0 })
  }

  column(name: string, formula: string): void {
    this.#add({ name, content: (row) => `=${this.#resolved(formula, row)}` })
  }

  build(rowCount: number): void {
    const inputRows = [...this.#inputs.values()].map((value) => [value])
    const columns = [...this.#columns.values()]
    const rows = Array.from({ length: rowCount }, (_, row) => columns.map(({ content }) => content(row)))
    this.#engine = HyperFormula.buildFromSheets(
      { [INPUTS]: inputRows, [ROWS]: rows },
      { licenseKey: 'gpl-v3' },
    )
  }

  /** Types a new number into a fixed cell; everything that depends on it is computed again. */
  setInput(name: string, value: number): void {
    const engine = this.#built()
    const row = [...this.#inputs.keys()].indexOf(name)
    engine.setCellContents({ sheet: engine.getSheetId(INPUTS) ?? 0, row, col: 0 }, value)
  }

  value(name: string, row: number): number {
    const engine = this.#built()
    const col = this.#index(name)
    const value = engine.getCellValue({ sheet: engine.getSheetId(ROWS) ?? 0, row, col })
    if (typeof value !== 'number') throw new Error(`${name} in row ${row} is ${JSON.stringify(value)}`)
    return value
  }

  #add(column: Column): void {
    if (this.#columns.has(column.name)) throw new Error(`column ${column.name} is there twice`)
    this.#columns.set(column.name, column)
  }

  #index(name: string): number {
    const index = [...this.#columns.keys()].indexOf(name)
    if (index < 0) throw new Error(`there is no column ${name}`)
    return index
  }

  #resolved(formula: string, row: number): string {
    return formula
      .replace(/\{([\w-]+)\}/g, (_, name: string) => `${columnLetters(this.#index(name))}${row + 1}`)
      .replace(/\[([\w-]+)\]/g, (_, name: string) => {
        const index = [...this.#inputs.keys()].indexOf(name)
        if (index < 0) throw new Error(`there is no input ${name}`)
        return `${INPUTS}!$A$${index + 1}`
      })
  }

  #built(): HyperFormula {
    if (this.#engine === null) throw new Error('build the sheet first')
    return this.#engine
  }
}
