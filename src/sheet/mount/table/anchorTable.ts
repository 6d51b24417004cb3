import type { Layout, Place } from '../../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../../domain/layout/evaluate/evaluation'
import { placeName } from '../../../domain/layout/wording/names'
import { type AnchorRow, anchorRows } from '../../../domain/shop/anchorRows'
import { anchorForm } from '../../../domain/straps/anchor'
import { areShoulderStrapsJoined } from '../../../domain/straps/strap'
import { angleText } from '../../../domain/units/angle'
import {
  anchorCells,
  isUpright,
  pointText,
  type RangeLine,
  type SharedWords,
  sharedWords,
} from './anchorCells'
import type { FlowRow } from '../../page/flow'
import { cell, gapRow, headingRow, textRows, type BareRow } from '../../page/section'
import { neededWidthMm, tableRow, type CellText, type Column } from '../../page/table'
import type { Typography } from '../../page/typography'

/** The anchors of one place as the sheet lists and numbers them. */
export interface PlaceAnchors {
  readonly place: Place
  readonly rows: readonly AnchorRow[]
}

/** All anchors, numbered through the whole layout in the order of the table. */
export const numberedAnchors = (layout: Layout, evaluation: CheckedEvaluation): readonly PlaceAnchors[] => {
  let firstItemNumber = 1
  return layout.places.map((place) => {
    const evaluated = evaluation.places.find((each) => each.placeId === place.id)
    const rows = anchorRows({
      anchors: place.anchors,
      tubes: layout.tubes,
      pathsBySitting: (evaluated?.sittings ?? []).map((sitting) => sitting.paths),
      areShoulderStrapsJoined: areShoulderStrapsJoined(place.belt),
      firstItemNumber,
    })
    firstItemNumber += rows.length
    return { place, rows }
  })
}

export const ANCHOR_SECTION = 'Anchors'

export const EXPLAINED_SECTION = 'How to read the anchors'

/** How to read the table; other ways of fixing a strap than tab and wrap only where the car has them. */
const explainedText = (rows: readonly AnchorRow[]): string => {
  const forms = rows.map(({ anchor }) => anchorForm(anchor.mount))
  const others = [
    ...(forms.includes('clevis') ? ['of a clevis halfway between its plates'] : []),
    ...(forms.includes('insert') ? ['of an insert in the middle of the fitting on it'] : []),
    ...(forms.includes('eye')
      ? ['of an eye bolt to the middle of its eye, its turn that of the shank from rearward']
      : []),
  ]
  const [first, ...rest] = EXPLAINED
  const said = others.length === 0 ? [] : [`In the same way ${others.join(', ')}.`]
  return [first, ...said, ...rest].join(' ')
}

const EXPLAINED = [
  'Right and left are the occupant’s. x, y, z: from the datum to the middle of a tab’s hole in the middle of its plate, or to the bar’s centre line in the middle of a wrapped strap; “from P1”: along the tube’s centre line.',
  'Pull: the way the strap leaves the anchor in the seat as drawn. Side: seen squarely from the side, below it the range over all sittings. String: what an angle finder reads on a string along the strap. Plan, tab turn: seen from above, from fore and aft.',
] as const

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
  const areTabsUpright = places.every(({ rows }) => rows.every(isUpright))
  const sharedOf = places.map(({ rows }) => sharedWords(rows, areTabsUpright, layout.units.length))
  const headings = headCells(setting, areTabsUpright)
  const { cellsOf, columns } = lowestBody(headings, setting, (ranges) =>
    places.map(({ rows }, index) =>
      rows.map((row) => anchorCells(row, layout, type, sharedOf[index] ?? NOTHING_SHARED, ranges)),
    ),
  )
  const saidOf = places.map(({ rows }, index) => sharedText(rows, sharedOf[index] ?? NOTHING_SHARED))
  const forAll = new Set(saidOf).size === 1 ? (saidOf[0] ?? '') : ''
  const head = [headRow(columns, headings), ...(forAll === '' ? [] : [forAllRow(forAll, setting)])]
  const again = [titleRow('Anchors (continued)', setting), ...head]
  const groups = places.flatMap(({ place }, index) => {
    const said = forAll === '' ? (saidOf[index] ?? '') : ''
    const group: FlowRow = { ...placeRow(place, '', said, setting), continuation: again }
    const groupAgain: FlowRow = { ...placeRow(place, ' (continued)', said, setting), continuation: [] }
    const cells = cellsOf[index] ?? []
    const body =
      cells.length === 0
        ? [noAnchorsRow(setting)]
        : cells.map((row) => tableRow(columns, row, { section: ANCHOR_SECTION, rule: 'thin' }))
    return [group, ...body.map((row) => ({ ...row, continuation: [...again, groupAgain] }))]
  })
  const allRows = places.flatMap(({ rows }) => rows)
  const explained = textRows(explainedText(allRows), widthMm, type.small, EXPLAINED_SECTION).map(
    (row, index, lines) => ({
      ...row,
      keepWithNext: index + 1 < lines.length,
      continuation: [],
    }),
  )
  return {
    rows: [titleRow('Anchors', setting), ...head, ...groups, gapRow(0.7, EXPLAINED_SECTION), ...explained],
    isCramped: isTooNarrow(columns, type),
  }
}

