import type { BeltRecord } from '../../domain/care/beltRecord'
import { entriesByDate, standingEntries } from '../../domain/care/condition'
import { AFTER_CRASH, AFTER_FAULT, INSPECTION_ITEMS, INSPECTION_LIMIT } from '../../domain/care/inspection'
import { resultWord } from '../../domain/layout/wording/careWords'
import { sourceText } from '../../domain/layout/wording/ruleSentence'
import { capitalised } from '../../domain/layout/wording/words'
import type { FlowRow } from '../page/flow'
import { straightItem, type PagePoint, type SheetItem } from '../page/item'
import { cell, keptTogether, sectionRows, textRows, type BareRow } from '../page/section'
import { tableRow, type Column } from '../page/table'
import type { Typography } from '../page/typography'

const SECTION = 'Inspection list'

/** Inspections that can be entered by hand on one print. */
const BY_HAND = 3
const LAST_SHARE = 0.15
const HAND_SHARE = 0.1

/** What was found of each thing when it was last looked at, with its date. */
const lastResults = (belt: Pick<BeltRecord, 'entries'>): ReadonlyMap<string, string> => {
  const found = new Map<string, string>()
  for (const entry of entriesByDate({ entries: standingEntries(belt) })) {
    if (entry.kind !== 'inspection') continue
    for (const { id } of INSPECTION_ITEMS) {
      const result = entry.results[id] ?? 'not-looked-at'
      if (result === 'not-looked-at') continue
      found.set(id, `${result === 'fault' ? 'FAULT' : resultWord(result)} ${entry.date}`)
    }
  }
  return found
}

const columnsOf = (widthMm: number): readonly Column[] => [
  { widthMm: widthMm * (1 - LAST_SHARE - BY_HAND * HAND_SHARE), align: 'left' },
  { widthMm: widthMm * LAST_SHARE, align: 'left' },
  ...Array.from({ length: BY_HAND }, () => ({ widthMm: widthMm * HAND_SHARE, align: 'centre' as const })),
]

/** The lines between the columns that are filled in by hand. */
const ruled = (row: BareRow, columns: readonly Column[]): BareRow => ({
  ...row,
  draw: (at) => [...row.draw(at), ...uprights(at, row.heightMm, columns)],
})

const uprights = (at: PagePoint, heightMm: number, columns: readonly Column[]): readonly SheetItem[] =>
  Array.from({ length: BY_HAND }, (_, index) => {
    const left = columns.slice(0, columns.length - index - 1)
    const xMm = at.xMm + left.reduce((sumMm, { widthMm }) => sumMm + widthMm, 0)
    return straightItem({ xMm, yMm: at.yMm }, { xMm, yMm: at.yMm + heightMm }, { widthMm: 0.12, ink: 'mid' })
  })

/** Everything to look at with what to look for, what was found last, and room to enter the next inspections by hand. */
export const inspectionSection = (
  belt: Pick<BeltRecord, 'entries'>,
  widthMm: number,
  type: Typography,
): readonly FlowRow[] => {
  const columns = columnsOf(widthMm)
  const last = lastResults(belt)
  const hand = Array.from({ length: BY_HAND }, () => [cell('S / F', type.body, 1)])
  const heading = tableRow(
    columns,
    [
      [cell('By hand: date above, then circle S (sound) or F (fault).', type.small, 2)],
      [cell('Last', type.small, 1)],
      ...Array.from({ length: BY_HAND }, () => [cell('date', type.small, 1), cell(' ', type.strong, 1)]),
    ],
    { section: SECTION, rule: 'thin', keepWithNext: true },
  )
  const items = INSPECTION_ITEMS.map((item) =>
    tableRow(
      columns,
      [
        [cell(item.name, type.strong, 2), cell(item.lookFor, type.small, 4)],
        [cell(last.get(item.id) ?? 'never', type.small, 3)],
        ...hand,
      ],
      { section: SECTION, rule: 'thin' },
    ),
  )
  return sectionRows(SECTION, widthMm, type, [
    ...[heading, ...items].map((row) => ruled(row, columns)),
    ...consequences(widthMm, type),
  ])
}

const consequences = (widthMm: number, type: Typography): readonly BareRow[] => [
  ...[AFTER_FAULT, AFTER_CRASH, INSPECTION_LIMIT].flatMap(({ says, source, caveat }) =>
    keptTogether([
      ...textRows(says, widthMm, type.body, SECTION),
      ...textRows([`${sourceText(source)}.`, caveat ?? ''].join(' ').trim(), widthMm, type.small, SECTION),
    ]),
  ),
  ...textRows('Sources of the list:', widthMm, type.body, SECTION).map((row) => ({
    ...row,
    keepWithNext: true,
  })),
  ...listSources().flatMap((text) => keptTogether(textRows(text, widthMm, type.small, SECTION))),
]

/** Each source once, after the things that it names. */
const listSources = (): readonly string[] => {
  const named = new Map<string, string[]>()
  for (const { name, sources } of INSPECTION_ITEMS)
    for (const source of sources) {
      const text = sourceText(source)
      named.set(text, [...(named.get(text) ?? []), name.toLowerCase()])
    }
  return [...named].map(([source, names]) => `${capitalised(names.join('; '))} – ${source}.`)
}
