import type { Layout, Place } from '../domain/layout/document/layout'
import type { Evaluation } from '../domain/layout/evaluate/evaluation'
import { placeName } from '../domain/layout/wording/names'
import { type AnchorRow, anchorRows } from '../domain/shop/anchorRows'
import { angleText } from '../domain/units/angle'
import { anchorCells, pointText } from './anchorCells'
import type { FlowRow } from './flow'
import { cell, gapRow, headingRow, textRows, type BareRow } from './section'
import { neededWidthMm, tableRow, type CellText, type Column } from './table'
import type { Typography } from './typography'

/** The anchors of one place as the sheet lists and numbers them. */
export interface PlaceAnchors {
  readonly place: Place
  readonly rows: readonly AnchorRow[]
}

/** All anchors, numbered through the whole layout in the order of the table. */
export const numberedAnchors = (layout: Layout, evaluation: Evaluation): readonly PlaceAnchors[] => {
  let firstItemNumber = 1
  return layout.places.map((place) => {
    const evaluated = evaluation.places.find((each) => each.placeId === place.id)
    const rows = anchorRows({
      anchors: place.anchors,
      tubes: layout.tubes,
      pathsBySitting: (evaluated?.sittings ?? []).map((sitting) => sitting.paths),
      firstItemNumber,
    })
    firstItemNumber += rows.length
    return { place, rows }
  })
}

export const ANCHOR_SECTION = 'Anchors'

const EXPLAINED_SECTION = 'How to read the anchors'

const EXPLAINED = [
  'Right and left are the occupant’s. Distances are from the datum to the middle of a tab’s hole in the middle of its plate, or to the bar’s centre line in the middle of a wrapped strap; “from P1” is along the tube’s centre line.',
  'Pull is the way the strap leaves the anchor in the seat as drawn. Side: seen squarely from the side; below it the range over all sittings where it changes. String: what an angle finder reads on a string stretched along the strap. Plan and tab turn: seen from above, from fore and aft.',
].join(' ')

interface TableSetting {
  readonly layout: Layout
  readonly widthMm: number
  readonly type: Typography
}

export interface AnchorTable {
  readonly rows: readonly FlowRow[]
  /** The numbers leave too little for the words beside them. */
  readonly isCramped: boolean
}

/** The table of every anchor, one group for each place, with its column heads repeated where it goes on. */
export const anchorTable = (places: readonly PlaceAnchors[], setting: TableSetting): AnchorTable => {
  const { layout, widthMm, type } = setting
  const cellsOf = places.map(({ rows }) => rows.map((row) => anchorCells(row, layout, type)))
  const columns = tableColumns([headCells(setting), ...cellsOf.flat()], setting)
  const head = headRow(columns, setting)
  const again = [titleRow('Anchors (continued)', setting), head]
  const groups = places.flatMap(({ place }, index) => {
    const group: FlowRow = { ...placeRow(place, '', setting), continuation: again }
    const groupAgain: FlowRow = { ...placeRow(place, ' (continued)', setting), continuation: [] }
    const cells = cellsOf[index] ?? []
    const body =
      cells.length === 0
        ? [noAnchorsRow(setting)]
        : cells.map((row) => tableRow(columns, row, { section: ANCHOR_SECTION, rule: 'thin' }))
    return [group, ...body.map((row) => ({ ...row, continuation: [...again, groupAgain] }))]
  })
  const explained = textRows(EXPLAINED, widthMm, type.small, EXPLAINED_SECTION).map((row) => ({
    ...row,
    continuation: [],
  }))
  return {
    rows: [titleRow('Anchors', setting), head, ...groups, gapRow(0.7, EXPLAINED_SECTION), ...explained],
    isCramped: isTooNarrow(columns, type),
  }
}

const titleRow = (text: string, { widthMm, type }: TableSetting): FlowRow =>
  headingRow(text, ANCHOR_SECTION, widthMm, type)

const WORDS_COLUMN = 1
/** Narrower than about thirty letters the words make the rows high. Our judgement. */
const WORDS_MIN_SIZES = 15

/**
 * Every column as wide as its widest line, or where that leaves too little for the words beside them as its widest number or
 * word, so that no number is ever cut; the words get what is left.
 */
const tableColumns = (
  rows: readonly (readonly (readonly CellText[])[])[],
  { widthMm, type }: TableSetting,
): readonly Column[] => {
  const lines = columnsFor(rows, widthMm, 'whole-lines')
  return isTooNarrow(lines, type) ? columnsFor(rows, widthMm, 'words') : lines
}

const isTooNarrow = (columns: readonly Column[], type: Typography): boolean =>
  (columns[WORDS_COLUMN]?.widthMm ?? 0) < WORDS_MIN_SIZES * type.small.sizeMm

const columnsFor = (
  rows: readonly (readonly (readonly CellText[])[])[],
  widthMm: number,
  unbroken: 'whole-lines' | 'words',
): readonly Column[] => {
  const needed = Array.from(rows[0] ?? [], (_, index) =>
    Math.max(0, ...rows.map((cells) => neededWidthMm(cells[index] ?? [], unbroken))),
  )
  const numbersMm = needed.reduce(
    (sumMm, columnMm, index) => sumMm + (index === WORDS_COLUMN ? 0 : columnMm),
    0,
  )
  return needed.map((columnMm, index): Column => {
    if (index === WORDS_COLUMN) return { widthMm: widthMm - numbersMm, align: 'left' }
    return { widthMm: columnMm, align: index === 0 ? 'centre' : 'right' }
  })
}

const headCells = ({ layout, type }: TableSetting): readonly (readonly CellText[])[] => {
  const head = (name: string, explained: string): readonly CellText[] => [
    cell(name, type.strong, 1),
    cell(explained, type.small, 2),
  ]
  const unit = layout.units.length
  return [
    [],
    head('Strap and mount', 'numbered as on the drawing'),
    head(`x, ${unit}`, '+ rearward'),
    head(`y, ${unit}`, '+ to right'),
    head(`z, ${unit}`, '+ up'),
    head('Pull, side', 'from level'),
    head('String', 'from level'),
    head('Pull, plan', 'from straight'),
    head('Tab turn', 'in plan'),
    head('Tab lean', 'from upright'),
  ]
}

const headRow = (columns: readonly Column[], setting: TableSetting): FlowRow => ({
  ...tableRow(columns, headCells(setting), { section: ANCHOR_SECTION, rule: 'thin', keepWithNext: true }),
  continuation: [],
})

const placeRow = (place: Place, suffix: string, { layout, widthMm, type }: TableSetting): BareRow => {
  const { hipPoint, reclineDeg } = place.seat
  const seat = `Seat as drawn: hip point ${pointText(hipPoint, layout.units.length)}; recline ${angleText(reclineDeg)}`
  return tableRow(
    [
      { widthMm: widthMm * 0.35, align: 'left' },
      { widthMm: widthMm * 0.65, align: 'right' },
    ],
    [[cell(`${placeName(place.id, layout)}${suffix}`, type.strong, 6)], [cell(seat, type.body, 2)]],
    { section: ANCHOR_SECTION, rule: 'thin', keepWithNext: true, shaded: true },
  )
}

const noAnchorsRow = ({ widthMm, type }: TableSetting): BareRow =>
  tableRow([{ widthMm, align: 'left' }], [[cell('No anchors at this place.', type.body)]], {
    section: ANCHOR_SECTION,
    rule: 'thin',
  })
