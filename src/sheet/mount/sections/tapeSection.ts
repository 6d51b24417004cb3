import { pointDifference } from '../../../domain/geometry/point'
import type { Layout } from '../../../domain/layout/document/layout'
import { anchorName, placeName } from '../../../domain/layout/wording/names'
import { tapePlaceName, tapeTableText, toldText } from '../../../domain/layout/wording/tapeWords'
import { capitalised } from '../../../domain/layout/wording/words'
import type { AnchorRow } from '../../../domain/shop/anchorRows'
import type { AnchorChecks, AnchorRef, TapeCheckTable } from '../../../domain/shop/tape/tapeChecks'
import { lengthText, lengthWithUnit } from '../../../domain/units/length'
import { tenthsText } from '../../../domain/units/numberText'
import type { FlowRow } from '../../page/flow'
import { cell, keptTogether, sectionRows, textRows, type BareRow } from '../../page/section'
import { type CellText, type Column, neededWidthMm, tableRow, type TextStyle } from '../../page/table'
import { bothUnits, otherUnit, pointText } from '../table/anchorCells'
import type { PlaceAnchors } from '../table/anchorTable'
import type { Setting } from './partSections'

const SECTION = 'Tape check'

/** Straight distances by which a tape alone shows whether every anchor is where the plan has it. Nothing for a layout without anchors. */
export const tapeSection = (
  table: TapeCheckTable,
  places: readonly PlaceAnchors[],
  setting: Setting,
): readonly FlowRow[] => {
  const { layout, widthMm, type } = setting
  if (table.rows.length === 0) return []
  const words = (text: string): readonly BareRow[] =>
    keptTogether(textRows(text, widthMm, type.small, SECTION))
  return sectionRows(SECTION, widthMm, type, [
    ...words(`${tapeTableText(table)} ${HOW_TO_HOLD}`),
    ...pointRows(table, setting),
    ...titledPairs('Marks first: from letter to letter', placePairs(table), setting),
    ...distanceRows(table, places, setting),
    ...titledPairs('Anchor to anchor, numbers as on the drawing', anchorPairs(table, places), setting),
    ...words(whenOff(layout)),
  ])
}

const HOW_TO_HOLD =
  'To a hole: a straight pin or the bolt through it, read at the middle of the pin in the middle of the plate; where only the near side of a bolt can be reached add half its diameter, at its far side take half off. To an eye: its middle. To a wrap: the punch mark on the outside of the bar in the middle of the webbing. A hook that is worn does no harm when the tape is held at a whole mark and that is taken off.'

const whenOff = ({ tolerance, units }: Layout): string => {
  const unit = units.length
  const least = tolerance === undefined ? null : Math.min(tolerance.xMm, tolerance.yMm, tolerance.zMm)
  const limit =
    least === null
      ? `2 mm (${lengthWithUnit(2, 'in')}; nobody has typed a tolerance)`
      : `the tolerance, ${bothUnits(least, unit)}`
  return `When a distance is off by more than ${limit}: measure from letter to letter first, a mark may be in the wrong place. Letters right and one distance off: read it again. Two or more off: the anchor is not where the plan has it; move it until all fit, and only then weld it out.`
}

/** The other unit in small below a number, as in the anchor table. */
const bothLines = (lengthMm: number, before: string, style: TextStyle, { layout, type }: Setting) => {
  const unit = layout.units.length
  return [
    cell(`${before}${lengthText(lengthMm, unit)}`, style, 1),
    cell(lengthWithUnit(lengthMm, otherUnit(unit)), type.small, 1),
  ]
}

const POINT_LETTER_MM = 6.5

/** The lettered places with where they are from the datum. */
const pointRows = (table: TapeCheckTable, setting: Setting): readonly BareRow[] => {
  const { layout, widthMm, type } = setting
  const unit = layout.units.length
  const cells = table.places.map((place) => [
    [cell(place.letter, type.figure, 1)],
    [cell(tapePlaceName(place, layout), type.body, 8)],
    ...[place.point.xMm, place.point.yMm, place.point.zMm].map((mm) =>
      bothLines(mm, '', type.figure, setting),
    ),
  ])
  const head = [
    [],
    [cell('Hold the tape at', type.strong, 1)],
    ...['x', 'y', 'z'].map((axis) => [cell(`${axis}, ${unit}`, type.strong, 1)]),
  ]
  const numberMm = [2, 3, 4].map((index) =>
    Math.max(...[head, ...cells].map((row) => neededWidthMm(row[index] ?? [], 'whole-lines'))),
  )
  const wordsMm = widthMm - POINT_LETTER_MM - numberMm.reduce((sumMm, each) => sumMm + each, 0)
  const columns: readonly Column[] = [
    { widthMm: POINT_LETTER_MM, align: 'centre' },
    { widthMm: wordsMm, align: 'left' },
    ...numberMm.map((each): Column => ({ widthMm: each, align: 'right' })),
  ]
  return [
    tableRow(columns, head, { section: SECTION, rule: 'thin', keepWithNext: true }),
    ...cells.map((row) => tableRow(columns, row, { section: SECTION, rule: 'thin' })),
  ]
}

/** Two ends and how far they are apart. */
interface Pair {
  readonly words: string
  readonly lengthMm: number
}

const placePairs = ({ placePairs: pairs }: TapeCheckTable): readonly Pair[] =>
  pairs
    .map(({ from, to, lengthMm }) => ({ words: [from, to].toSorted().join('–'), lengthMm }))
    .toSorted((a, b) => a.words.localeCompare(b.words, 'en'))

