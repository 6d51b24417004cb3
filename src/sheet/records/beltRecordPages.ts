import type { BeltRecord } from '../../domain/care/beltRecord'
import { beltCondition } from '../../domain/care/condition'
import { beltAge } from '../../domain/care/expiry'
import type { Layout } from '../../domain/layout/document/layout'
import { chosenRuleSet } from '../../domain/layout/document/ruleSetOf'
import { ageSentence } from '../../domain/layout/wording/beltAgeText'
import { conditionText } from '../../domain/layout/wording/beltHistoryText'
import { CAUTIONS } from '../../domain/layout/wording/cautions'
import { flowed, type FlowRow, type PlacedRow } from '../page/flow'
import { footLine, printedBox } from '../page/footLine'
import { straightItem, textItem, type Box, type SheetItem } from '../page/item'
import { COLUMN_GAP_MM, columnFrames } from '../page/pageColumns'
import { PAPERS, type Paper, type PaperName } from '../page/paper'
import { cell, gapRow, textRows, type BareRow } from '../page/section'
import type { SheetPage } from '../page/sheetPage'
import { tableRow } from '../page/table'
import { LEAST_TEXT_MM, LETTERING_FACTORS, typography, type Typography } from '../page/typography'
import { ageSection, type BeltOnPaper, cleaningSection, labelSection } from './beltSections'
import { HAND_LINES, handSection, historySection } from './historySection'
import { inspectionSection } from './inspectionSection'

/**
 * The record of every belt of a layout as it stands on a day (`today`, ISO 8601), each from a fresh page: belts that are worn first, in the
 * order of the places, then retired ones and those of places that were removed. No pages when there are no belts.
 */
export const beltRecordPages = (
  layout: Layout,
  today: string,
  paperName: PaperName,
): readonly SheetPage[] => {
  const paper = PAPERS[paperName]
  const pages = inOrder(layout).flatMap((belt) => beltPages(layout, onPaper(layout, belt, today), paper))
  return pages.map(({ title, items }, index) => ({
    number: index + 1,
    of: pages.length,
    widthMm: paper.widthMm,
    heightMm: paper.heightMm,
    title: `${title}, page ${index + 1} of ${pages.length}`,
    items: [...items, ...footLine(paper, index + 1, pages.length)],
  }))
}

const inOrder = (layout: Layout): readonly BeltRecord[] => {
  const rank = (belt: BeltRecord): number => {
    const index = layout.places.findIndex(({ id }) => id === belt.placeId)
    const isWorn = index !== -1 && beltCondition(belt).kind !== 'retired'
    return isWorn ? index : layout.places.length
  }
  return (layout.belts ?? []).toSorted((a, b) => rank(a) - rank(b))
}

const onPaper = (layout: Layout, belt: BeltRecord, today: string): BeltOnPaper => {
  const ruleSet = chosenRuleSet(layout)
  const place = layout.places.find(({ id }) => id === belt.placeId)
  return {
    belt,
    placeName: place === undefined ? 'no longer in the layout' : place.name,
    age: beltAge(belt, ruleSet, today),
    condition: beltCondition(belt),
    ruleSet,
    today,
  }
}

type BarePage = Pick<SheetPage, 'title' | 'items'>

const SECTION = 'Belt record'
const SMALL_GAP_MM = 1.5
/** A line to sign on. */
const SIGN_MM = 8

/** The pages of one belt: as few as possible, then in the largest lettering. */
const beltPages = (layout: Layout, belt: BeltOnPaper, paper: Paper): readonly BarePage[] => {
  const tried = LETTERING_FACTORS.map((factor) => {
    const setting = { layout, belt, paper, type: typography(factor) }
    return { setting, ...composed(setting, HAND_LINES.least) }
  })
  const [best] = tried.toSorted((a, b) => a.pageCount - b.pageCount)
  return best === undefined ? [] : drawn(filledUp(best.setting, best))
}

/** What is left of the last page is ruled to write on. */
const filledUp = (setting: Setting, least: Composition): Composition => {
  let filled = least
  for (let count = HAND_LINES.least + 1; count <= HAND_LINES.most; count += 1) {
    const longer = composed(setting, count)
    if (longer.pageCount > least.pageCount) break
    filled = longer
  }
  return filled
}

interface Setting {
  readonly layout: Layout
  readonly belt: BeltOnPaper
  readonly paper: Paper
  readonly type: Typography
}

interface Composition {
  readonly belt: BeltOnPaper
  readonly printed: Box
  readonly header: readonly BareRow[]
  readonly cautions: readonly BareRow[]
  readonly placed: readonly PlacedRow[]
  readonly pageCount: number
}

