import type { PointMm } from '../../../domain/geometry/point'
import { CAUTIONS } from '../../../domain/layout/wording/cautions'
import { lengthWithUnit, MM_PER_INCH } from '../../../domain/units/length'
import type { CsvCell, CsvTable } from '../csv'

/** One column and how its cell is made from a row's subject. */
export interface ColumnOf<Row> {
  readonly name: string
  readonly cell: (row: Row) => CsvCell
}

export const column = <Row>(name: string, cell: (row: Row) => CsvCell): readonly ColumnOf<Row>[] => [
  { name, cell },
]

/**
 * A length in three columns, empty where there is none: mm, decimal inches (exactly mm ÷ 25.4), and the nearest sixteenth as a tape has
 * it. The last says its unit in every cell: a bare 5/16 is the sixteenth of May to a spreadsheet.
 */
export const lengthColumns = <Row>(
  name: string,
  lengthMm: (row: Row) => number | null,
): readonly ColumnOf<Row>[] => {
  const orEmpty = (make: (mm: number) => CsvCell) => (row: Row) => {
    const mm = lengthMm(row)
    return mm === null ? null : make(mm)
  }
  return [
    { name: `${name} (mm)`, cell: orEmpty((mm) => mm) },
    { name: `${name} (in)`, cell: orEmpty((mm) => mm / MM_PER_INCH) },
    { name: `${name} (in to 1/16)`, cell: orEmpty((mm) => lengthWithUnit(mm, 'in')) },
  ]
}

/** A position from the datum: x rearward, y to the occupant's right, z up. */
export const pointColumns = <Row>(
  prefix: string,
  pointOf: (row: Row) => PointMm | null,
): readonly ColumnOf<Row>[] =>
  (
    [
      ['x', 'xMm'],
      ['y', 'yMm'],
      ['z', 'zMm'],
    ] as const
  ).flatMap(([axis, field]) => lengthColumns(`${prefix}${axis}`, (row: Row) => pointOf(row)?.[field] ?? null))

/**
 * The table with the caution as its last column in every row: a line of its own would be sorted into the data or read as an anchor,
 * and a table that was filtered, sorted or cut in two still has it.
 */
export const tableOf = <Row>(columns: readonly ColumnOf<Row>[], rows: readonly Row[]): CsvTable => ({
  columns: [...columns.map(({ name }) => name), 'caution'],
  rows: rows.map((row) => [...columns.map(({ cell }) => cell(row)), CAUTIONS[0] ?? '']),
})