const NOTHING_SHARED: SharedWords = { tabs: null, wraps: null, eyes: null, areTabsUpright: false }

/** "All tabs: upright (lean 0°), plate 4.8 mm … All wraps: strap over the top …" */
const sharedText = (
  rows: readonly AnchorRow[],
  { tabs, wraps, eyes, areTabsUpright }: SharedWords,
): string => {
  const hasTabs = rows.some(({ anchor }) => anchor.mount.kind === 'tab')
  const ofTabs = [
    ...(areTabsUpright && hasTabs ? ['upright (lean 0°)'] : []),
    ...(tabs === null ? [] : [tabs]),
  ]
  return [
    ...(ofTabs.length === 0 ? [] : [`All tabs: ${ofTabs.join(', ')}.`]),
    ...(wraps === null ? [] : [`All wraps: ${wraps}.`]),
    ...(eyes === null ? [] : [`All eye bolts: ${eyes}.`]),
  ].join(' ')
}

/** What holds for every place, once under the column heads. */
const forAllRow = (text: string, { widthMm, type }: TableSetting): FlowRow => ({
  ...tableRow([{ widthMm, align: 'left' }], [[cell(text, type.small, 6)]], {
    section: ANCHOR_SECTION,
    rule: 'thin',
    keepWithNext: true,
  }),
  continuation: [],
})

const titleRow = (text: string, { widthMm, type }: TableSetting): FlowRow =>
  headingRow(text, ANCHOR_SECTION, widthMm, type)

const WORDS_COLUMN = 1
/** Narrower than about thirty letters the words make the rows high. Our judgement. */
const WORDS_MIN_SIZES = 15

type Cells = readonly (readonly CellText[])[]

interface TableBody {
  readonly cellsOf: readonly (readonly Cells[])[]
  readonly columns: readonly Column[]
}

/**
 * Every column as wide as its widest line, the range over the sittings beside the direction words or below them, whichever makes
 * the lower table; where both leave too little for the words beside the numbers, as wide as the widest number or word. No number
 * is ever cut; the words get what is left.
 */
const lowestBody = (
  headings: Cells,
  { widthMm, type }: TableSetting,
  cellsWith: (ranges: RangeLine) => TableBody['cellsOf'],
): TableBody => {
  const whole = (['same-line', 'own-line'] as const)
    .map((ranges): TableBody => {
      const cellsOf = cellsWith(ranges)
      return { cellsOf, columns: columnsFor([headings, ...cellsOf.flat()], widthMm, 'whole-lines') }
    })
    .filter(({ columns }) => !isTooNarrow(columns, type))
  const heightMm = ({ cellsOf, columns }: TableBody): number =>
    cellsOf
      .flat()
      .reduce((sumMm, row) => sumMm + tableRow(columns, row, { section: '', rule: 'none' }).heightMm, 0)
  const [lowest] = whole.toSorted((a, b) => heightMm(a) - heightMm(b))
  if (lowest !== undefined) return lowest
  const cellsOf = cellsWith('own-line')
  return { cellsOf, columns: columnsFor([headings, ...cellsOf.flat()], widthMm, 'words') }
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

const headCells = (
  { layout, type }: TableSetting,
  areTabsUpright: boolean,
): readonly (readonly CellText[])[] => {
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
    ...(areTabsUpright ? [] : [head('Tab lean', 'from upright')]),
  ]
}

const headRow = (columns: readonly Column[], cells: readonly (readonly CellText[])[]): FlowRow => ({
  ...tableRow(columns, cells, { section: ANCHOR_SECTION, rule: 'thin', keepWithNext: true }),
  continuation: [],
})

const placeRow = (
  place: Place,
  suffix: string,
  said: string,
  { layout, widthMm, type }: TableSetting,
): BareRow => {
  const { hipPoint, reclineDeg } = place.seat
  const seat = `Seat as drawn: hip point ${pointText(hipPoint, layout.units.length)}; recline ${angleText(reclineDeg)}`
  return tableRow(
    [
      { widthMm: widthMm * 0.25, align: 'left' },
      { widthMm: widthMm * 0.75, align: 'right' },
    ],
    [
      [cell(`${placeName(place.id, layout)}${suffix}`, type.strong, 8)],
      [cell(seat, type.body, 2), cell(said, type.small, 6)],
    ],
    { section: ANCHOR_SECTION, rule: 'thin', keepWithNext: true, shaded: true },
  )
}

const noAnchorsRow = ({ widthMm, type }: TableSetting): BareRow =>
  tableRow([{ widthMm, align: 'left' }], [[cell('No anchors at this place.', type.body)]], {
    section: ANCHOR_SECTION,
    rule: 'thin',
  })
