import type { Layout, Place } from '../domain/layout/document/layout'
import type { Evaluation } from '../domain/layout/evaluate/evaluation'
import { placeName } from '../domain/layout/wording/names'
import { type AnchorRow, anchorRows } from '../domain/shop/anchorRows'
import { angleText } from '../domain/units/angle'
import { anchorCells, pointText } from './anchorCells'
import type { FlowRow } from './flow'
import { cell, type BareRow } from './section'
import { tableRow, type CellText, type Column } from './table'
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

const SECTION = 'Anchors'

interface TableSetting {
  readonly layout: Layout
  readonly widthMm: number
  readonly type: Typography
}

/** The table of every anchor, one group for each place, with its column heads repeated where it goes on. */
export const anchorTable = (places: readonly PlaceAnchors[], setting: TableSetting): readonly FlowRow[] => {
  const columns = tableColumns(setting.widthMm)
  const head = headRow(columns, setting)
  const again = [titleRow('Anchors (continued)', setting), head]
  const groups = places.flatMap(({ place, rows }) => {
    const group: FlowRow = { ...placeRow(place, '', setting), continuation: again }
    const groupAgain: FlowRow = { ...placeRow(place, ' (continued)', setting), continuation: [] }
    const body =
      rows.length === 0
        ? [noAnchorsRow(setting)]
        : rows.map((row) =>
            tableRow(columns, anchorCells(row, setting.layout, setting.type), {
              section: SECTION,
              rule: 'thin',
            }),
          )
    return [group, ...body.map((row) => ({ ...row, continuation: [...again, groupAgain] }))]
  })
  return [titleRow('Anchors', setting), head, ...groups]
}

const titleRow = (text: string, { widthMm, type }: TableSetting): FlowRow => ({
  ...tableRow([{ widthMm, align: 'left' }], [[cell(text, type.heading, 1)]], {
    section: SECTION,
    rule: 'heavy',
    keepWithNext: true,
  }),
  continuation: [],
})

/** Shares of the width; our judgement, tried on both papers and in both units. */
const tableColumns = (widthMm: number): readonly Column[] => {
  const figureMm = widthMm * 0.105
  const sideMm = widthMm * 0.115
  const planMm = widthMm * 0.1
  const planeMm = widthMm * 0.115
  const numberMm = 6
  const right = (columnMm: number): Column => ({ widthMm: columnMm, align: 'right' })
  return [
    { widthMm: numberMm, align: 'centre' },
    { widthMm: widthMm - numberMm - 3 * figureMm - sideMm - planMm - planeMm, align: 'left' },
    right(figureMm),
    right(figureMm),
    right(figureMm),
    right(sideMm),
    right(planMm),
    right(planeMm),
  ]
}

const headRow = (columns: readonly Column[], { layout, type }: TableSetting): FlowRow => {
  const head = (name: string, explained: string): readonly CellText[] => [
    cell(name, type.strong, 1),
    cell(explained, type.small, 2),
  ]
  const unit = layout.units.length
  const heads = [
    [],
    head('Strap and mount', 'numbered as on the drawing'),
    head(`x, ${unit}`, '+ rearward'),
    head(`y, ${unit}`, '+ to right'),
    head(`z, ${unit}`, '+ up'),
    head('Pull, side', 'from level'),
    head('Pull, plan', 'from centre-line'),
    head('Tab plane', 'turn and lean'),
  ]
  return {
    ...tableRow(columns, heads, { section: SECTION, rule: 'thin', keepWithNext: true }),
    continuation: [],
  }
}

const placeRow = (place: Place, suffix: string, { layout, widthMm, type }: TableSetting): BareRow => {
  const { hipPoint, reclineDeg } = place.seat
  const seat = `Seat as drawn: hip point ${pointText(hipPoint, layout.units.length)}; recline ${angleText(reclineDeg)}`
  return tableRow(
    [
      { widthMm: widthMm * 0.35, align: 'left' },
      { widthMm: widthMm * 0.65, align: 'right' },
    ],
    [[cell(`${placeName(place.id, layout)}${suffix}`, type.strong, 6)], [cell(seat, type.body, 2)]],
    { section: SECTION, rule: 'thin', keepWithNext: true, shaded: true },
  )
}

const noAnchorsRow = ({ widthMm, type }: TableSetting): BareRow =>
  tableRow([{ widthMm, align: 'left' }], [[cell('No anchors at this place.', type.body)]], {
    section: SECTION,
    rule: 'thin',
  })