const anchorPairs = (table: TapeCheckTable, places: readonly PlaceAnchors[]): readonly Pair[] =>
  table.pairs.map(({ from, to, lengthMm }) => ({
    words: `${itemOf(from, places)}–${itemOf(to, places)}`,
    lengthMm,
  }))

const rowOf = (ref: AnchorRef, places: readonly PlaceAnchors[]): AnchorRow | undefined =>
  places.find(({ place }) => place.id === ref.placeId)?.rows.find(({ anchor }) => anchor.id === ref.anchorId)

const itemOf = (ref: AnchorRef, places: readonly PlaceAnchors[]): string =>
  String(rowOf(ref, places)?.itemNumber ?? '')

const PAIRS_BESIDE = 4

/** Pairs side by side under a line of words; nothing where there are none. */
const titledPairs = (title: string, pairs: readonly Pair[], setting: Setting): readonly BareRow[] => {
  const { widthMm, type } = setting
  if (pairs.length === 0) return []
  const columns = Array.from({ length: PAIRS_BESIDE }, (): Column => ({
    widthMm: widthMm / PAIRS_BESIDE,
    align: 'left',
  }))
  const lines = Array.from({ length: Math.ceil(pairs.length / PAIRS_BESIDE) }, (_, index) =>
    pairs.slice(index * PAIRS_BESIDE, (index + 1) * PAIRS_BESIDE),
  )
  const rows = lines.map((line) =>
    tableRow(
      columns,
      line.map(({ words, lengthMm }) => bothLines(lengthMm, `${words}: `, type.strong, setting)),
      { section: SECTION, rule: 'thin' },
    ),
  )
  return [wordsRow(title, setting, { keepWithNext: true }), ...rows]
}

const wordsRow = (text: string, { widthMm, type }: Setting, { keepWithNext = false } = {}): BareRow =>
  tableRow([{ widthMm, align: 'left' }], [[cell(text, type.strong, 6)]], {
    section: SECTION,
    rule: 'thin',
    keepWithNext,
    shaded: true,
  })

const MOST_DISTANCES = 4
const ITEM_MM = 7

/** One row for each anchor: its number, and its distances from the letters. */
const distanceRows = (
  table: TapeCheckTable,
  places: readonly PlaceAnchors[],
  setting: Setting,
): readonly BareRow[] => [
  wordsRow('From each letter to the anchor', setting, { keepWithNext: true }),
  ...table.rows.flatMap((checks) => {
    const row = rowOf(checks, places)
    return row === undefined ? [] : anchorRowsOf(checks, row, setting)
  }),
]

const anchorRowsOf = (checks: AnchorChecks, row: AnchorRow, setting: Setting): readonly BareRow[] => {
  const { layout, widthMm, type } = setting
  const eachMm = (widthMm - ITEM_MM) / MOST_DISTANCES
  const columns: readonly Column[] = [
    { widthMm: ITEM_MM, align: 'centre' },
    ...Array.from({ length: MOST_DISTANCES }, (): Column => ({ widthMm: eachMm, align: 'left' })),
  ]
  const inStyle = (style: TextStyle): readonly (readonly CellText[])[] =>
    checks.distances.map(({ letter, lengthMm }) => bothLines(lengthMm, `${letter} `, style, setting))
  const large = inStyle(type.figure)
  const isRoomy = large.every((each) => neededWidthMm(each, 'whole-lines') <= eachMm)
  const place = layout.places.length > 1 ? `${placeName(checks.placeId, layout)}, ` : ''
  const name = `${place}${anchorName(row.anchor)}`
  const notes = [capitalised(name), ...notesOf(checks, row, setting)].join('. ')
  return [
    tableRow(
      columns,
      [[cell(String(row.itemNumber), type.figure, 1)], ...(isRoomy ? large : inStyle(type.strong))],
      {
        section: SECTION,
        rule: 'none',
        keepWithNext: true,
      },
    ),
    tableRow(
      [
        { widthMm: ITEM_MM, align: 'left' },
        { widthMm: widthMm - ITEM_MM, align: 'left' },
      ],
      [[], [cell(`${notes}.`, type.small, 12)]],
      { section: SECTION, rule: 'thin' },
    ),
  ]
}

/** Beyond this the place hangs on every reading: three tapes square to each other make 1.7. Our judgement. */
const LOOSE_MM_PER_MM = 2.5

/** Where a wrap's mark is, how well the tapes tell the place, and what the distances cannot tell. */
const notesOf = (checks: AnchorChecks, row: AnchorRow, { layout }: Setting): readonly string[] => {
  const unit = layout.units.length
  const { x, y, z } = pointDifference(checks.held, row.anchor.mount.point)
  const mark = { xMm: x, yMm: y, zMm: z }
  const told = toldText(checks)
  return [
    ...(checks.heldAt === 'tube-mark'
      ? [
          `Its mark on the bar lies ${pointText(mark, unit)} (${pointText(mark, otherUnit(unit))}) from the point of the anchor table`,
        ]
      : []),
    ...(checks.mmPerMm !== null && checks.mmPerMm > LOOSE_MM_PER_MM
      ? [`Tapes read 1 mm wrong can move it ${tenthsText(checks.mmPerMm)} mm: read them twice`]
      : []),
    ...(told === null ? [] : [told.replace(/\.$/, '')]),
  ]
}