const composed = ({ layout, belt, paper, type }: Setting, handLines: number): Composition => {
  const printed = printedBox(paper)
  const widthMm = printed.rightMm - printed.leftMm
  const header = headerRows(layout, belt, widthMm, type)
  const cautions = textRows(`CAUTIONS: ${CAUTIONS.slice(1).join(' ')}`, widthMm, type.small, 'Cautions')
  const content = {
    ...printed,
    topMm: printed.topMm + heightOf(header) + SMALL_GAP_MM,
    bottomMm: printed.bottomMm - heightOf(cautions) - SIGN_MM - SMALL_GAP_MM,
  }
  const columnMm = (widthMm - COLUMN_GAP_MM) / 2
  const { placed } = flowed(sectionsOf(belt, handLines, columnMm, type), columnFrames([], content, columnMm))
  const pageCount = 1 + Math.max(0, ...placed.map(({ pageIndex }) => pageIndex))
  return { belt, printed, header, cautions, placed, pageCount }
}

const heightOf = (rows: readonly BareRow[]): number => rows.reduce((sumMm, row) => sumMm + row.heightMm, 0)

const sectionsOf = (
  belt: BeltOnPaper,
  handLines: number,
  widthMm: number,
  type: Typography,
): readonly FlowRow[] => {
  const isRetired = belt.condition.kind === 'retired'
  const sections = [
    labelSection(belt, widthMm, type),
    ageSection(belt, widthMm, type),
    historySection(belt.belt, widthMm, type),
    ...(isRetired
      ? []
      : [
          inspectionSection(belt.belt, widthMm, type),
          cleaningSection(widthMm, type),
          handSection(handLines, widthMm, type),
        ]),
  ]
  return sections.flatMap((rows, index) =>
    index === 0 ? rows : [gapRow(SMALL_GAP_MM, rows[0]?.section ?? ''), ...rows],
  )
}

/** On every page of a belt: which belt of which car it is, as of when, and whether it may be worn. */
const headerRows = (
  layout: Layout,
  { belt, placeName, age, condition, ruleSet, today }: BeltOnPaper,
  widthMm: number,
  type: Typography,
): readonly BareRow[] => {
  const fields = [
    { label: 'Car', value: layout.job.car, share: 0.24 },
    { label: 'Place', value: placeName, share: 0.16 },
    { label: 'Belt', value: belt.name, share: 0.22 },
    { label: 'Serial', value: belt.serial, share: 0.12 },
    { label: 'As of', value: today, share: 0.08 },
  ]
  const state = [
    condition.kind === 'retired' ? '' : ageSentence(age, belt, ruleSet),
    conditionText(condition),
  ]
  return [
    tableRow(
      [0.18, ...fields.map(({ share }) => share)].map((share) => ({
        widthMm: share * widthMm,
        align: 'left' as const,
      })),
      [
        [cell('Belt record', type.title, 1)],
        ...fields.map(({ label, value }) => [
          cell(label, type.small, 1),
          cell(value.trim() === '' ? '–' : value, type.strong, 2),
        ]),
      ],
      { section: SECTION, rule: 'thin' },
    ),
    tableRow(
      [{ widthMm, align: 'left' }],
      [state.filter((words) => words !== '').map((words) => cell(words, type.heading, 3))],
      { section: SECTION, rule: 'heavy', shaded: age.verdict === 'expired' || condition.kind !== 'in-use' },
    ),
  ]
}

const drawn = (composition: Composition): readonly BarePage[] => {
  const { belt, printed, header, cautions, placed, pageCount } = composition
  const footTopMm = printed.bottomMm - heightOf(cautions)
  return Array.from({ length: pageCount }, (_, pageIndex) => ({
    title: `Belt record of ${belt.belt.name}`,
    items: [
      ...stacked(header, printed.leftMm, printed.topMm),
      ...placed.filter((row) => row.pageIndex === pageIndex).flatMap(({ row, at }) => row.draw(at)),
      ...signature({ ...printed, topMm: footTopMm - SIGN_MM, bottomMm: footTopMm }),
      ...stacked(cautions, printed.leftMm, footTopMm),
    ],
  }))
}

const stacked = (rows: readonly BareRow[], xMm: number, topMm: number): readonly SheetItem[] =>
  rows.flatMap((row, index) => row.draw({ xMm, yMm: topMm + heightOf(rows.slice(0, index)) }))

const SIGNED = [
  { label: 'Compared with the belt in hand by', share: 0.45 },
  { label: 'signature', share: 0.35 },
  { label: 'date', share: 0.2 },
] as const

/** One line to sign that the print agrees with the belt. */
const signature = (box: Box): readonly SheetItem[] => {
  const widthMm = box.rightMm - box.leftMm
  const lineMm = box.bottomMm - 1.2
  let leftMm = box.leftMm
  return SIGNED.flatMap(({ label, share }) => {
    const fromMm = leftMm
    leftMm += share * widthMm
    return [
      straightItem({ xMm: fromMm, yMm: lineMm }, { xMm: leftMm - 3, yMm: lineMm }, { widthMm: 0.15 }),
      textItem({ xMm: fromMm, yMm: box.topMm + 2.6 }, label, LEAST_TEXT_MM, { ink: 'dark' }),
    ]
  })
}
