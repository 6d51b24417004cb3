import { type EvaluatedVariant, findingTally } from '../../domain/layout/compare/comparedFindings'
import type { Layout } from '../../domain/layout/document/layout'
import { drawnVariantId, type VariantLayout, variantsOf } from '../../domain/layout/edit/changeVariants'
import { layoutNumbers } from '../../domain/layout/evaluate/evaluateLayout'
import {
  type Compared,
  type CompareGroup,
  findingGroups,
  numberGroups,
  partGroups,
} from '../../domain/layout/wording/compareRows'
import { COMPARE_CAUTION, tallyLines } from '../../domain/layout/wording/compareWords'
import type { FlowRow } from '../page/flow'
import type { PaperName } from '../page/paper'
import { type BareRow, cell, sectionRows, textRows } from '../page/section'
import type { SheetPage } from '../page/sheetPage'
import { type Column, tableRow } from '../page/table'
import type { Typography } from '../page/typography'
import { formHeader } from '../records/formRows'
import { recordPages, type RecordSheet } from '../records/recordPages'
import { type OverlayFigure, overlayFigure } from './overlayFigure'

interface Setting {
  readonly widthMm: number
  readonly type: Typography
}

/** Rooms are a worker's: on this page a limit is broken, kept or not checked. */
const WITHOUT_ROOMS =
  'How much room is left to a limit is not on this page: it stands on the mount sheet of each variant.'

const TITLE = 'Comparison of variants'

/** The share of a table that the names of its rows take. */
const NAME_SHARE = 0.34

const columnsOf = (count: number, widthMm: number): readonly Column[] => [
  { widthMm: NAME_SHARE * widthMm, align: 'left' },
  ...Array.from({ length: count }, (): Column => ({
    widthMm: ((1 - NAME_SHARE) * widthMm) / count,
    align: 'left',
  })),
]

const MOST_LINES = 8

const headRow = ({ variants, drawn }: Compared, section: string, { widthMm, type }: Setting): BareRow =>
  tableRow(
    columnsOf(variants.length, widthMm),
    [
      [],
      ...variants.map(({ name }, index) => [
        cell(index === drawn ? `${name} (drawn)` : name, type.strong, MOST_LINES),
      ]),
    ],
    { section, rule: 'thin', keepWithNext: true },
  )

const groupRows = (
  { title, rows }: CompareGroup,
  compared: Compared,
  section: string,
  { widthMm, type }: Setting,
): readonly BareRow[] => [
  ...(title === ''
    ? []
    : [
        tableRow([{ widthMm, align: 'left' }], [[cell(title, type.strong, MOST_LINES)]], {
          section,
          rule: 'none',
          keepWithNext: true,
        }),
      ]),
  ...rows.map((row) =>
    tableRow(
      columnsOf(compared.variants.length, widthMm),
      [
        [cell(row.title, type.body, MOST_LINES)],
        ...row.cells.map(({ text, notes, isOther }) => [
          cell(text, isOther ? type.strong : type.body, MOST_LINES),
          ...notes.map((note) => cell(note, type.small, MOST_LINES)),
        ]),
      ],
      { section, rule: 'thin' },
    ),
  ),
]

const tableSection = (
  title: string,
  groups: readonly CompareGroup[],
  compared: Compared,
  setting: Setting,
): readonly FlowRow[] => {
  const { widthMm, type } = setting
  const isEmpty = groups.every(({ rows }) => rows.length === 0)
  return sectionRows(
    title,
    widthMm,
    type,
    isEmpty
      ? textRows('Nothing: all variants are alike in this.', widthMm, type.body, title)
      : [
          headRow(compared, title, setting),
          ...groups.flatMap((group) => groupRows(group, compared, title, setting)),
        ],
  )
}

