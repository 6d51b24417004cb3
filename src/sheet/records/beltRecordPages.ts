import type { BeltRecord } from '../../domain/care/beltRecord'
import { beltCondition } from '../../domain/care/condition'
import { beltAge } from '../../domain/care/expiry'
import type { Layout } from '../../domain/layout/document/layout'
import { chosenRuleSet } from '../../domain/layout/document/ruleSetOf'
import { ageSentence } from '../../domain/layout/wording/beltAgeText'
import { conditionText } from '../../domain/layout/wording/beltHistoryText'
import { otherPlaceWords } from '../../domain/layout/wording/variantWords'
import type { PaperName } from '../page/paper'
import type { FlowRow } from '../page/flow'
import { cell, type BareRow } from '../page/section'
import type { SheetPage } from '../page/sheetPage'
import { tableRow } from '../page/table'
import type { Typography } from '../page/typography'
import { beltForm, placesWithoutBelt } from './beltForm'
import { ageSection, type BeltOnPaper, cleaningSection, labelSection } from './beltSections'
import { handSection, historySection } from './historySection'
import { inspectionSection } from './inspectionSection'
import { recordPages, type RecordSheet } from './recordPages'

/**
 * The record of every belt of a layout as it stands on a day (`today`, ISO 8601), each from a fresh page: belts that are worn first, in the
 * order of the places, then retired ones and those of places that were removed; then a form to fill in for every place without a belt.
 */
export const beltRecordPages = (layout: Layout, today: string, paperName: PaperName): readonly SheetPage[] =>
  recordPages(
    [
      ...inOrder(layout).map((belt) => beltSheet(layout, onPaper(layout, belt, today))),
      ...placesWithoutBelt(layout).map((place) => beltForm(layout, place)),
    ],
    paperName,
  )

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
    placeName: place === undefined ? otherPlaceWords(belt.placeId, layout) : place.name,
    age: beltAge(belt, ruleSet, today),
    condition: beltCondition(belt),
    ruleSet,
    today,
  }
}

const SECTION = 'Belt record'

const beltSheet = (layout: Layout, belt: BeltOnPaper): RecordSheet => ({
  title: `Belt record of ${belt.belt.name}`,
  header: (widthMm, type) => headerRows(layout, belt, widthMm, type),
  sections: ({ widthMm, type }, handLines) => sectionsOf(belt, handLines, widthMm, type),
  signedFor: 'Compared with the belt in hand by',
})

const sectionsOf = (
  belt: BeltOnPaper,
  handLines: number,
  widthMm: number,
  type: Typography,
): readonly (readonly FlowRow[])[] => {
  const isRetired = belt.condition.kind === 'retired'
  return [
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