const tallySection = ({ variants, evaluated }: Compared, { widthMm, type }: Setting): readonly FlowRow[] => {
  const title = 'Each in short'
  const rows = variants.flatMap(({ name }, index) => {
    const own = evaluated[index]
    if (own === undefined) return []
    const findings = own.evaluation.places.flatMap((place) => place.findings)
    const lines = tallyLines(findingTally(findings), own.layout, 'left-out')
    return textRows(`${name}: ${lines.join('; ')}.`, widthMm, type.body, title)
  })
  const more = [WITHOUT_ROOMS, COMPARE_CAUTION].flatMap((text) => textRows(text, widthMm, type.small, title))
  return sectionRows(title, widthMm, type, [...rows, ...more])
}

/** A drawing for a width: the same one whatever else of the page is tried. */
type Figures = (index: number, widthMm: number) => OverlayFigure | null

const figuresOf = ({ evaluated, drawn }: Compared): Figures => {
  const made = new Map<string, OverlayFigure>()
  return (index, widthMm) => {
    const [solid, dotted] = [evaluated[drawn], evaluated[index]]
    if (index === drawn || solid === undefined || dotted === undefined) return null
    const key = `${index}/${widthMm}`
    const figure =
      made.get(key) ?? overlayFigure({ solid, dotted, lengthUnit: solid.layout.units.length }, widthMm)
    made.set(key, figure)
    return figure
  }
}

/** The drawn one with another laid over it; one such drawing for each other variant. */
const overlaySection = (
  { variants, drawn }: Compared,
  figures: Figures,
  { widthMm, type }: Setting,
): readonly FlowRow[] =>
  variants.flatMap(({ name }, index) => {
    const figure = figures(index, widthMm)
    if (figure === null) return []
    const base = variants[drawn]?.name ?? ''
    const title = `${name} laid over ${base}`
    const drawing: BareRow = {
      heightMm: figure.heightMm,
      keepWithNext: true,
      section: title,
      draw: figure.itemsAt,
    }
    const words = `From above and from the side, front at the left, scale 1:${figure.scale}. Solid lines and round marks: ${base}, which is drawn. Dotted lines and rhombs: ${name}, only where it lies elsewhere. Numbers: how far a part lies elsewhere, straight through space.`
    return sectionRows(title, widthMm, type, [drawing, ...textRows(words, widthMm, type.small, title)])
  })

const comparedOf = (layout: Layout): Compared => {
  const variants: readonly VariantLayout[] = variantsOf(layout)
  const evaluated = variants.map((variant): EvaluatedVariant => ({
    layout: variant.layout,
    evaluation: layoutNumbers(variant.layout),
  }))
  const drawn = variants.findIndex(({ id }) => id === drawnVariantId(layout))
  return { variants, evaluated, drawn, onlyDifferences: true, withoutRooms: true }
}

const sheetOf = (layout: Layout, today: string): RecordSheet => {
  const compared = comparedOf(layout)
  const figures = figuresOf(compared)
  const tables = [
    { title: 'What is built otherwise', groups: partGroups(compared) },
    { title: 'Findings', groups: findingGroups(compared) },
    { title: 'Numbers', groups: numberGroups(compared) },
  ]
  const { job } = layout
  const ruleSet = compared.evaluated[compared.drawn]?.evaluation.ruleSet
  return {
    title: TITLE,
    header: (widthMm, type) =>
      formHeader(
        TITLE,
        [
          { label: 'Car', value: job.car },
          { label: 'Customer', value: job.customer },
          { label: 'Job', value: job.name },
          { label: 'Revision', value: job.revision },
          { label: 'Rule set', value: ruleSet === undefined ? '' : `${ruleSet.name}, ${ruleSet.edition}` },
        ],
        `${compared.variants.map(({ name }) => name).join(' · ')}. Compared on ${today}. Only what differs is listed.`,
        widthMm,
        type,
      ),
    sections: (setting) => [
      tallySection(compared, setting),
      overlaySection(compared, figures, setting),
      ...tables.map(({ title, groups }) => tableSection(title, groups, compared, setting)),
    ],
    signedFor: 'Variant to be built, and who decided it',
  }
}

/** The variants of a car on paper: each in short, one laid over the other, and everything that differs; none without variants. */
export const comparisonPages = (layout: Layout, today: string, paperName: PaperName): readonly SheetPage[] =>
  variantsOf(layout).length < 2 ? [] : recordPages([sheetOf(layout, today)], paperName)
